import type { Random } from '../src/base/random.ts'
import type { PlanProblemInput } from '../src/engines/plan/index.ts'
import { gateCount, type SyntheticMachine } from './synthetic-machine.ts'

type Check = NonNullable<PlanProblemInput['checks']>[number]
/** A check with the parts it sees, from the first up to before the last. */
export type SeeingCheck = { readonly check: Check; readonly from: number; readonly to: number }

const chainLength = 25
/** Share of the readings that are not what the faults would show. */
const meterNoise = 0.03
const looksShare = 0.7
const lookFalseAlarm = 0.03
const gateNoise = 0.01
const gateMark = (gate: number): string => `safe${gate}`
/** What a sale as working needs. */
export const workingMark = 'runs'
export const gateMarks = Array.from({ length: gateCount }, (_, gate) => gateMark(gate))

/** Meter checks of the chains, split by halves; looks at single parts; the safety gates and the run check. */
export const syntheticChecks = (machine: SyntheticMachine, random: Random): readonly SeeingCheck[] => {
  const parts = machine.behind.length
  const segments = chains(parts).flatMap(([from, to]) => halves(from, to))
  const looked = machine.behind.flatMap((_, part) => (random.uniform() < looksShare ? [part] : []))
  return [
    ...segments.map(([from, to]) => ({ check: meterCheck(machine, [from, to], random), from, to })),
    ...looked.map((part) => ({ check: look(machine, part, random), from: part, to: part + 1 })),
    ...gatesAndRun(machine).map((check) => ({ check, from: 0, to: parts })),
  ]
}

type Segment = readonly [from: number, to: number]

const chains = (parts: number): readonly Segment[] =>
  Array.from({ length: Math.ceil(parts / chainLength) }, (_, k) => [
    k * chainLength,
    Math.min(parts, (k + 1) * chainLength),
  ])

/** A segment, its two halves, and theirs in turn, down to one part. */
const halves = (from: number, to: number): readonly Segment[] => {
  const middle = Math.floor((from + to) / 2)
  return [[from, to], ...(to - from < 2 ? [] : [...halves(from, middle), ...halves(middle, to)])]
}

/** The covers that must be off to reach parts. */
export const coversOf = ({ covers, behind }: SyntheticMachine, parts: readonly number[]): string[] => [
  ...new Set(parts.flatMap((part) => (behind[part] < 0 ? [] : [covers[behind[part]].id]))),
]

/** What a check shows by suspect: the most of what its faults show, with noise over the other outcomes. */
const rows = (machine: SyntheticMachine, outcomes: number, noise: number, shows: (fault: number) => number) =>
  machine.sets.map((set) => {
    const at = Math.max(0, ...set.map(shows))
    return Array.from({ length: outcomes }, (_, o) => (o === at ? 1 - noise : noise / (outcomes - 1)))
  })

const meterCheck = (machine: SyntheticMachine, [from, to]: Segment, random: Random): Check => ({
  id: `meter ${from} to ${to}`,
  minutes: 1.5 + 2 * random.uniform(),
  // The probes touch the two ends; what is between need not be reached.
  coversOff: coversOf(machine, [from, to - 1]),
  outcomes: [{ id: 'as-it-should' }, { id: 'high' }, { id: 'open' }],
  likelihood: rows(machine, 3, meterNoise, (f) => {
    const { part, kind } = machine.faults[f]
    return part < from || part >= to || kind === 'unsafe' ? 0 : kind === 'open' ? 2 : 1
  }),
})

const look = (machine: SyntheticMachine, part: number, random: Random): Check => {
  const seen = machine.faults.map(() => 0.4 + 0.55 * random.uniform())
  const bad = (set: readonly number[]): number =>
    1 -
    set.filter((f) => machine.faults[f].part === part).reduce((missed, f) => missed * (1 - seen[f]), 1 - lookFalseAlarm)
  return {
    id: `look ${part}`,
    minutes: 1 + 2 * random.uniform(),
    coversOff: coversOf(machine, [part]),
    outcomes: [{ id: 'looks-good' }, { id: 'looks-bad' }],
    likelihood: machine.sets.map((set) => [1 - bad(set), bad(set)]),
  }
}

/** The safety gates, and the run check that needs them all. */
const gatesAndRun = (machine: SyntheticMachine): readonly Check[] => [
  ...gateMarks.map((mark, gate) => ({
    id: `gate ${gate}`,
    minutes: 2,
    outcomes: [{ id: 'pass', gives: [mark] }, { id: 'fail' }],
    likelihood: rows(machine, 2, gateNoise, (f) =>
      machine.faults[f].kind === 'unsafe' && machine.faults[f].gate === gate ? 1 : 0,
    ),
  })),
  {
    id: 'run',
    minutes: 4,
    allCoversOn: true,
    needs: gateMarks,
    outcomes: [{ id: 'good', gives: [workingMark] }, { id: 'poor' }, { id: 'dead' }],
    likelihood: rows(machine, 3, gateNoise, (f) => ({ unsafe: 0, poor: 1, open: 2 })[machine.faults[f].kind]),
  },
]
