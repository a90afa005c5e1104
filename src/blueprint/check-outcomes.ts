import { problem, type Problem } from '../base/problem.ts'
import { nearest } from '../base/nearest.ts'
import type { Blueprint, GradedCheck } from './schema.ts'

/** How far the sum of a distribution may be from 1: rounding of decimals, no more. */
export const sumTolerance = 1e-6

/** Graded checks: outcomes named are there, distributions sum to 1, and a sound machine most likely shows the first. */
export const checkOutcomes = (blueprint: Blueprint): readonly Problem[] =>
  blueprint.checks.flatMap((check) => (check.kind === 'meter' ? [] : checkGraded(blueprint, check)))

const checkGraded = (blueprint: Blueprint, check: GradedCheck): readonly Problem[] => {
  const where = `checks.${check.id}`
  const tables = Object.entries(check.under).map(([fault, table]) => [`${where}.under.${fault}`, table] as const)
  return [
    ...[[`${where}.sound`, check.sound] as const, ...tables].flatMap(([at, table]) => checkTable(check, at, table)),
    ...knownOutcome(check, `${where}.driven.otherwise`, check.driven?.otherwise),
    ...knownOutcome(check, `${where}.whenTrips`, check.whenTrips),
    ...soundShowsFirst(check, where),
    ...drivesMotor(blueprint, check, where),
    ...provesByRunning(check, where),
    ...checkScale(check, `${where}.scale`),
  ]
}

type Table = GradedCheck['sound']

const checkTable = (check: GradedCheck, where: string, table: Table): readonly Problem[] => {
  const sum = Object.values(table).reduce<number>((total, p) => total + (p ?? 0), 0)
  const unknown = Object.keys(table).flatMap((id) => knownOutcome(check, where, id))
  if (Math.abs(sum - 1) <= sumTolerance) return unknown
  const what = `The probabilities sum to ${Number(sum.toPrecision(6))}, not to 1`
  return [...unknown, problem('not-summing-to-one', where, what, 'Share the whole of 1 out over the outcomes')]
}

const knownOutcome = (check: GradedCheck, where: string, id: string | undefined): readonly Problem[] => {
  const known = check.outcomes.map((outcome) => outcome.id)
  if (id === undefined || known.includes(id)) return []
  const close = nearest(id, known)
  const mend = close === null ? `Use one of ${known.join(', ')}` : `Write “${close}”, or add the outcome “${id}”`
  return [problem('unknown-outcome', where, `“${id}” is no outcome of the check “${check.id}”`, mend)]
}

const soundShowsFirst = (check: GradedCheck, where: string): readonly Problem[] => {
  const first = check.outcomes[0]?.id ?? ''
  const better = Object.entries(check.sound).find(([id, p]) => id !== first && (p ?? 0) >= (check.sound[first] ?? 0))
  if (better === undefined) return []
  const what = `A sound machine would show “${better[0]}” at least as often as “${first}”, the first outcome`
  return [problem('sound-not-first', `${where}.sound`, what, 'List the outcomes from good to bad, the sound one first')]
}

const drivesMotor = (blueprint: Blueprint, check: GradedCheck, where: string): readonly Problem[] => {
  const element = blueprint.circuit.find((candidate) => candidate.id === check.driven?.element)
  if (element === undefined || element.kind === 'motor') return []
  const what = `“${element.id}” is a ${element.kind}: only a motor can be driven`
  return [problem('driven-no-motor', `${where}.driven`, what, 'Name the motor element whose turning shows something')]
}

const provesByRunning = (check: GradedCheck, where: string): readonly Problem[] => {
  if (!check.provesWorking || check.kind === 'run') return []
  const what = `A check of the kind “${check.kind}” cannot prove that the machine works`
  return [problem('proves-without-running', `${where}.provesWorking`, what, 'Let a run check prove it')]
}

const checkScale = (check: GradedCheck, where: string): readonly Problem[] => {
  if (check.scale === undefined) return []
  const { order, edges } = check.scale
  const outcomes = check.outcomes.map(({ id }) => id)
  const left = outcomes.filter((id) => order.filter((named) => named === id).length !== 1)
  return [
    ...order.flatMap((id) => knownOutcome(check, `${where}.order`, id)),
    ...(left.length === 0
      ? []
      : [
          problem(
            'scale-not-whole',
            `${where}.order`,
            `${left.join(', ')}: each outcome lies at one place of the scale`,
            'Name every outcome once, from the lowest number to the highest',
          ),
        ]),
    ...(edges.length === order.length - 1 ? [] : [edgesProblem(where, edges.length, order.length)]),
    ...(edges.every((edge, i) => i === 0 || edge > edges[i - 1])
      ? []
      : [problem('edges-not-ascending', `${where}.edges`, 'The edges do not ascend', 'Write them from low to high')]),
  ]
}

const edgesProblem = (where: string, edges: number, outcomes: number): Problem =>
  problem(
    'edges-miscounted',
    `${where}.edges`,
    `${edges} edges lie between ${outcomes} outcomes`,
    'Write one edge fewer than there are outcomes',
  )
