import { mkdtemp, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { filePhotoStore } from '../../../src/store/files/photo-store.ts'

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'thrum-photos-'))
})
afterEach(() => rm(folder, { recursive: true, force: true }))

/** A picture with something to see in it: red on the left, blue on the right. */
const picture = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#0000ff' } }).composite([
    {
      input: { create: { width: Math.floor(width / 2), height, channels: 3, background: '#ff0000' } },
      left: 0,
      top: 0,
    },
  ])
const filesIn = async (): Promise<readonly string[]> =>
  (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((one) => one.isFile())
    .map(({ name }) => name)

describe('photographs', () => {
  it('are made smaller, once large and once small, and keep their shape', async () => {
    const store = filePhotoStore(folder)
    const outcome = await store.put(await picture(4000, 3000).jpeg().toBuffer())
    expect(outcome).toMatchObject({ kind: 'kept', isNew: true, photo: { widthPx: 2048, heightPx: 1536 } })
    if (outcome.kind !== 'kept') return
    const small = await sharp((await store.get(outcome.photo.id, 'small'))!).metadata()
    expect([small.format, small.width, small.height]).toEqual(['jpeg', 480, 360])
    expect(await store.has(outcome.photo.id)).toBe(true)
  })

  it('lose the place and the device they were taken with, and are turned upright first', async () => {
    const store = filePhotoStore(folder)
    // Orientation 6: the camera was held on its side. EXIF 2.32 (CIPA DC-008), tag 0x0112.
    const sent = await picture(400, 200)
      .withMetadata({ orientation: 6 })
      .withExif({ IFD0: { Make: 'Invented Camera' }, IFD3: { GPSLatitude: '51/1 30/1 0/1' } })
      .jpeg()
      .toBuffer()
    expect(sent.includes('Invented Camera')).toBe(true)
    const outcome = await store.put(sent)
    if (outcome.kind !== 'kept') throw new Error('not kept')
    expect(outcome.photo).toMatchObject({ widthPx: 200, heightPx: 400 })
    const kept = Buffer.from((await store.get(outcome.photo.id, 'large'))!)
    expect(kept.includes('Invented Camera')).toBe(false)
    expect((await sharp(kept).metadata()).exif).toBeUndefined()
  })

  it('are kept once, however often they are sent', async () => {
    const store = filePhotoStore(folder)
    const sent = await picture(300, 300).png().toBuffer()
    const first = await store.put(sent)
    const second = await store.put(sent)
    expect([first, second]).toMatchObject([
      { kind: 'kept', isNew: true },
      { kind: 'kept', isNew: false },
    ])
    // The large one, the small one, and their sums.
    expect(await filesIn()).toHaveLength(3)
  })

  it.each([
    ['text under the name of a photograph', Buffer.from('not a photograph'), 'not-a-photograph'],
    ['a drawing with a script in it', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>1</script></svg>'), 'not-a-photograph'], // prettier-ignore
    // The first bytes of an MP4 file (ISO/IEC 14496-12, box `ftyp`).
    ['a film', Buffer.from('00000018667479706d703432000000006d70343269736f6d', 'hex'), 'not-a-photograph'],
    ['nothing', Buffer.alloc(0), 'not-a-photograph'],
  ])('refuse %s, and keep nothing', async (_what, bytes, code) => {
    expect(await filePhotoStore(folder).put(bytes)).toMatchObject({ kind: 'refused', problem: { code } })
    expect(await filesIn()).toEqual([])
  })

  it('refuse one that ends too soon, and one of 60 megapixels', async () => {
    const store = filePhotoStore(folder)
    const whole = await picture(1000, 1000).jpeg().toBuffer()
    expect(await store.put(whole.subarray(0, whole.length / 2))).toMatchObject({
      kind: 'refused',
      problem: { code: 'broken-photograph' },
    })
    const huge = await sharp({ create: { width: 10_000, height: 6000, channels: 3, background: '#fff' } })
      .png({ compressionLevel: 1 })
      .toBuffer()
    const outcome = await store.put(huge)
    expect(outcome).toMatchObject({ kind: 'refused', problem: { code: 'too-many-pixels' } })
    if (outcome.kind === 'refused') expect(outcome.problem.what).toContain('60 megapixels')
  })

  it('say so when they cannot be written, and find none under a name that is no hash', async () => {
    await writeFile(join(folder, 'file'), '')
    const store = filePhotoStore(join(folder, 'file'))
    expect(await store.put(await picture(20, 20).jpeg().toBuffer())).toMatchObject({ kind: 'not-kept' })
    expect(await store.get('../../etc/passwd', 'large')).toBeNull()
    expect(await store.has('..')).toBe(false)
  })
})
