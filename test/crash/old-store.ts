import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import Database from 'libsql'
import { noteAt } from './what-is-written.ts'

/** The tables as the version wrote them that had machines, notes, blueprints of one's own and settings, and nothing else. */
const tables = `
  create table kysely_migration (name varchar(255) not null primary key, timestamp varchar(255) not null);
  create table kysely_migration_lock (id varchar(255) not null primary key, is_locked integer default 0 not null);
  insert into kysely_migration_lock values ('migration_lock', 0);
  insert into kysely_migration values ('0001-machines-and-notes', '2026-01-01T00:00:00.000Z'),
    ('0002-own-blueprints', '2026-01-01T00:00:00.001Z'), ('0003-settings', '2026-01-01T00:00:00.002Z');
  create table machine (rank integer primary key autoincrement, id text not null unique, bench text not null, version integer not null);
  create table note (machine text not null references machine (id), id text not null, seq integer not null check (seq >= 1),
    at text not null, content text not null,
    constraint note_key primary key (machine, id), constraint note_place unique (machine, seq));
  create index machine_bench on machine (bench);
  create table own_blueprint (rank integer primary key autoincrement, id text not null unique, saved_at text not null, content text not null);
  create table settings_change (rank integer primary key autoincrement, at text not null, content text not null);`

/** Makes an old store with so many machines of so many notes. */
export const makeOldStore = async (folder: string, machines: number, notes: number): Promise<void> => {
  await mkdir(folder, { recursive: true })
  const database = new Database(join(folder, 'bench.sqlite'))
  database.exec('PRAGMA journal_mode = WAL')
  database.exec(`begin; ${tables}`)
  const machine = database.prepare("insert into machine (id, bench, version) values (?, 'own', ?)")
  const note = database.prepare('insert into note values (?, ?, ?, ?, ?)')
  for (let each = 0; each < machines; each++) {
    machine.run(`old-${each}`, notes)
    for (let seq = 1; seq <= notes; seq++) {
      const { machine: id, at, content, ...rest } = noteAt(`old-${each}`, seq)
      note.run(id, rest.id, seq, at, JSON.stringify(content))
    }
  }
  database.exec('commit')
  database.close()
}
