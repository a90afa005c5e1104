import { sql, type RawBuilder, type Transaction } from 'kysely'
import type { LogWrite } from '../../bench/ports.ts'
import type { Tables } from './tables.ts'

/** A log by its name. */
export type LogName = Pick<LogWrite, 'kind' | 'id'>

/** How those who listen learn of what was written: told from inside the transaction, so that only what is kept is told; or after it. */
export type Announcer = {
  readonly inside: (transaction: Transaction<Tables>, logs: readonly LogName[]) => Promise<void>
  /** The same for one log, as what the statement selects that wrote to it; it has the log's columns `id`, `bench` and `version`. */
  readonly within: (kind: LogName['kind']) => RawBuilder<unknown>
  readonly after: (logs: readonly LogName[]) => Promise<void>
}

/** Where nobody listens. */
export const silent: Announcer = {
  inside: () => Promise.resolve(),
  within: () => sql`1`,
  after: () => Promise.resolve(),
}
