import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { openBenchStore, type StorePlace } from '../../src/store/open-bench-store.ts'
import { moveBench } from '../../src/store/move/move-bench.ts'
import { added, log } from '../support/notes.ts'
import { postgresHere, sharedPostgres } from '../support/postgres.ts'
import { put } from './log-store.ts'

describe.runIf(postgresHere())('moving a bench', () => {
  let folder = ''
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'thrum-move-'))
  })
  afterEach(() => rm(folder, { recursive: true }))

  const withStore = async <T>(place: StorePlace, work: (store: Opened) => Promise<T>): Promise<T> => {
    const store = valueOf(await openBenchStore(place))
    try {
      return await work(store)
    } finally {
      await store.close()
    }
  }

  it('takes everything from a folder to a database and on to another folder, photographs too', async () => {
    const image = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#804020' } }).png().toBuffer() // prettier-ignore
    const places: readonly [StorePlace, StorePlace, StorePlace] = [
      { folder: join(folder, 'one') },
      { folder: join(folder, 'one'), database: await (await sharedPostgres()).newDatabase() },
      { folder: join(folder, 'other') },
    ]
    await withStore(places[0], async (store) => {
      await store.notes.add('own', 'z', log([added(), { kind: 'said', text: 'Ω “½” \u0000 吸尘器' }], 'z'))
      await store.notes.add('own', 'a', log([added({ paidMinor: 700 })], 'a'))
      await store.logs.write('own', [{ kind: 'part', id: 'p1', expectedVersion: 0, entries: [put('p1')] }])
      await store.settings.add({ at: '2026-03-14T12:00:00.000Z', change: { hourMinor: 900 } })
      expect(await store.photos.put(image)).toMatchObject({ kind: 'kept' })
    })
    const first = valueOf(await moveBench(places[0], places[1]))
    expect(first).toMatchObject({ counts: { machine: 2, log: 1, settings: 1 }, photos: 2 })
    expect(first.to).not.toMatch('one')
    expect(valueOf(await moveBench(places[1], places[2]))).toMatchObject({ counts: first.counts, photos: 2 })
    // Not by what the move itself compares: the answers of the ports, the lists and the sums of the books among them.
    const asked = (place: StorePlace) =>
      withStore(place, async ({ notes, logs, settings, books, photos }) => ({
        notes: await notes.list('own'),
        parts: await logs.list('own', 'part'),
        settings: await settings.changes(),
        months: await books.months('own', 'from-6th'),
        list: (await books.machines('own', { open: true, limit: 9 })).items,
        photo: await photos.put(image),
      }))
    const answers = await asked(places[0])
    expect(answers.photo).toMatchObject({ isNew: false })
    expect(answers.list.map(({ id }) => id)).toEqual(['a', 'z'])
    expect(await asked(places[1])).toEqual(answers)
    expect(await asked(places[2])).toEqual(answers)
  })

  it('is refused into a store that holds something, and leaves it as it was', async () => {
    const [from, to] = [{ folder: join(folder, 'one') }, { folder: join(folder, 'other') }]
    await withStore(from, ({ notes }) => notes.add('own', 'm1', log([added()])))
    await withStore(to, ({ notes }) => notes.add('own', 'm2', log([added()], 'm2')))
    expect(await moveBench(from, to)).toMatchObject({ kind: 'refused', problems: [{ code: 'not-empty' }] })
    expect(await withStore(to, ({ notes }) => notes.list('own'))).toHaveLength(1)
    expect(await moveBench({ folder: join(folder, 'nothing') }, to)).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'no-store' }],
    })
  })
})

type Opened = Extract<Awaited<ReturnType<typeof openBenchStore>>, { readonly kind: 'ok' }>['value']
