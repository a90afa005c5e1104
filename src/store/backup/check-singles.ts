import type { Kysely } from 'kysely'
import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ownBlueprintSchema } from '../../bench/own-blueprint.ts'
import { benchItself, personSchema } from '../../bench/people/person.ts'
import { keptChangeSchema } from '../../bench/settings-change.ts'
import { jsonOf } from '../copy/json-of.ts'
import type { Tables } from '../sql/tables.ts'
import type { Tally } from './tally.ts'

/** People, blueprints of one's own and changes of the settings, each by its schema. */
export const checkSingles = async (db: Kysely<Tables>, tally: Tally): Promise<readonly Problem[]> => {
  const problems: Problem[] = []
  for (const { added_at, gone_at, ...row } of await db.selectFrom('person').selectAll().orderBy('id').execute()) {
    const person = parse(personSchema, { ...row, addedAt: added_at, goneAt: gone_at }, 'person')
    if (person.kind === 'refused') problems.push(damagedRow(`person ${row.id}`, person.problems))
    else if (row.id !== benchItself) tally.record({ kind: 'person', person: person.value })
  }
  for (const { id, content } of await db
    .selectFrom('own_blueprint')
    .select(['id', 'content'])
    .orderBy('rank')
    .execute()) {
    const own = parse(ownBlueprintSchema, jsonOf(content), 'blueprint')
    if (own.kind === 'refused') problems.push(damagedRow(`blueprint ${id}`, own.problems))
    else tally.record({ kind: 'blueprint', own: own.value })
  }
  const changes = await db.selectFrom('settings_change').select(['rank', 'at', 'content']).orderBy('rank').execute()
  for (const { rank, at, content } of changes) {
    const change = parse(keptChangeSchema, { at, change: jsonOf(content) }, 'change')
    if (change.kind === 'refused') problems.push(damagedRow(`change ${rank} of the settings`, change.problems))
    else tally.record({ kind: 'settings', change: change.value })
  }
  return problems
}

/** A row that this program did not write. */
export const damagedRow = (where: string, [first]: readonly Problem[]): Problem =>
  problem(
    'damaged-row',
    where,
    `It is not as it was written: ${first.where}: ${first.what}`,
    'Restore the newest backup into an empty folder',
  )
