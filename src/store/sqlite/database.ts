import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { Kysely, SqliteDialect, type Generated } from 'kysely'
import Database from 'libsql'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { lockingDatabase } from './locking-database.ts'

/** What is kept beside a log for lists and books; made from the log. `open` is 0 or 1, `summary` JSON. */
type Projected = {
  readonly open: Generated<number>
  readonly label: Generated<string>
  readonly group_name: Generated<string>
  readonly currency: Generated<string>
  readonly count: Generated<number>
  readonly stock_minor: Generated<number>
  readonly summary: Generated<string | null>
}

/**
 * The tables. `content` is JSON; `seq` numbers a machine's notes from 1; `rank` numbers machines, blueprints of one's own, and
 * changes of the settings, in the order they came in.
 */
export type Tables = {
  readonly machine: {
    readonly rank: Generated<number>
    readonly id: string
    readonly bench: string
    readonly version: number
    /** What the machine brought, and what is known of where it came from; empty for a virtual machine. */
    readonly complaint: Generated<string | null>
    readonly source: Generated<string | null>
    readonly came_day: Generated<string | null>
    readonly left_day: Generated<string | null>
    readonly exit_name: Generated<string | null>
    readonly received_minor: Generated<number>
    readonly cost_minor: Generated<number>
    readonly profit_minor: Generated<number>
    readonly minutes: Generated<number>
    readonly paid_minor: Generated<number>
  } & Projected
  readonly note: {
    readonly machine: string
    readonly id: string
    readonly seq: number
    readonly at: string
    readonly content: string
  }
  readonly own_blueprint: {
    readonly rank: Generated<number>
    readonly id: string
    readonly saved_at: string
    readonly content: string
  }
  /** Logs of parts, adverts, prices and spending. */
  readonly log: {
    readonly rank: Generated<number>
    readonly kind: string
    readonly id: string
    readonly bench: string
    readonly version: number
  } & Projected
  readonly log_entry: {
    readonly kind: string
    readonly log: string
    readonly id: string
    readonly seq: number
    readonly at: string
    readonly content: string
  }
  /** Lines of the books, made from the logs. */
  readonly book_line: {
    readonly kind: string
    readonly log: string
    readonly bench: string
    readonly currency: string
    readonly note: string
    readonly day: string
    readonly month: string
    readonly month_from_6th: string
    readonly account: string
    readonly minor: number
    readonly minutes: number
  }
  /** Sums of the lines by month, kept up by triggers. `month_kind`: calendar, or from-6th. */
  readonly book_month: {
    readonly bench: string
    readonly month_kind: string
    readonly month: string
    readonly currency: string
    readonly account: string
    readonly minor: number
    /** Thousandths of a minute. */
    readonly milliminutes: number
  }
  readonly settings_change: {
    readonly rank: Generated<number>
    readonly at: string
    readonly content: string
  }
}

/** How long SQLite waits for another program that is writing. Short, because the whole program stands still meanwhile. */
const busyTimeoutMs = 200

/**
 * Opens `<folder>/<file>`, making the folder if need be. WAL with full synchronising: what was answered as kept survives
 * a loss of power.
 */
export const openDatabase = async (folder: string, file: string): Promise<Result<Kysely<Tables>>> => {
  try {
    await mkdir(folder, { recursive: true })
    return ok(connect(join(folder, file)))
  } catch (fault) {
    return refused(openProblem(folder, fault))
  }
}

const connect = (path: string): Kysely<Tables> => {
  const database = new Database(path)
  try {
    database.exec(`PRAGMA busy_timeout = ${busyTimeoutMs}`)
    database.exec('PRAGMA journal_mode = WAL')
    database.exec('PRAGMA synchronous = FULL')
    database.exec('PRAGMA foreign_keys = ON')
  } catch (fault) {
    database.close()
    throw fault
  }
  return new Kysely<Tables>({ dialect: new SqliteDialect({ database: lockingDatabase(database) }) })
}

/** The code of a failure of the file system or of SQLite, such as `ENOTDIR` or `SQLITE_FULL`; empty when it has none. */
export const failureCode = (fault: unknown): string =>
  fault instanceof Error && 'code' in fault && typeof fault.code === 'string' ? fault.code : ''

const openProblem = (folder: string, fault: unknown): Problem => {
  const code = failureCode(fault)
  if (code === 'SQLITE_NOTADB' || code === 'SQLITE_CORRUPT') {
    return problem('not-a-store', folder, 'The file of the store there is not a store', 'Put a backup in its place')
  }
  if (code === 'ENOSPC' || code === 'SQLITE_FULL') {
    return problem('disk-full', folder, 'The disk is full', 'Make room, or name another folder')
  }
  const why = reasons[code] ?? (fault instanceof Error ? fault.message : String(fault))
  return problem(
    'folder-not-writable',
    folder,
    `The data folder cannot be written: ${why}`,
    'Name a folder that can be',
  )
}

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  EROFS: 'it is on a disk that can only be read',
  ENOTDIR: 'a file stands where a folder should be',
  EEXIST: 'a file stands where a folder should be',
}
