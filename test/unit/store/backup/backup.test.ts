import { spawnSync } from 'node:child_process'
import { readdir, readFile, writeFile, truncate, mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { valueOf } from '../../../../src/base/result.ts'
import { fillDemoBench } from '../../../../src/bench/demo.ts'
import { blueprintById } from '../../../../src/blueprint/library.ts'
import { checkBackup } from '../../../../src/store/backup/check-backup.ts'
import { restoreBackup } from '../../../../src/store/backup/restore-backup.ts'
import { openStore } from '../../../../src/store/sqlite/open-store.ts'
import { backUp, everythingIn, fillSmall, lookOver, tempFolder } from '../../../support/filled-store.ts'
import { log, added } from '../../../support/notes.ts'

let folder = ''
let remove: () => Promise<void>
let data = ''
let file = ''
beforeEach(async () => {
  ;({ folder, remove } = await tempFolder())
  data = join(folder, 'data')
  file = join(folder, 'out', 'bench.zip')
})
afterEach(() => remove())

const open = (where: string) => openStore({ folder: where })

describe('a backup', () => {
  it('comes back as it was: a year of the demonstration, with what lists and books keep', async () => {
    const store = valueOf(await openStore({ folder: data }))
    await fillDemoBench({ stores: store, blueprintById })
    const months = await store.books.months('demo', 'calendar')
    await store.close()
    const made = await backUp(data, file)
    expect(made.counts).toMatchObject({ photographs: 0 })
    expect(made.counts.machines).toBeGreaterThan(50)
    const to = join(folder, 'again')
    expect(valueOf(await restoreBackup(file, to, open)).counts).toEqual(made.counts)
    expect(await everythingIn(to)).toEqual(await everythingIn(data))
    expect((await lookOver(to)).problems).toEqual([])
    const again = valueOf(await openStore({ folder: to }))
    expect(await again.books.months('demo', 'calendar')).toEqual(months)
    await again.close()
  })

  it('is one file that any other reader of ZIP opens, with nothing left beside it', async (context) => {
    const id = await fillSmall(data)
    await backUp(data, file)
    expect(await readdir(join(folder, 'out'))).toEqual(['bench.zip'])
    // Another reader of ZIP, written by others: the one of Python's standard library, which checks every CRC-32.
    const script =
      'import json,sys,zipfile,hashlib\nz=zipfile.ZipFile(sys.argv[1])\nassert z.testzip() is None\nm=json.loads(z.read("manifest.json"))\nassert all(hashlib.sha256(z.read(f["name"])).hexdigest()==f["sha256"] for f in m["files"])\nprint(json.dumps([sorted(z.namelist()),[json.loads(l) for l in z.read("machines.jsonl").decode().splitlines()]]))'
    const python = spawnSync('python3', ['-c', script, file], { encoding: 'utf8' })
    if (python.error !== undefined) return context.skip('there is no python3 to read it with')
    expect(python.stderr).toBe('')
    const [names, lines] = JSON.parse(python.stdout) as [string[], { note: { content: { text?: string } } }[]]
    expect(names).toEqual(
      [
        'README.txt',
        'blueprints.jsonl',
        'logs.jsonl',
        'machines.jsonl',
        'manifest.json',
        'people.jsonl',
        'settings.jsonl',
        `photographs/${id}-large.jpg`,
        `photographs/${id}-small.jpg`,
      ].sort(),
    )
    expect(lines.map(({ note }) => note.content.text)).toContain('Görel’s “best” 😀\nline two')
  })

  it('is of one moment while others write, and holds up none of them', async () => {
    await fillSmall(data)
    const store = valueOf(await openStore({ folder: data }))
    let isMade = false
    let written = 0
    const writing = (async () => {
      for (; !isMade; written++) {
        const [first] = log([added()], `w${written}`)
        const outcome = await store.logs.write('own', [
          { kind: 'machine', id: `w${written}`, expectedVersion: 0, entries: [first] },
          { kind: 'expense', id: `w${written}`, expectedVersion: 0, entries: [spent(`w${written}`)] },
        ])
        expect(outcome).toEqual({ kind: 'appended' })
        await new Promise(setImmediate)
      }
    })()
    const made = await backUp(data, file)
    isMade = true
    await writing
    await store.close()
    // Each machine was written together with an expense: a reading of one moment has as many of both.
    expect(made.counts.machines - 2).toBe(made.counts.logs - 1)
    expect(written).toBeGreaterThan(made.counts.machines - 2)
  })
})

const spent = (id: string) => ({
  id: 'a',
  log: id,
  seq: 1,
  at: '2026-03-15T10:00:00.000Z',
  content: { kind: 'spent', day: '2026-03-15', what: 'Solder', costMinor: 1, currency: 'GBP', minutes: 0 },
})

describe('restoring', () => {
  beforeEach(async () => {
    await fillSmall(data)
    await backUp(data, file)
  })

  it('refuses a folder that holds anything, and leaves it as it is', async () => {
    await writeFile(join(folder, 'out', 'mine.txt'), 'mine')
    const outcome = await restoreBackup(file, join(folder, 'out'), open)
    expect(outcome).toMatchObject({ kind: 'refused', problems: [{ code: 'not-empty' }] })
    expect((await readdir(join(folder, 'out'))).sort()).toEqual(['bench.zip', 'mine.txt'])
  })

  it('takes an empty folder', async () => {
    await mkdir(join(folder, 'empty'))
    valueOf(await restoreBackup(file, join(folder, 'empty'), open))
    expect(await everythingIn(join(folder, 'empty'))).toEqual(await everythingIn(data))
  })

  it('leaves nothing behind where it could not end', async () => {
    const outcome = await restoreBackup(file, join(folder, 'to'), () =>
      Promise.reject(new Error('the lights went out')),
    )
    expect(outcome).toMatchObject({
      kind: 'refused',
      problems: [{ what: expect.stringContaining('lights') as string }],
    })
    expect((await readdir(folder)).sort()).toEqual(['data', 'out'])
  })
})

describe('a damaged backup', () => {
  beforeEach(async () => {
    await fillSmall(data)
    await backUp(data, file)
  })

  it('is known wherever it was cut off', async () => {
    const whole = await readFile(file)
    for (const share of [0, 0.2, 0.5, 0.9, 0.999]) {
      await writeFile(file, whole)
      await truncate(file, Math.floor(whole.length * share))
      expect((await checkBackup(file)).problems).not.toEqual([])
      expect((await restoreBackup(file, join(folder, 'to'), open)).kind).toBe('refused')
    }
  })

  it.each([1, 2, 3])('is known by any byte that changed, or is as it was without it (seed %i)', async (seed) => {
    const whole = await readFile(file)
    const right = JSON.stringify(await everythingIn(data))
    const random = xoroshiro128plus(seed)
    for (let turn = 0; turn < 25; turn++) {
      const bytes = Buffer.from(whole)
      const at = uniformInt(random, 0, bytes.length - 1)
      bytes[at] = bytes[at] ^ (1 << uniformInt(random, 0, 7))
      await writeFile(file, bytes)
      if ((await checkBackup(file)).problems.length > 0) continue
      // A byte that says nothing of what is inside, such as the time of day in a header.
      const to = join(folder, `flip-${turn}`)
      valueOf(await restoreBackup(file, to, open))
      expect(JSON.stringify(await everythingIn(to)), `byte ${at}`).toBe(right)
      expect((await lookOver(to)).problems).toEqual([])
    }
  })

  it('is told by file, line and machine', async () => {
    const { problems } = await checkBackup(await changed((text) => text.replace('"paidMinor":500', '"paidMinor":-5')))
    expect(problems.map(({ where }) => where)).toContain('machines.jsonl line 1')
    expect(problems.map(({ what }) => what).join()).toContain('machine m1')
    expect(problems.map(({ where }) => where)).toContain('machines.jsonl')
  })

  it('is told where notes are missing from the middle', async () => {
    const { problems } = await checkBackup(await changed((text) => text.split('\n').toSpliced(1, 1).join('\n')))
    expect(problems.find(({ code }) => code === 'damaged-log')).toMatchObject({ where: 'machine m1' })
  })

  /** The backup with the lines of its machines changed, written by another writer of ZIP. */
  const changed = async (change: (text: string) => string): Promise<string> => {
    const { openZip } = await import('../../../../src/store/backup/zip-reader.ts')
    const { writeZip } = await import('../../../../src/store/backup/zip-writer.ts')
    const { open: openFile } = await import('node:fs/promises')
    const zip = await openZip(file)
    const to = join(folder, 'changed.zip')
    const handle = await openFile(to, 'w')
    await writeZip(handle, async (sink) => {
      for (const inside of zip.files) {
        const chunks: Uint8Array[] = []
        for await (const chunk of inside.read()) chunks.push(chunk)
        const whole = Buffer.concat(chunks)
        const text = inside.name === 'machines.jsonl' ? Buffer.from(change(whole.toString())) : whole
        await sink.add(inside.name, one(text), 'packed')
      }
    })
    await handle.close()
    await zip.close()
    return to
  }
})

async function* one(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield await Promise.resolve(bytes)
}
