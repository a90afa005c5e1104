import { access, constants } from 'node:fs/promises'
import { join } from 'node:path'
import { Kysely } from 'kysely'
import Database from 'libsql'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { failureCode } from '../failure-code.ts'
import { makeFolder } from '../files/whole-file.ts'
import type { Tables } from '../sql/tables.ts'
import { BenchDialect } from './bench-dialect.ts'
import { lockingDatabase } from './locking-database.ts'

export type { Tables } from '../sql/tables.ts'

/** How long SQLite waits for another program that is writing. Short, because the whole program stands still meanwhile. */
const busyTimeoutMs = 200

/**
 * Opens `<folder>/<file>`, making the folder if need be. WAL with full synchronising: what was answered as kept survives
 * a loss of power.
 */
export const openDatabase = async (folder: string, file: string): Promise<Result<Kysely<Tables>>> => {
  try {
    await makeFolder(folder)
    // SQLite may open a file on a disk that can only be read, and would say so at the first note only.
    await access(folder, constants.W_OK)
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
  return new Kysely<Tables>({ dialect: new BenchDialect({ database: lockingDatabase(database) }) })
}

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
