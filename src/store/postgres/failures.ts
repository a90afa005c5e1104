import { problem, type Problem } from '../../base/problem.ts'
import { failureCode } from '../failure-code.ts'
import type { Failures } from '../sql/failures.ts'

/**
 * Two that write at once and stood in each other's way. Codes of PostgreSQL's documentation, appendix A: serialization_failure,
 * deadlock_detected, lock_not_available, and unique_violation, for of two that begin the same log the later one finds it when it looks
 * again.
 */
const passing: readonly string[] = ['40001', '40P01', '55P03', '23505']

/** How PostgreSQL's failures are taken. */
export const postgresFailures: Failures = {
  passes: (fault) => passing.includes(failureCode(fault)),
  problemOf: (fault) => {
    const code = failureCode(fault)
    if (code === '53100') {
      return problem('disk-full', '', 'The disk of the database is full, so nothing was written', 'Make room, then send it again') // prettier-ignore
    }
    if (code === '25006') {
      return problem('not-writable', '', 'The database can only be read now', 'Have it take writing again, then send it again') // prettier-ignore
    }
    if (code === '42501') {
      return problem('not-writable', '', 'The database does not let this program write', 'Give its user the right, then send it again') // prettier-ignore
    }
    if (passing.includes(code) && code !== '23505') {
      return problem('busy', '', 'Others are writing the same in the database', 'Send it again in a moment')
    }
    return isAway(fault) ? away : null
  },
}

/** Sending it again does no harm where it was kept after all: a note is known by its id. */
const away: Problem = problem(
  'store-away',
  '',
  'The database does not answer, so it is not known whether this was kept',
  'See that it runs, then send it again; what was kept already is not kept twice',
)

/** Failures of the network, and PostgreSQL's classes 08 (connection), 53 (resources) and 57 (the operator stepped in). */
const awayCode = /^(?:08|53|57|E(?:CONN|PIPE|HOST|NET|TIMEDOUT|NOTFOUND|AI_AGAIN))/

/** Failures that the driver gives no code. */
const awayText = /Connection terminated|not queryable|timeout exceeded when trying to connect|connection error/

/** Whether the database was out of reach, or broke off. */
export const isAway = (fault: unknown): boolean =>
  awayCode.test(failureCode(fault)) || (fault instanceof Error && awayText.test(fault.message))
