import { inSentence } from '../../base/in-sentence.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { Job } from '../job.ts'
import { checkBarred, runsMachine } from '../running.ts'
import type { FunctionCheck, FunctionGroup, NamedPart, NotCovered } from './function-check.ts'
import { stateOf, type FunctionState } from './function-state.ts'
import { madeOutcomes } from './made-check.ts'
import { functionsOf } from './functions-of.ts'
import { mainPart } from './tried-evidence.ts'
import { verdictOf } from './verdict.ts'

/** One function of a machine in hand: how it is tried, what bars it now, and what came of it. */
export type FunctionRow = {
  readonly id: string
  readonly name: string
  readonly how: string
  readonly good: string
  readonly cautions: readonly string[]
  readonly minutes: number
  readonly group: FunctionGroup
  readonly parts: readonly NamedPart[]
  /** The part that is missing when the function is not there; null where that says nothing of a part. */
  readonly part: NamedPart | null
  /** Whether it can be missing: one thing, not the whole machine or all of its air. */
  readonly mayBeMissing: boolean
  /** Positions of the controls, as `Handle switch: on`; those not named are at rest. */
  readonly settings: readonly string[]
  readonly runs: boolean
  /** Covers that must be off; with `closed`, all must be on. */
  readonly coversOff: readonly string[]
  readonly closed: boolean
  /** What bars it now, in words; empty when it may be tried. */
  readonly barred: readonly string[]
  /** The blueprint's check that it is, and what that can show, good first; null where only good and bad are told apart. */
  readonly check: string | null
  readonly outcomes: readonly { readonly id: string; readonly name: string; readonly danger: boolean }[]
  readonly state: FunctionState
}

/** All that is shown of a machine's functions before it is sold. */
export type FunctionsView = {
  readonly rows: readonly FunctionRow[]
  readonly notCovered: readonly NotCovered[]
  readonly total: number
  /** Tried since the last work on them, and told one way or the other. */
  readonly tried: number
  readonly bad: number
  readonly notThere: number
  readonly again: number
  /** `12 of 17 tried, 1 not as it should be: height drive`. */
  readonly verdict: string
}

/** The functions of a machine in hand in the order to try them, with what is known of each. Pure. */
export const functionChecks = (job: Job): FunctionsView => {
  const { functions, notCovered } = functionsOf(job.blueprint)
  const rows = inHand(functions, job).map((one) => rowOf(job, one))
  const count = (wanted: (row: FunctionRow) => boolean): number => rows.filter(wanted).length
  return {
    rows,
    notCovered,
    total: rows.length,
    tried: count(({ state }) => state.kind === 'told' && state.told.result !== 'cannot-tell'),
    bad: count(({ state }) => state.kind === 'told' && state.told.result === 'bad'),
    notThere: count(({ state }) => state.kind === 'told' && state.told.result === 'not-there'),
    again: count(({ state }) => state.kind === 'again'),
    verdict: verdictOf(rows),
  }
}

/**
 * In an order that wastes no work on the machine as it stands: what is behind a cover first while that cover is off anyway; else after
 * what the closed machine lets one try by hand, so that it is opened once, and closed before it runs.
 */
const inHand = (functions: readonly FunctionCheck[], { off }: Job): readonly FunctionCheck[] => {
  const isOpen = ({ group, check }: FunctionCheck): boolean =>
    group === 'opened' && check.coversOff.every((cover) => off.includes(cover))
  const rank = (one: FunctionCheck): number => (isOpen(one) ? 0 : { 'by-hand': 1, opened: 2, run: 3 }[one.group])
  return functions.toSorted((a, b) => rank(a) - rank(b))
}

const rowOf = (job: Job, one: FunctionCheck): FunctionRow => {
  const { check, isReading, id, name, how, good, cautions, minutes, group, parts } = one
  return {
    id,
    name,
    how,
    good,
    cautions,
    minutes,
    group,
    parts,
    part: mainPart(one),
    mayBeMissing: mainPart(one) !== null || (parts.length === 0 && !check.provesWorking),
    settings: settingsOf(job.blueprint, check.controls),
    runs: runsMachine(check),
    coversOff: check.coversOff,
    closed: runsMachine(check) || check.coversOn,
    barred: [...checkBarred(job, check), ...outOfIt(job, one)],
    check: isReading ? check.id : null,
    outcomes: isReading ? check.outcomes : madeOutcomes,
    state: stateOf(job, one),
  }
}

const settingsOf = ({ controls }: Blueprint, set: Readonly<Record<string, string>>): readonly string[] =>
  controls.flatMap(({ id, name }) => (set[id] === undefined ? [] : [`${name}: ${set[id]}`]))

/** Parts of a function that are taken out of the machine now. */
const outOfIt = ({ events }: Job, { parts }: FunctionCheck): readonly string[] =>
  parts
    .filter(({ id }) => {
      const last = events.findLast(
        (event) => (event.kind === 'taken-out' || event.kind === 'put-in') && event.part === id,
      )
      return last?.kind === 'taken-out'
    })
    .map(({ name }) => `the ${inSentence(name)} is out of the machine`)
