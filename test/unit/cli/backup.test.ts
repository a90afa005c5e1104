import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { picture } from '../../support/filled-store.ts'
import { readCsv } from '../../support/csv.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
  await line.run('add', '--name', 'Green', '--blueprint', 'bagged-upright-two-motors', '--paid', '10.01')
})
afterEach(() => line.remove())

const at = (name: string): string => join(line.folder, name)

describe('thrum backup, restore and verify', () => {
  it('keep a machine and its photograph', async () => {
    await writeFile(at('p.jpg'), await picture(3))
    expect((await line.run('photo', 'Green', at('p.jpg'))).err).toBe('')
    const { value } = await line.json('backup', at('b.zip'))
    expect(value).toMatchObject({ counts: { machines: 1, notes: 2, photographs: 1 }, lost: [] })
    expect((await line.run('restore', at('b.zip'), '--data', at('again'))).out).toContain('1 machine, 2 notes')
    expect(await line.json('verify', '--data', at('again'))).toMatchObject({ code: 0, value: { kind: 'whole' } })
    expect((await line.run('list', '--data', at('again'))).out).toBe((await line.run('list')).out)
    expect((await line.run('restore', at('b.zip'), '--data', at('again'))).err).toContain('only an empty folder')
  })

  it('say what is damaged, with an exit code', async () => {
    await line.run('backup', at('b.zip'))
    expect((await line.run('verify', at('b.zip'))).out).toContain('Whole')
    const bytes = await readFile(at('b.zip'))
    await writeFile(at('b.zip'), bytes.subarray(0, bytes.length - 40))
    expect(await line.run('verify', at('b.zip'))).toMatchObject({ code: 1 })
    expect(await line.run('verify', at('none.zip'))).toMatchObject({ code: 1 })
    expect(await line.json('verify', '--data', at('none'))).toMatchObject({ code: 1, value: { problems: [{ code: 'no-store' }] } }) // prettier-ignore
  })
})

describe('thrum export', () => {
  it('writes lines of JSON and tables that say the same, with a word on each', async () => {
    await line.run('export', at('out'))
    const names = await readdir(at('out'))
    expect(names.toSorted()).toEqual(
      ['README.txt', 'blueprints.jsonl', 'expenses.csv', 'ledger.csv', 'logs.jsonl', 'machines.csv', 'machines.jsonl', 'people.jsonl', 'photographs', 'prices.csv', 'settings.jsonl', 'shelf.csv', 'stock-book.csv'], // prettier-ignore
    )
    const [note] = (await readFile(at('out/machines.jsonl'), 'utf8')).trim().split('\n')
    expect(JSON.parse(note)).toMatchObject({ bench: 'own', note: { content: { name: 'Green', paidMinor: 1001 } } })
    const [row] = readCsv(await readFile(at('out/machines.csv'), 'utf8'), ['name', 'paid'])
    expect(row).toEqual({ name: 'Green', paid: '10.01' })
    expect((await line.run('export', at('out'))).err).toContain('only an empty folder')
  })
})
