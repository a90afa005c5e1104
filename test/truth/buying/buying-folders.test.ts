import { quickCeiling } from '../../../src/machine/buying/index.ts'
import { truthFolders } from '../../support/truth-folders.ts'

truthFolders(import.meta.dirname, { quickCeiling }, () => {
  throw new Error('these cases call a function by name')
})
