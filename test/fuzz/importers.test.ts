import fc from 'fast-check'
import sharp from 'sharp'
import { beforeAll, describe, expect, it } from 'vitest'
import { parse } from '../../src/base/parse.ts'
import { keepBlueprint, keepVariant, type BlueprintDeps } from '../../src/bench/blueprints.ts'
import { importBooks } from '../../src/bench/books/import/import-books.ts'
import { benchNotesSchema } from '../../src/bench/note.ts'
import { editsFileSchema } from '../../src/blueprint/adapt-edits.ts'
import { makeImage } from '../../src/store/files/photo-image.ts'
import { memoryBlueprintStore } from '../../src/store/memory/blueprint-store.ts'
import { benchDeps } from '../support/bench-deps.ts'
import { added, log } from '../support/notes.ts'
import { tinyBlueprint } from '../support/tiny-blueprint.ts'
import { inTime, memoryBound, runsOf, seed } from './runs.ts'

const tokens = [
  '"',
  '{',
  '}',
  '[',
  ']',
  ',',
  '\n',
  '\r\n',
  ';',
  '\u0000',
  '\ufeff',
  '__proto__',
  '1e999',
  '-',
  'null',
  '""',
  '\ud83d\ude00',
  '9'.repeat(50),
]

type Change = readonly [place: number, way: number, length: number, token: string]
const changes: fc.Arbitrary<readonly Change[]> = fc.array(
  fc.tuple(fc.nat(), fc.nat(4), fc.integer({ min: 1, max: 64 }), fc.constantFrom(...tokens)),
  { minLength: 1, maxLength: 6 },
)

/** Bytes with some turned, left out, doubled, cut off or put in. */
const changed = (bytes: Buffer, all: readonly Change[]): Buffer =>
  all.reduce((now, [place, way, length, token]) => {
    const at = now.length === 0 ? 0 : place % now.length
    const [before, after] = [now.subarray(0, at), now.subarray(at)]
    if (way === 0)
      return Buffer.concat([before, Buffer.from([(after[0] ?? 0) ^ (1 << (place % 8))]), after.subarray(1)])
    if (way === 1) return Buffer.concat([before, after.subarray(length)])
    if (way === 2) return Buffer.concat([before, after.subarray(0, length), after])
    if (way === 3) return Buffer.concat([before, Buffer.from(token), after])
    return place % 4 === 0 ? before : Buffer.concat([before, Buffer.from(token)])
  }, bytes)

const json = (text: string): unknown => {
  try {
    return JSON.parse(text) as unknown
  } catch {
    return undefined
  }
}

const each = async (what: string, whole: Buffer, usual: number, take: (bytes: Buffer) => unknown): Promise<void> => {
  const isBounded = memoryBound()
  const property = fc.asyncProperty(changes, async (all) => {
    await inTime(what, () => take(changed(whole, all)))
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })
  await fc.assert(property, { seed, numRuns: runsOf(usual) })
  isBounded()
}

describe('what is taken in from files, with its bytes changed', () => {
  const blueprints = (): BlueprintDeps => ({
    library: [tinyBlueprint],
    own: memoryBlueprintStore(),
    now: () => '2026-03-14T10:00:00.000Z',
  })

  it('a blueprint', () =>
    each('blueprint', Buffer.from(JSON.stringify(tinyBlueprint)), 150, (bytes) =>
      keepBlueprint(blueprints(), json(bytes.toString())),
    ))

  it('edits of one', () => {
    const edits = {
      format: 'thrum-edits-1',
      edits: [
        { kind: 'part-moved', part: 'motor', behind: 'back-cover' },
        { kind: 'renamed', what: 'part', id: 'motor', name: 'Old motor' },
      ],
    }
    expect(parse(editsFileSchema, edits, 'edits').kind).toBe('ok')
    return each('edits', Buffer.from(JSON.stringify(edits)), 150, async (bytes) => {
      const parsed = parse(editsFileSchema, json(bytes.toString()), 'edits')
      if (parsed.kind === 'ok') await keepVariant(blueprints(), 'tiny', { name: 'Mine', edits: parsed.value.edits })
    })
  })

  it('bench notes', () => {
    const notes = {
      format: 'thrum-notes-1',
      notes: log([added(), { kind: 'said', text: 'Heard it' }, { kind: 'opened', cover: 'back-cover', minutes: 3 }]),
    }
    return each('notes', Buffer.from(JSON.stringify(notes)), 150, (bytes) =>
      parse(benchNotesSchema, json(bytes.toString()), 'notes'),
    )
  })

  it('past books as CSV', async () => {
    const csv =
      'name,kind,bought,paid,left,how,received\r\n"Green, old",tiny,2024-03-01,5.00,2024-04-02,sell-working,35.00\r\nRed,tiny,01/02/2024,"4,50",,,\r\n'
    expect(await importBooks(benchDeps().deps, csv, true)).toMatchObject({ kind: 'imported' })
    return each('books', Buffer.from(csv), 90, (bytes) => importBooks(benchDeps().deps, bytes.toString(), true))
  })

  describe('photographs', () => {
    let files: readonly Buffer[] = []
    beforeAll(async () => {
      const picture = sharp({ create: { width: 24, height: 16, channels: 3, background: '#864' } })
      files = await Promise.all([
        picture.clone().jpeg().toBuffer(),
        picture.clone().png().toBuffer(),
        picture.clone().webp().toBuffer(),
      ])
    })
    it('JPEG, PNG and WebP', async () => {
      for (const file of files) await each('photograph', file, 15, (bytes) => makeImage(new Uint8Array(bytes)))
    })
  })
})
