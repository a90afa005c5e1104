import { problem } from '../../base/problem.ts'
import { failureCode } from '../failure-code.ts'
import type { Failures } from '../sql/failures.ts'

/** How SQLite's failures are taken. */
export const sqliteFailures: Failures = {
  passes: (fault) => failureCode(fault).startsWith('SQLITE_BUSY'),
  problemOf: (fault) => {
    const code = failureCode(fault)
    if (code === 'SQLITE_FULL') {
      return problem('disk-full', '', 'The disk is full, so nothing was written', 'Make room, then send it again')
    }
    if (code.startsWith('SQLITE_READONLY') || code.startsWith('SQLITE_IOERR') || code.startsWith('SQLITE_CANTOPEN')) {
      return problem('not-writable', '', 'The data folder cannot be written', 'Mend that, then send it again')
    }
    if (code.startsWith('SQLITE_BUSY')) {
      return problem('busy', '', 'Another program is writing to the store', 'Send it again in a moment')
    }
    return null
  },
}
