import type { Check } from '../../blueprint/schema.ts'
import { coversFor, type MachineModel } from '../../machine/index.ts'
import { checkBarred, runsMachine } from '../../machine/running.ts'
import { coversToOpen } from '../reach.ts'
import { faultsNow, isSound, jobNow, makeCheck, write, type Hand, type Piece } from './hand.ts'

/** Looks at a machine from outside first, then where the trouble is, and writes what it was. */
export function* findOut(hand: Hand): Piece {
  for (const check of fromOutside(hand)) yield* makeCheck(hand, check)
  for (const fault of faultsNow(hand)) {
    const check = tellingCheck(hand, fault)
    if (check === null) continue
    const result = yield* makeCheck(hand, check)
    if (check.kind === 'meter' || !isSound(check, result)) {
      yield* write(hand, { kind: 'confirmed', fault: hand.lot.blueprint.faults[fault].id })
    }
  }
}

const mostFromOutside = 4

/** Dead checks and looks for which nothing comes off; the more a machine needs them before it is run, the sooner. */
const fromOutside = ({ lot: { blueprint }, random }: Hand): readonly Check[] =>
  blueprint.checks
    .filter((check) => !runsMachine(check) && coversFor(blueprint, check).length === 0 && isPlain(check))
    .map((check) => ({ check, place: (check.beforeRunning ? 0 : 1) + random.uniform() }))
    .toSorted((a, b) => a.place - b.place)
    .slice(0, mostFromOutside)
    .map(({ check }) => check)

/** Without a further instrument. */
const isPlain = (check: Check): boolean => check.kind === 'meter' || check.scale === undefined

/** The check that tells this fault from a sound machine with least work, or null where none can be made now. */
const tellingCheck = (hand: Hand, fault: number): Check | null => {
  const { model, lot } = hand
  const job = jobNow(hand)
  const alone = model.sets.findIndex((set) => set.length === 1 && set[0] === fault)
  const byEffort = lot.blueprint.checks
    .filter((check) => isPlain(check) && checkBarred(job, check).length === 0)
    .map((check) => ({ check, minutes: effortMin(hand, check) }))
    .toSorted((a, b) => a.minutes - b.minutes)
  return byEffort.find(({ check }) => tells(model, check, alone))?.check ?? null
}

/** Whether a check is likely to show something else with this suspect than on a sound machine. */
const tells = (model: MachineModel, check: Check, suspect: number): boolean => {
  if (check.kind !== 'meter') return model.graded(check, suspect)[0] < 0.4
  const row = model.meter.checks.findIndex(({ id }) => id === check.id)
  return differ(usualOhm(model, row, suspect), usualOhm(model, row, 0))
}

/** What the meter would read in the state that the suspect is most often in; infinite where the points are not joined. */
const usualOhm = (model: MachineModel, row: number, suspect: number): number => {
  const { states } = model.predict(row, model.electrical.mixOf[suspect])
  return states.toSorted((a, b) => b.share - a.share)[0].predicted.resistanceOhm
}

/** Twice as much or half of it is another reading. */
const differ = (aOhm: number, bOhm: number): boolean => {
  if (!Number.isFinite(aOhm) || !Number.isFinite(bOhm)) return Number.isFinite(aOhm) !== Number.isFinite(bOhm)
  return Math.abs(Math.log((aOhm + 0.1) / (bOhm + 0.1))) > Math.LN2
}

const effortMin = ({ lot: { blueprint }, document }: Hand, check: Check): number =>
  check.minutes +
  coversFor(blueprint, check)
    .flatMap((cover) => coversToOpen(blueprint, cover, document!.state.off))
    .reduce((sum, { openMin }) => sum + openMin, 0)
