import type { Insertable, Kysely, Selectable } from 'kysely'
import type { PeopleStore } from '../../bench/people/people-ports.ts'
import { deviceSchema, personSchema, type Device, type Person } from '../../bench/people/person.ts'
import { kept } from './kept.ts'
import type { Tables } from './tables.ts'

const done = { kind: 'kept' } as const

/** The port of people on a database. */
export const sqlPeopleStore = (db: Kysely<Tables>): PeopleStore => ({
  people: async () =>
    (await db.selectFrom('person').selectAll().orderBy('added_at').orderBy('id').execute()).map(personOf),
  putPerson: (person) =>
    kept(db, async () => {
      const { id, ...rest } = personRow(person)
      await db
        .insertInto('person')
        .values({ id, ...rest })
        .onConflict((conflict) => conflict.column('id').doUpdateSet(rest))
        .execute()
      return done
    }),
  devices: async () =>
    (await db.selectFrom('device').selectAll().orderBy('seen_at', 'desc').orderBy('id').execute()).map(deviceOf),
  deviceWith: async (token) => {
    const row = await db
      .selectFrom('device')
      .selectAll()
      .where((where) =>
        where.or([where('token', '=', token), where('next_token', '=', token), where('last_token', '=', token)]),
      )
      .executeTakeFirst()
    return row === undefined ? null : deviceOf(row)
  },
  addDevice: (device) =>
    kept(db, async () => {
      await db.insertInto('device').values(deviceRow(device)).execute()
      return done
    }),
  changeDevice: async (device) => {
    const outcome = await kept(db, async () => {
      const { id, ...rest } = deviceRow(device)
      const changed = await db
        .updateTable('device')
        .set(rest)
        .where('id', '=', id)
        .where('version', '=', device.version - 1)
        .executeTakeFirst()
      return { kind: 'kept' as const, isChanged: changed.numUpdatedRows > 0n }
    })
    return outcome.kind === 'kept' && outcome.isChanged
  },
  removeDevice: (id) =>
    kept(db, async () => {
      await db.deleteFrom('device').where('id', '=', id).execute()
      return done
    }),
  removeDevicesOf: (person) =>
    kept(db, async () => {
      await db.deleteFrom('device').where('person', '=', person).execute()
      return done
    }),
})

export const personOf = ({ added_at, gone_at, ...row }: Selectable<Tables['person']>): Person =>
  personSchema.parse({ ...row, addedAt: added_at, goneAt: gone_at })

export const personRow = ({ addedAt, goneAt, ...person }: Person): Insertable<Tables['person']> => ({
  ...person,
  added_at: addedAt,
  gone_at: goneAt,
})

const deviceOf = (row: Selectable<Tables['device']>): Device =>
  deviceSchema.parse({
    id: row.id,
    person: row.person,
    name: row.name,
    token: row.token,
    next: row.next_token,
    nextAt: row.next_at,
    last: row.last_token,
    lastUntil: row.last_until,
    tokenAt: row.token_at,
    signedInAt: row.signed_in_at,
    seenAt: row.seen_at,
    expiresAt: row.expires_at,
    version: row.version,
  })

const deviceRow = (device: Device): Insertable<Tables['device']> => ({
  id: device.id,
  person: device.person,
  name: device.name,
  token: device.token,
  next_token: device.next,
  next_at: device.nextAt,
  last_token: device.last,
  last_until: device.lastUntil,
  token_at: device.tokenAt,
  signed_in_at: device.signedInAt,
  seen_at: device.seenAt,
  expires_at: device.expiresAt,
  version: device.version,
})
