import { mixSeed } from '../../base/mix-seed.ts'
import { seededRandom, type Random } from '../../base/random.ts'
import type { Check } from '../../blueprint/schema.ts'
import { checkOverheadMin } from '../../facts/trade.ts'
import { coversFor, machineModel, resultUnder, truthNow, type MachineModel } from '../../machine/index.ts'
import type { Job } from '../../machine/job.ts'
import type { ReadingResult } from '../../machine/result.ts'
import { runsMachine } from '../../machine/running.ts'
import { addMachine, addNote } from '../commands.ts'
import type { MachineDocument } from '../contract.ts'
import { jobOf } from '../job.ts'
import { noteContentSchema, type NoteContentInput } from '../note.ts'
import { coversToOpen } from '../reach.ts'
import { dayMs, minuteMs } from './draws.ts'
import type { Lot } from './lots.ts'
import { settled, type Turn } from './turns.ts'
import type { Trade } from './trade.ts'

/** A machine of the year at work: what is written of it so far, and the hands of the clock. */
export type Hand = {
  readonly lot: Lot
  readonly trade: Trade
  readonly model: MachineModel
  readonly random: Random
  /** Both change as the story goes on. */
  document: MachineDocument | null
  atMs: number
}

/** A piece of a machine's story. */
export type Piece<Answer = void> = Generator<Turn, Answer, MachineDocument | null>

export const handOn = (lot: Lot, trade: Trade): Hand => ({
  lot,
  trade,
  model: machineModel(lot.blueprint, lot.blueprint.plate),
  random: seededRandom(mixSeed(lot.seed, 'work')),
  document: null,
  atMs: lot.cameInMs,
})

/** Worked out once for each state of the machine. */
const jobs = new WeakMap<MachineDocument, Job>()

export const jobNow = ({ document, lot }: Hand): Job => {
  const known = jobs.get(document!)
  if (known !== undefined) return known
  const job = jobOf(document!.state, document!.notes, lot.blueprint)
  jobs.set(document!, job)
  return job
}

/** The faults that are truly there now, as places among the blueprint's. */
export const faultsNow = (hand: Hand): readonly number[] =>
  hand.model.sets[truthNow(hand.model, jobNow(hand), hand.lot.seed)]

/** Days go by. */
export const daysLater = (hand: Hand, days: number): void => {
  hand.atMs += Math.round((days * dayMs) / minuteMs) * minuteMs
}

/** One turn at this machine; its answer becomes the machine as it now is. */
export function* turn(hand: Hand, deed: Turn['deed']): Piece {
  hand.document = yield { atMs: hand.atMs, deed }
}

/** Writes a note. Its minutes have gone by when it is written. */
export function* write(hand: Hand, input: NoteContentInput): Piece {
  const content = noteContentSchema.parse(input)
  if ('minutes' in content) hand.atMs += Math.ceil(content.minutes) * minuteMs
  const { lot } = hand
  yield* turn(hand, async (deps) => {
    const version = hand.document?.state.version ?? 0
    const id = `${lot.id}.${version + 1}`
    const outcome = await (version === 0
      ? addMachine({ ...deps, newId: () => id }, content, lot.id)
      : addNote(deps, lot.id, version, content, id))
    return settled(`${id} ${content.kind}`, outcome)
  })
}

/** Takes off what is in the way. */
export function* reach(hand: Hand, covers: readonly string[]): Piece {
  for (const wanted of covers) {
    for (const { id, openMin } of coversToOpen(hand.lot.blueprint, wanted, hand.document!.state.off)) {
      yield* write(hand, { kind: 'opened', cover: id, minutes: openMin })
    }
  }
}

/** Puts everything back on, what came off last first. */
export function* closeAll(hand: Hand): Piece {
  for (const cover of [...hand.document!.state.off].reverse()) {
    const minutes = hand.lot.blueprint.covers.find(({ id }) => id === cover)?.closeMin ?? 0
    yield* write(hand, { kind: 'closed', cover, minutes })
  }
}

/** Makes a check as it needs to be made and writes what it shows on this machine, faults and all. */
export function* makeCheck(hand: Hand, check: Check): Piece<ReadingResult> {
  if (runsMachine(check) || check.coversOn) yield* closeAll(hand)
  else yield* reach(hand, coversFor(hand.lot.blueprint, check))
  const result = shown(hand, check)
  hand.atMs += checkOverheadMin.value * minuteMs
  yield* write(hand, { kind: 'reading', check: check.id, result, minutes: check.minutes })
  return result
}

/** What the check shows now; each time it is made the meter's noise is another. */
const shown = (hand: Hand, check: Check): ReadingResult => {
  const { model, lot, document } = hand
  const turns = document!.notes.filter(
    ({ content }) => content.kind === 'repaired' || (content.kind === 'reading' && content.check === check.id),
  ).length
  return resultUnder(model, truthNow(model, jobNow(hand), lot.seed), lot.seed, check.id, turns)
}

export const isSound = (check: Check, result: ReadingResult): boolean =>
  check.kind === 'meter' || (result.kind === 'grade' && result.outcome === check.outcomes[0]?.id)
