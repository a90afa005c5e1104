import { problemText } from '../../base/problem.ts'
import type { CommandDeps, CommandOutcome } from '../commands.ts'
import type { LogOutcome } from '../logs/log-commands.ts'
import type { MachineDocument } from '../contract.ts'

/** What is done next in a story, and when. Answers with the machine as it then is, or null where there is none. */
export type Turn = {
  readonly atMs: number
  readonly deed: (deps: CommandDeps) => Promise<MachineDocument | null>
}

/** One thread of the year: a machine, a part on the shelf. It is told what became of each turn before it thinks of the next. */
export type Story = Generator<Turn, void, MachineDocument | null>

type Waiting = { readonly story: Story; readonly turn: Turn; readonly place: number }

/** All stories at once, in the order of time, as they would have been written down; what comes after the end is left out. */
export type Year = {
  readonly begin: (story: Story) => void
  readonly run: (depsAt: (atMs: number) => CommandDeps, endMs: number, pause: () => Promise<void>) => Promise<void>
}

export const newYear = (): Year => {
  const waiting: Waiting[] = []
  let places = 0
  const queue = (story: Story, { done, value }: IteratorResult<Turn, void>): void => {
    if (done !== true) waiting.push({ story, turn: value, place: places++ })
  }
  return {
    begin: (story) => queue(story, story.next(null)),
    run: async (depsAt, endMs, pause) => {
      for (let next = takeFirst(waiting); next !== undefined; next = takeFirst(waiting)) {
        if (next.turn.atMs > endMs) return
        await pause()
        queue(next.story, next.story.next(await next.turn.deed(depsAt(next.turn.atMs))))
      }
    },
  }
}

/** The earliest; of those at the same moment the one that was thought of first. */
const takeFirst = (waiting: Waiting[]): Waiting | undefined => {
  let first = 0
  waiting.forEach((one, i) => {
    const best = waiting[first]
    if (one.turn.atMs < best.turn.atMs || (one.turn.atMs === best.turn.atMs && one.place < best.place)) first = i
  })
  return waiting.splice(first, 1)[0]
}

/** The machine as it is after a command. Throws when the rules refuse it, for then the demonstration itself is wrong. */
export const settled = (what: string, outcome: CommandOutcome): MachineDocument => {
  if (outcome.kind === 'done') return outcome.document
  throw new Error(`demonstration, ${what}: ${outcome.problems.map(problemText).join(' ')}`)
}

/** The same for the other logs. */
export const settledLog = <Document>(what: string, outcome: LogOutcome<Document>): Document => {
  if (outcome.kind === 'done') return outcome.document
  throw new Error(`demonstration, ${what}: ${outcome.problems.map(problemText).join(' ')}`)
}
