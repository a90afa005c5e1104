import { valueOf } from '../../../src/base/result.ts'
import * as limits from '../../../src/engines/limits/index.ts'
import { truthFolders } from '../../support/truth-folders.ts'

truthFolders(import.meta.dirname, limits, (request) => valueOf(limits.runLimits(request)))
