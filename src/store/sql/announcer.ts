import type { Transaction } from 'kysely'
import type { LogWrite } from '../../bench/ports.ts'
import type { Tables } from './tables.ts'

/** A log by its name. */
export type LogName = Pick<LogWrite, 'kind' | 'id'>

/** How those who listen learn of what was written: told from inside the transaction, so that only what is kept is told; or after it. */
export type Announcer = {
  readonly inside: (transaction: Transaction<Tables>, logs: readonly LogName[]) => Promise<void>
  readonly after: (logs: readonly LogName[]) => Promise<void>
}

/** Where nobody listens. */
export const silent: Announcer = { inside: () => Promise.resolve(), after: () => Promise.resolve() }
