import { sql, type Kysely } from 'kysely'
import { benchItself } from '../../bench/people/person.ts'
import type { Tables } from '../sql/tables.ts'
import type { Counts } from './manifest.ts'

/** How much a store holds now, photographs left out. Since nothing is ever taken away, it is the same only while nothing was written. */
export const countsNow = async (db: Kysely<Tables>): Promise<Omit<Counts, 'photographs'>> => {
  const { rows } = await sql<Record<keyof Omit<Counts, 'photographs'>, number | string>>`select
    (select count(*) from machine) as machines, (select coalesce(sum(version), 0) from machine) as notes,
    (select count(*) from log) as logs, (select coalesce(sum(version), 0) from log) as entries,
    (select count(*) from person where id <> ${benchItself}) as people,
    (select count(*) from own_blueprint) as blueprints, (select count(*) from settings_change) as settings`.execute(db)
  const row = rows[0]
  return {
    machines: Number(row.machines),
    notes: Number(row.notes),
    logs: Number(row.logs),
    entries: Number(row.entries),
    people: Number(row.people),
    blueprints: Number(row.blueprints),
    settings: Number(row.settings),
  }
}
