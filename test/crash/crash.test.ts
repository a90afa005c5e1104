import { cp, mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { seededRandom, type Random } from '../../src/base/random.ts'
import { valueOf } from '../../src/base/result.ts'
import { checkBackup } from '../../src/store/backup/check-backup.ts'
import { filePhotoStore } from '../../src/store/files/photo-store.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { fillSmall, lookOver, tempFolder } from '../support/filled-store.ts'
import { makeLives, type Lives, type Work } from './lives.ts'
import { makeOldStore } from './old-store.ts'
import { machineOf, noteAt, stepsOf } from './what-is-written.ts'

/** How many endings are looked at in all, shared out below; more for a longer look: THRUM_KILLS=5000 THRUM_SEED=77. */
const kills = Number(process.env['THRUM_KILLS'] ?? '500')
const firstSeed = Number(process.env['THRUM_SEED'] ?? '1')
/** By SIGKILL; and by holding still, which is cheaper by a start of the program. A migration is over too soon to be held. */
const killed = { append: 0.08, migrate: 0.12, backup: 0.04, photographs: 0.04 } as const
const held = { append: 0.36, migrate: 0, backup: 0.18, photographs: 0.18 } as const
const heldInOneLife = 30

let lives: Lives
let folder = ''
let remove: () => Promise<void>
beforeAll(async () => {
  lives = await makeLives()
  ;({ folder, remove } = await tempFolder())
})
afterAll(async () => {
  await lives.remove()
  await remove()
  console.log(`${ended} lives ended; seconds of processor: ${await cpuText()}`)
})

let ended = 0

/** What this process and those it started have used so far, where the system tells (proc(5): fields 14 to 17 of stat, in hundredths). */
const cpuText = async (): Promise<string> => {
  const stat = await readFile('/proc/self/stat', 'utf8').catch(() => '')
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
  const seconds = (at: number): string => ((Number(fields[at]) + Number(fields[at + 1])) / 100).toFixed(0)
  return stat === '' ? 'not known here' : `the lives ${seconds(13)}, the looking ${seconds(11)}`
}

type Place = {
  readonly prepare: (folder: string) => Promise<void>
  /** `said`: by which life, and all that it said; lives before it in the same folder come first. */
  readonly look: (
    folder: string,
    lives: readonly { readonly seed: number; readonly said: readonly string[] }[],
  ) => Promise<void>
}

/** Ends lives of one kind at moments drawn from their seeds, and looks each time at what is there afterwards. */
const endLives = async (
  work: Work,
  latestMs: number,
  { prepare, look }: Place,
  livesInOneFolder = 10,
): Promise<void> => {
  const count = Math.ceil(kills * killed[work])
  let inTheMiddle = 0
  let place = ''
  let before: { seed: number; said: readonly string[] }[] = []
  for (let turn = 0; turn < count; turn++) {
    const seed = firstSeed + turn
    if (turn % livesInOneFolder === 0) {
      place = join(folder, `${work}-${turn}`)
      before = []
      await prepare(place)
    }
    const life = await lives.live(work, place, seed, delayOf(seededRandom(seed), latestMs))
    expect(life.error, `seed ${seed}`).toBe('')
    if (!life.endedItself) inTheMiddle++
    before.push({ seed, said: life.said })
    await look(place, before)
  }
  // A life may be done before its moment comes; most must not be, or nothing was tried.
  expect(inTheMiddle).toBeGreaterThan(count / 2)
  ended += inTheMiddle
  await holdLives(work, latestMs, { prepare, look })
}

const holdLives = async (work: Work, latestMs: number, { prepare, look }: Place): Promise<void> => {
  const count = Math.ceil(kills * held[work])
  for (let done = 0; done < count; done += heldInOneLife) {
    const seed = firstSeed + 10_000 + done
    const random = seededRandom(seed)
    const pausesMs = Array.from({ length: Math.min(heldInOneLife, count - done) }, () => delayOf(random, latestMs))
    const place = join(folder, `${work}-held-${done}`)
    await prepare(place)
    const error = await lives.hold(work, place, seed, pausesMs, async (copy, said) => {
      await look(copy, [{ seed, said }])
      ended++
    })
    expect(error, `seed ${seed}`).toBe('')
  }
}

/** Early moments more often than late ones: most of the steps of a life are near its beginning. */
const delayOf = (random: Random, latestMs: number): number => random.uniform() ** 2 * latestMs

describe.skipIf(process.platform === 'win32')('a program that is ended in the middle', { timeout: 600_000 }, () => {
  it('of writing notes has kept every one that it said it had, whole and in order', async () => {
    const prepare = async (place: string): Promise<void> => void (await mkdir(place, { recursive: true }))
    await endLives('append', 60, { prepare, look: lookAtNotes })
  })

  it('of a migration has a store that opens with all its notes', async () => {
    const old = join(folder, 'old')
    await makeOldStore(old, 30, 6)
    const look: Place['look'] = async (place, [{ seed } = { seed: 0 }]) => {
      const store = valueOf(await openStore({ folder: place }))
      const logs = await store.notes.list('own')
      await store.close()
      expect(
        logs.map((notes) => notes.length),
        `seed ${seed}`,
      ).toEqual(Array.from({ length: 30 }, () => 6))
      for (const notes of logs) expect(notes).toEqual(notes.map(({ machine, seq }) => noteAt(machine, seq)))
      expect((await lookOver(place)).problems, `seed ${seed}`).toEqual([])
    }
    await endLives('migrate', 60, { prepare: (place) => cp(old, place, { recursive: true }), look }, 1)
  })

  it('of a backup leaves the one before or a whole one', async () => {
    const prepare = async (place: string): Promise<void> => void (await fillSmall(place))
    await endLives('backup', 100, {
      prepare,
      look: async (place, all) => {
        const { seed } = all.at(-1)!
        const newest = all.flatMap(({ said }) => wordsAfter('backup ', said)).at(-1)
        const { problems, madeAt } = await checkBackup(join(place, 'out', 'bench.zip'))
        if (newest === undefined && problems[0]?.code === 'no-such-file') return
        expect(problems, `seed ${seed}`).toEqual([])
        expect(madeAt! >= (newest ?? ''), `seed ${seed}: ${madeAt} is there, ${newest} was said to be`).toBe(true)
      },
    })
  })

  it('of keeping photographs has those whole that it said it had', async () => {
    const prepare = async (place: string): Promise<void> => valueOf(await openStore({ folder: place })).close()
    await endLives('photographs', 100, {
      prepare,
      look: async (place, all) => {
        const { seed } = all.at(-1)!
        const ids = all.flatMap(({ said }) => wordsAfter('photo ', said))
        const { problems } = await lookOver(place)
        expect(problems, `seed ${seed}`).toEqual([])
        const store = filePhotoStore(join(place, 'photos'))
        for (const id of ids) {
          expect(await store.has(id), `seed ${seed}: ${id}`).toBe(true)
          expect(await store.get(id, 'small'), `seed ${seed}: ${id}`).not.toBeNull()
        }
      },
    })
  })
})

const wordsAfter = (start: string, lines: readonly string[]): readonly string[] =>
  lines.filter((line) => line.startsWith(start)).map((line) => line.slice(start.length))

/** How many notes of each machine were said to be kept. */
const keptBy: (...lives: Parameters<Place['look']>[1]) => ReadonlyMap<string, number> = (...all) => {
  const kept = new Map<string, number>()
  for (const { seed, said } of all) {
    for (const [what, turn, count] of said.map((line) => line.split(' '))) {
      if (what === 'notes') kept.set(machineOf(seed, Number(turn)), Number(count))
      if (what === 'both') kept.set(`${machineOf(seed, Number(turn))}-b`, 1)
    }
  }
  return kept
}

const lookAtNotes: Place['look'] = async (place, all) => {
  const { seed } = all.at(-1)!
  const kept = keptBy(...all)
  const store = valueOf(await openStore({ folder: place }))
  const logs = new Map((await store.notes.list('own')).map((notes) => [notes[0].machine, notes]))
  const expenses = await store.logs.list('own', 'expense')
  await store.close()
  for (const [machine, count] of kept) {
    expect(logs.get(machine)?.length ?? 0, `seed ${seed}: ${machine}`).toBeGreaterThanOrEqual(count)
  }
  for (const [machine, notes] of logs) {
    expect(notes, `seed ${seed}: ${machine}`).toEqual(notes.map(({ seq }) => noteAt(machine, seq)))
    // Notes that were sent together are there together.
    const turn = Number(machine.split('-')[2])
    const steps = machine.endsWith('-b') ? [1] : stepsOf(turn)
    expect(steps, `seed ${seed}: ${machine}`).toContain(notes.length)
  }
  const halves = [...logs.keys()].filter((machine) => machine.endsWith('-b'))
  expect(expenses.map(([first]) => `${first.log}-b`).toSorted(), `seed ${seed}`).toEqual(halves.toSorted())
  // Versions, order, what lists and books keep, and the file by SQLite's own means.
  expect((await lookOver(place)).problems, `seed ${seed}`).toEqual([])
}
