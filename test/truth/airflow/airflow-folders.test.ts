import { valueOf } from '../../../src/base/result.ts'
import * as airflow from '../../../src/engines/airflow/index.ts'
import { truthFolders } from '../../support/truth-folders.ts'

truthFolders(import.meta.dirname, airflow, (request) => valueOf(airflow.runAirflow(request)))
