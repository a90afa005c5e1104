import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { PhotoStore } from '../../src/bench/photos/photo-ports.ts'
import { filePhotoStore } from '../../src/store/files/photo-store.ts'
import { postgresPhotoStore } from '../../src/store/postgres/photo-store.ts'
import { postgresForTest } from '../support/open-stores.ts'
import { postgresHere } from '../support/postgres.ts'

/** A store under test. `other`: as another program finds it. */
type PhotosForTest = { readonly store: PhotoStore; readonly other: PhotoStore; readonly close: () => Promise<void> }

const inFolder = async (): Promise<PhotosForTest> => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-photos-'))
  return {
    store: filePhotoStore(folder),
    other: filePhotoStore(folder),
    close: () => rm(folder, { recursive: true }),
  }
}

const inDatabase = async (): Promise<PhotosForTest> => {
  const { store, other, close } = await postgresForTest()
  return { store: postgresPhotoStore(store.db), other: postgresPhotoStore((await other()).db), close }
}

const places: readonly (readonly [string, () => Promise<PhotosForTest>])[] = [
  ['files', inFolder],
  ...(postgresHere() ? ([['PostgreSQL', inDatabase]] as const) : []),
]

const picture = (width: number, height: number): Promise<Buffer> =>
  sharp({ create: { width, height, channels: 3, background: '#3366aa' } })
    .png()
    .toBuffer()

describe.each(places)('store of photographs: %s', (_name, open) => {
  let under: PhotosForTest
  beforeEach(async () => {
    under = await open()
  })
  afterEach(() => under.close())

  it('keeps a photograph large and small, for other programs too', async () => {
    const outcome = await under.store.put(await picture(2400, 1200))
    expect(outcome).toMatchObject({ kind: 'kept', isNew: true, photo: { widthPx: 2048, heightPx: 1024 } })
    if (outcome.kind !== 'kept') return
    const { id, bytes } = outcome.photo
    const sizes = async (size: 'large' | 'small') => sharp((await under.other.get(id, size))!).metadata()
    expect(await sizes('large')).toMatchObject({ format: 'jpeg', width: 2048, height: 1024 })
    expect(await sizes('small')).toMatchObject({ format: 'jpeg', width: 480, height: 240 })
    expect(await under.other.get(id, 'large')).toHaveLength(bytes)
    expect(await under.other.has(id)).toBe(true)
  })

  it('keeps the same one once, though two programs send it at once', async () => {
    const sent = await picture(300, 200)
    const outcomes = await Promise.all([under.store.put(sent), under.other.put(sent)])
    expect(outcomes.map(({ kind }) => kind)).toEqual(['kept', 'kept'])
    expect(await under.store.put(sent)).toMatchObject({ kind: 'kept', isNew: false })
    const ids = outcomes.map((outcome) => (outcome.kind === 'kept' ? outcome.photo.id : ''))
    expect(ids[0]).toBe(ids[1])
  })

  it('has none of another name, whatever it is', async () => {
    for (const id of ['0'.repeat(64), '../../etc/passwd', '\u0000', "'; drop table photo; --"]) {
      expect([await under.store.get(id, 'large'), await under.store.has(id)]).toEqual([null, false])
    }
  })

  it('refuses what is no photograph', async () => {
    expect(await under.store.put(new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>'))).toMatchObject({
      kind: 'refused',
      problem: { code: 'not-a-photograph' },
    })
  })
})
