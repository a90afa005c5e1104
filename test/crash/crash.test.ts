import { cp, mkdir, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { seededRandom } from '../../src/base/random.ts'
import { valueOf } from '../../src/base/result.ts'
import { checkBackup } from '../../src/store/backup/check-backup.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { fillSmall, lookOver, tempFolder } from '../support/filled-store.ts'
import { makeLives, type Life, type Lives, type Moment, type Work } from './lives.ts'
import { looksAtMigrations } from './look-at-migrations.ts'
import { looksAtNotes } from './look-at-notes.ts'
import { looksAtPhotos } from './look-at-photos.ts'
import { makeOldStore } from './old-store.ts'
import { wordsAfter, type Looks } from './what-was-said.ts'

/** How many are killed in all, shared out below; more for a longer look: THRUM_KILLS=5000 THRUM_SEED=77. */
const kills = Number(process.env['THRUM_KILLS'] ?? '500')
const firstSeed = Number(process.env['THRUM_SEED'] ?? '1')
/** Photographs and backups are the dear ones. */
const shares = { append: 0.6, migrate: 0.28, backup: 0.08, photographs: 0.04 } as const
/** All that is there is looked at once in so many lives, and at the end; what the life itself wrote after each. */
const wholeEvery = 25

let lives: Lives
let folder = ''
let remove: () => Promise<void>
let killed = 0
let lived = 0
let before = { lives: 0, looking: 0 }
beforeAll(async () => {
  before = await cpuSeconds()
  lives = await makeLives()
  ;({ folder, remove } = await tempFolder())
})
afterAll(async () => {
  await lives.remove()
  await remove()
  const now = await cpuSeconds()
  const used = `the lives ${(now.lives - before.lives).toFixed(1)}, the looking ${(now.looking - before.looking).toFixed(1)}`
  console.log(`${killed} killed of ${lived} lives; seconds of processor: ${used}`)
})

/** What those that were started and this process have used so far, where the system tells (proc(5): fields 14 to 17 of stat, in hundredths). */
const cpuSeconds = async (): Promise<{ lives: number; looking: number }> => {
  const stat = await readFile('/proc/self/stat', 'utf8').catch(() => '')
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
  const seconds = (at: number): number => (Number(fields[at]) + Number(fields[at + 1])) / 100
  return { lives: seconds(13), looking: seconds(11) }
}

type Course = Looks & {
  readonly prepare: (folder: string) => Promise<unknown>
  /** The moment at which a life ends, drawn from its seed. */
  readonly moment: (seed: number) => Moment
  /** When the folder has seen enough: `said` by the last life, and how many lives there were in it. */
  readonly isOver?: (said: readonly string[], lives: number) => boolean
}

/** Kills lives of one kind, many one after another in the same folder, and looks each time at what is there afterwards. */
const killLives = async (work: Work, { prepare, moment, afterOne, whole, isOver = () => false }: Course) => {
  const count = Math.ceil(kills * shares[work])
  const seen: { seed: number; said: readonly string[] }[] = []
  let inTheMiddle = 0
  let place = ''
  for (let turn = 0; inTheMiddle < count; turn++) {
    const seed = firstSeed + turn
    if (seen.length === 0) {
      place = join(folder, `${work}-${turn}`)
      await mkdir(place, { recursive: true })
      await prepare(place)
    }
    const life = await lives.live(work, place, seed, moment(seed))
    expect(life.error, `seed ${seed}`).toBe('')
    seen.push({ seed, said: life.said })
    if (!life.endedItself) inTheMiddle++
    // Most must not be done before their moment comes, or nothing is tried.
    else expect(turn, 'ended in time').toBeLessThan(inTheMiddle * 2 + 10)
    const isLast = inTheMiddle === count || isOver(life.said, seen.length)
    await afterOne(place, seen)
    if (turn % wholeEvery === 0 || inTheMiddle === count) await lookAtAll(place, seen, whole)
    if (isLast) seen.length = 0
    lived++
  }
  killed += inTheMiddle
}

/** At a copy, as `atCopyOf` does. */
const lookAtAll = async (place: string, seen: Parameters<Looks['whole']>[1], whole: Looks['whole']): Promise<void> => {
  const copy = `${place}-copy`
  const copied = (): Promise<void> => cp(place, copy, { recursive: true, filter: (path) => !path.endsWith('-shm') })
  // What this process filled is let go of when its last statement is collected, and its log goes with it, maybe just now.
  await copied().catch(async () => {
    await rm(copy, { recursive: true, force: true })
    await copied()
  })
  await whole(copy, seen)
  await rm(copy, { recursive: true })
}

/** Early moments more often than late ones; one in five already while the store is opened. */
const within =
  (latestMs: number) =>
  (seed: number): Moment => ({
    after: seed % 5 === 0 ? 'begun' : 'ready',
    ms: seededRandom(seed).uniform() ** 2 * latestMs,
  })

describe.skipIf(process.platform === 'win32')('a program that is killed in the middle', { timeout: 600_000 }, () => {
  it('of writing notes has kept every one that it said it had, whole and in order', async () => {
    const isOver = (_said: readonly string[], count: number): boolean => count === 50
    const prepare = (): Promise<void> => Promise.resolve()
    await killLives('append', { prepare, moment: within(60), isOver, ...looksAtNotes() })
  })

  it('of a migration has all its notes, and the tables of before or those of today', async () => {
    const old = join(folder, 'old')
    await makeOldStore(old, 30, 6)
    const prepare = (place: string): Promise<void> => cp(old, place, { recursive: true })
    // How long it takes here and now, so that the moments fall into it.
    const whole = join(folder, 'migrate-to-the-end')
    await prepare(whole)
    const { ms, said, error }: Life = await lives.live('migrate', whole, 0, { after: 'begun', ms: Infinity })
    expect([said, error]).toEqual([['begun', 'migrated'], ''])
    const moment = (seed: number): Moment => ({ after: 'begun', ms: seededRandom(seed).uniform() * ms * 0.7 })
    const isOver = (words: readonly string[]): boolean => words.includes('migrated')
    await killLives('migrate', { prepare, moment, isOver, ...(await looksAtMigrations(old, whole)) })
  })

  it('of a backup leaves the one before or a whole one', async () => {
    const afterOne: Looks['afterOne'] = async (place, all) => {
      const { seed } = all.at(-1)!
      const newest = all.flatMap(({ said }) => wordsAfter('backup ', said)).at(-1)
      const { problems, madeAt } = await checkBackup(join(place, 'out', 'bench.zip'))
      if (newest === undefined && problems[0]?.code === 'no-such-file') return
      expect(problems, `seed ${seed}`).toEqual([])
      expect(madeAt! >= (newest ?? ''), `seed ${seed}: ${madeAt} is there, ${newest} was said to be`).toBe(true)
    }
    const whole: Looks['whole'] = async (place) => expect((await lookOver(place)).problems).toEqual([])
    await killLives('backup', { prepare: fillSmall, moment: within(100), afterOne, whole })
  })

  it('of keeping photographs has those whole that it said it had', async () => {
    const prepare = async (place: string) => valueOf(await openStore({ folder: place })).close()
    await killLives('photographs', { prepare, moment: within(100), ...looksAtPhotos })
  })
})
