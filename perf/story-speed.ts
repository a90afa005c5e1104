import { createHash } from 'node:crypto'
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { jobOf } from '../src/bench/job.ts'
import { noteSchema, type Note, type NoteContentInput } from '../src/bench/note.ts'
import { documentOf } from '../src/bench/queries.ts'
import { storyView } from '../src/bench/story/story-view.ts'
import { blueprints } from '../src/blueprint/library.ts'
import { storyHtml } from '../src/report/story-html.ts'
import { filePhotoStore } from '../src/store/files/photo-store.ts'

const photographs = 60
const times = 5
/** What the story of a job may take. */
export const barMs = 5000

const blueprint = blueprints.find(({ airWays }) => airWays.some(({ id }) => id === 'hose-end'))

/** A photograph as large as the bench keeps them, of grain: it compresses as badly as carpet. */
const grain = (): Promise<Buffer> =>
  sharp({
    create: {
      width: 2048,
      height: 1536,
      channels: 3,
      background: '#888',
      noise: { type: 'gaussian', mean: 128, sigma: 12 },
    },
  })
    .jpeg({ quality: 82 })
    .toBuffer()

/** The same grain under as many names, each its own file. */
const fill = async (folder: string): Promise<readonly string[]> => {
  const large = await grain()
  const ids = Array.from({ length: photographs }, (_, at) => createHash('sha256').update(String(at)).digest('hex'))
  for (const id of ids) {
    await mkdir(join(folder, id.slice(0, 2)), { recursive: true })
    await writeFile(join(folder, id.slice(0, 2), `${id}.jpg`), large)
  }
  return ids
}

/** Half before and half after, each pair of a shot or part of its own, so that every one stands large; gauge readings too. */
const notesOf = (ids: readonly string[]): readonly Note[] => {
  if (blueprint === undefined) throw new Error('no blueprint has a hose')
  const gauge = (suctionPa: number): NoteContentInput => ({
    kind: 'gauge',
    reading: {
      way: 'hose-end',
      opening: { kind: 'sealed' },
      read: { measure: 'suction', suctionPa },
      instrument: 'digital-manometer-5-psi',
    },
  })
  const [repair] = blueprint.repairs
  const added = { kind: 'added', name: 'Much filmed', blueprint: blueprint.id, plate: blueprint.plate, paidMinor: 500, currency: 'GBP' } as const // prettier-ignore
  const readings: NoteContentInput[] = Array.from({ length: 30 }, (_, at) => ({ kind: 'said', text: `Step ${at}` }))
  const mended: NoteContentInput[] =
    repair === undefined ? [] : [{ kind: 'repaired', repair: repair.id, option: repair.options[0]?.id ?? '', minutes: 5, costMinor: 100 }] // prettier-ignore
  const photos: NoteContentInput[] = ids.map((photo, at) => ({
    kind: 'photo',
    photo,
    about: { kind: 'note', note: `n${2 + (at % 30)}` },
    when: at < photographs / 2 ? 'before' : 'after',
  }))
  return [added, ...readings, gauge(9000), ...mended, gauge(21_000), ...photos].map(
    (content, at) =>
    noteSchema.parse({ id: `n${at + 1}`, machine: 'm1', seq: at + 1, at: new Date(Date.UTC(2026, 2, 14, 10, at)).toISOString(), content }), // prettier-ignore
  )
}

const timed = async (work: () => Promise<unknown>): Promise<number> => {
  const began = performance.now()
  await work()
  return performance.now() - began
}

/** The story of a job with sixty large photographs, against reading the same files and writing them as base64. Throws when the bar is missed. */
export const run = async () => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-story-'))
  try {
    const ids = await fill(folder)
    const notes = notesOf(ids)
    const store = filePhotoStore(folder)
    const story = async (): Promise<number> => {
      if (blueprint === undefined) throw new Error('no blueprint has a hose')
      const document = await documentOf(notes, () => blueprint)
      const job = jobOf(document.state, notes, blueprint)
      const view = storyView({ document, blueprint, job, region: 'UK', withMoney: true, isDemo: false })
      const html = await storyHtml(view, ({ photo, size }) => store.get(photo, size))
      return html.length
    }
    const bare = async (): Promise<number> => {
      const texts = await Promise.all(
        ids.map(async (id) => (await readFile(join(folder, id.slice(0, 2), `${id}.jpg`))).toString('base64')),
      )
      return texts.join('').length
    }
    if ((await story()) < (await bare())) throw new Error('the story leaves photographs out')
    const ours: number[] = []
    const theirs: number[] = []
    // One after the other, so that both meet the same moods of the machine.
    for (let at = 0; at < times; at++) {
      ours.push(await timed(story))
      theirs.push(await timed(bare))
    }
    const [slowest, usual] = [Math.max(...ours), Math.max(...theirs)]
    if (slowest > barMs) throw new Error(`a story took ${slowest.toFixed(0)} ms, more than ${barMs}`)
    return [
      {
        name: `the story of ${photographs} large photographs, against reading them and writing them as base64`,
        ours: slowest,
        theirs: usual,
        ratio: usual / slowest,
      },
    ]
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
