import type { Migration } from 'kysely'
import { addMachinesBehind } from './migration-machines-behind.ts'
import { addPeopleAndDevices } from './migration-people-and-devices.ts'

/**
 * The steps that SQLite and PostgreSQL take alike, from 0006 on, in words that both understand: `text`, `integer`, constraints,
 * indexes. A column that numbers its rows is the one thing that has to differ; it asks `isPostgres`. A step that was given out is never
 * changed; a new one is added.
 */
export const commonMigrations: Readonly<Record<string, Migration>> = {
  '0006-people-and-devices': { up: addPeopleAndDevices },
  '0007-machines-behind': { up: addMachinesBehind },
}
