import type { Blueprint, Check, Fault, GradedCheck } from '../../blueprint/schema.ts'
import { shownWhenTried, soundTakenForBad, type FunctionKind } from '../../facts/function-kind.ts'
import { isFirstRun } from '../running.ts'

/** Outcomes of a check made for a function, the good one first as with every graded check. */
export const madeOutcomes = [
  { id: 'good', name: 'As it should be', danger: false },
  { id: 'bad', name: 'Not as it should be', danger: false },
] as const

/** The third one where nothing runs and that says nothing of the function; never entered as a trial of it. */
const nothing = { id: 'dead', name: 'Nothing runs', danger: false }

type Made = Pick<FunctionKind, 'id' | 'name' | 'how' | 'way' | 'minutes' | 'runsLike' | 'deadIsBad'>

/**
 * A graded check for a function that the blueprint has no check for. How often each fault of its parts shows comes from the
 * blueprint; where nothing drives the motor, a running function is bad if that is a failure of its own, else it cannot be seen.
 */
export const madeCheck = (blueprint: Blueprint, kind: Made, parts: readonly string[]): GradedCheck => {
  const faults = blueprint.faults.filter(({ part }) => parts.includes(part))
  const run = kind.way === 'run' ? runningOf(blueprint, kind) : null
  return {
    kind: kind.way === 'run' ? 'run' : 'look',
    id: `function.${kind.id}`,
    name: kind.name,
    how: kind.how,
    minutes: kind.minutes,
    costMinor: 0,
    coversOff: [],
    cannotTell: 0,
    beforeRunning: false,
    coversOn: false,
    outcomes: run?.driven?.otherwise === nothing.id ? [...madeOutcomes, nothing] : [...madeOutcomes],
    sound: chances(soundTakenForBad.value),
    under: Object.fromEntries(faults.map((fault) => [fault.id, chances(badWith(blueprint, fault))])),
    controls: {},
    firstRun: false,
    provesWorking: false,
    ...run,
  }
}

const chances = (bad: number): Readonly<Record<string, number>> => ({ good: 1 - bad, bad })

/** Probability that a function is found bad when this fault of its parts is there; never below that of a sound one. */
const badWith = (blueprint: Blueprint, fault: Fault): number => {
  const said = [complained(fault), shownInUse(blueprint, fault)].filter((share) => share !== null)
  return Math.max(soundTakenForBad.value, said.length === 0 ? shownWhenTried.value : Math.max(...said))
}

/** How often an owner complains of it: whoever tries just this function sees it at least as often. */
const complained = ({ complaints }: Fault): number | null => {
  const shares = Object.values(complaints)
  return shares.length === 0 ? null : Math.max(...shares)
}

/** How often it shows when the whole machine is run and used, by the blueprint's check that shows it to work. */
const shownInUse = ({ checks }: Blueprint, { id }: Fault): number | null => {
  const run = checks.find(provesWorking)
  const row = run?.under[id]
  return run === undefined || row === undefined ? null : 1 - (row[run.outcomes[0]?.id ?? ''] ?? 0)
}

export const isGraded = (check: Check): check is GradedCheck => check.kind !== 'meter'

export const provesWorking = (check: Check): check is GradedCheck => isGraded(check) && check.provesWorking

/** Controls as in the check it runs like, and the motor that must turn. */
const runningOf = (
  { checks }: Blueprint,
  { runsLike, deadIsBad }: Pick<Made, 'runsLike' | 'deadIsBad'>,
): Pick<GradedCheck, 'controls' | 'driven'> => {
  const graded = checks.filter(isGraded)
  const model =
    graded.find(({ id }) => id === runsLike) ?? graded.find(isFirstRun) ?? graded.find((check) => check.provesWorking)
  if (model === undefined) return { controls: {} }
  const { controls, driven } = model
  return driven === undefined
    ? { controls }
    : { controls, driven: { element: driven.element, otherwise: deadIsBad === true ? 'bad' : nothing.id } }
}
