import Database from 'libsql'
import { expect, it } from 'vitest'
import { keepingPrepared } from '../../../src/store/sqlite/prepared.ts'

const shelf = (): Database.Database => {
  const database = new Database(':memory:')
  database.exec('create table part (id text primary key, count integer)')
  return database
}

it('asks the same statement again with other values', () => {
  const database = shelf()
  const prepare = keepingPrepared(database)
  const insert = 'insert into part values (?, ?)'
  for (const [i, id] of ['belt', 'hose', 'brush'].entries()) prepare(insert).run([id, i])
  expect(prepare(insert)).toBe(prepare(insert))
  const find = 'select id from part where count >= ? order by id'
  expect(prepare(find).all([1])).toEqual([{ id: 'brush' }, { id: 'hose' }])
  expect(prepare(find).all([2])).toEqual([{ id: 'brush' }])
  database.close()
})

it('lets go of a statement that failed, so that the next one is whole', () => {
  const database = shelf()
  const prepare = keepingPrepared(database)
  const insert = 'insert into part values (?, ?)'
  prepare(insert).run(['belt', 1])
  const before = prepare(insert)
  expect(() => before.run(['belt', 2])).toThrow(/UNIQUE/)
  expect(prepare(insert)).not.toBe(before)
  prepare(insert).run(['hose', 2])
  expect(prepare('select count(*) as n from part').all([])).toEqual([{ n: 2 }])
  database.close()
})

it('gives the columns that a table has now', () => {
  const database = shelf()
  const prepare = keepingPrepared(database)
  prepare('insert into part values (?, ?)').run(['belt', 1])
  expect(prepare('select * from part').all([])).toEqual([{ id: 'belt', count: 1 }])
  prepare('alter table part add column place text').run([])
  expect(prepare('select * from part').all([])).toEqual([{ id: 'belt', count: 1, place: null }])
  database.close()
})

it('reads row by row beside another reading of the same statement', () => {
  const database = shelf()
  const prepare = keepingPrepared(database)
  for (const id of ['belt', 'hose']) prepare('insert into part values (?, ?)').run([id, 1])
  const all = 'select id from part order by id'
  const seen: unknown[] = []
  for (const row of prepare(all).iterate([])) seen.push(row, prepare(all).all([]).length)
  expect(seen).toEqual([{ id: 'belt' }, 2, { id: 'hose' }, 2])
  database.close()
})
