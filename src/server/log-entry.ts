import type { Logger } from 'pino'
import type { LogEntry } from './app.ts'

/**
 * Writes an entry to a log: the way and the path of what was asked, without its query, its headers or its body, so that no passphrase and no
 * token ever comes into it.
 */
export const logEntry =
  (log: Logger) =>
  (entry: LogEntry): void => {
    if (entry.kind === 'thrown') log.error({ ...entry, thrown: undefined, err: entry.thrown })
    else if (entry.status >= 500) log.error(entry)
    else if (entry.status === 401 || entry.status === 403 || entry.status === 429) log.warn(entry)
    else log.info(entry)
  }
