import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'libsql'

/**
 * What is in the file of a store, asked at a copy of it as it lies there. The store itself is left to the next life to bring in order, and
 * is held open by nobody: a connection of libsql lasts until its last statement is collected, whenever that is. Of what SQLite keeps beside
 * the file only its log is copied; the rest is made from it.
 */
export const atCopyOf = <T>(
  folder: string,
  ask: (all: (question: string, ...values: readonly string[]) => readonly unknown[]) => T,
): T => {
  const copy = `${folder}-look`
  mkdirSync(copy, { recursive: true })
  for (const name of ['bench.sqlite', 'bench.sqlite-wal']) {
    if (existsSync(join(folder, name))) copyFileSync(join(folder, name), join(copy, name))
  }
  const database = new Database(join(copy, 'bench.sqlite'))
  try {
    return ask((question, ...values) => database.prepare(question).all(...values))
  } finally {
    database.close()
    rmSync(copy, { recursive: true })
  }
}
