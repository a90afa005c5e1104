import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { main } from '../../../src/cli/main.ts'
import { readPassphrase } from '../../../src/cli/read-passphrase.ts'

describe('the command line of people', () => {
  let folder = ''
  beforeAll(async () => void (folder = await mkdtemp(join(tmpdir(), 'thrum-people-'))))
  afterAll(() => rm(folder, { recursive: true }))

  const run = async (words: string | null, ...args: readonly string[]) => {
    const out: string[] = []
    const file = join(folder, 'words')
    if (words !== null) await writeFile(file, `${words}\n`)
    const output = { out: (text: string) => void out.push(text), err: (text: string) => void out.push(text) }
    const environment = { THRUM_DATA: join(folder, 'data'), ...(words === null ? {} : { THRUM_PASSPHRASE_FILE: file }) }
    return { code: await main(args, output, environment, { ln: 4, r: 8, p: 1 }), text: out.join('\n') }
  }

  it('names people, changes what they may do, and takes them off', async () => {
    expect((await run(null, 'people')).text).toContain('Nobody has a name here')
    expect(await run('too short', 'people', 'add', 'Ada', '--role', 'keeper')).toMatchObject({
      code: 1,
      text: expect.stringContaining('at least 10 characters') as string,
    })
    expect(await run('correct horse battery', 'people', 'add', 'Ada', '--role', 'keeper')).toEqual({
      code: 0,
      text: 'Added: Ada, keeper of the books.',
    })
    expect((await run('four plain words here', 'people', 'add', 'Ben', '--role', 'bench', '--json')).text).not.toMatch(
      /scrypt|four plain/,
    )
    expect((await run('four plain words here', 'people', 'add', 'Cid')).text).toMatch(/^--role: It is not said what they may do/) // prettier-ignore
    expect((await run(null, 'people')).text).toBe('Ada: keeper of the books\nBen: at the bench')
    expect(await run(null, 'people', 'role', 'Ada', '--role', 'bench')).toMatchObject({ code: 1 })
    expect(await run(null, 'people', 'remove', 'ben')).toEqual({ code: 0, text: 'Taken off: Ben, at the bench.' })
    expect(await run(null, 'people', 'turn', 'Ada')).toMatchObject({
      code: 1,
      text: expect.stringContaining('add, role, remove') as string,
    })
    expect(await run('another set of words', 'passphrase')).toMatchObject({
      code: 1,
      text: expect.stringContaining('each has a passphrase of their own') as string,
    })
    expect((await run(null, 'devices')).text).toBe('No device is signed in.')
    expect(await run(null, 'shut-out', 'abc')).toMatchObject({ code: 1 })
  })

  it('takes no passphrase as an argument', async () => {
    for (const args of [
      ['passphrase', 'correct horse battery'],
      ['people', 'add', 'Cid', 'correct horse battery', '--role', 'bench'],
      ['serve', '--passphrase', 'correct horse battery'],
    ])
      expect((await run(null, ...args)).code).toBe(2)
  })
})

describe('typing a passphrase', () => {
  const typed = (...lines: readonly string[]) => {
    const left = [...lines]
    return () => Promise.resolve(left.shift() ?? '')
  }
  it('is done twice alike', async () => {
    expect(await readPassphrase({}, typed('same words', 'same words'))).toEqual({ kind: 'ok', value: 'same words' })
    expect(await readPassphrase({}, typed('same words', 'other words'))).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'not-the-same' }],
    })
    let asked = 0
    const short = () => Promise.resolve(++asked === 1 ? 'short' : 'a second one')
    expect(await readPassphrase({}, short)).toMatchObject({ problems: [{ code: 'passphrase-too-short' }] })
    expect(asked).toBe(1)
    expect(await readPassphrase({}, null)).toMatchObject({ kind: 'refused', problems: [{ code: 'no-terminal' }] })
    expect(await readPassphrase({ THRUM_PASSPHRASE_FILE: '/nowhere/words' }, null)).toMatchObject({
      problems: [{ code: 'no-passphrase-file' }],
    })
  })
})
