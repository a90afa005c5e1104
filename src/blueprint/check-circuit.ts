import { problem, type Problem } from '../base/problem.ts'
import type { Blueprint, Fault } from './schema.ts'

/** Elements and probes have two different ends, probes and the supply are on something, and what a fault does to an element makes sense for its kind. */
export const checkCircuit = (blueprint: Blueprint): readonly Problem[] => [
  ...twoEnds('supply', blueprint.supply.line, blueprint.supply.neutral),
  ...blueprint.circuit.flatMap((element) => twoEnds(`circuit.${element.id}`, element.from, element.to)),
  ...blueprint.checks.flatMap((check) =>
    check.kind === 'meter' ? twoEnds(`checks.${check.id}`, check.red, check.black) : [],
  ),
  ...onNothing(blueprint, 'supply', Object.values(blueprint.supply)),
  ...blueprint.checks.flatMap((check) =>
    check.kind === 'meter' ? onNothing(blueprint, `checks.${check.id}`, [check.red, check.black]) : [],
  ),
  ...blueprint.faults.flatMap((fault) => [...changesNothing(blueprint, fault), ...changesTwice(fault)]),
]

const twoEnds = (where: string, one: string, other: string): readonly Problem[] =>
  one === other ? [problem('same-ends', where, `Both ends are at “${one}”`, 'Name two different points')] : []

/** A point that is there but that nothing touches: a meter could never read anything at it. */
const onNothing = (blueprint: Blueprint, where: string, points: readonly string[]): readonly Problem[] =>
  points
    .filter((id) => blueprint.points.some((point) => point.id === id))
    .filter((id) => blueprint.circuit.every(({ from, to }) => from !== id && to !== id))
    .map((id) => {
      const what = `No element of the circuit touches “${id}”, so nothing could ever be read there`
      return problem('probe-on-nothing', where, what, 'Name a point that an element begins or ends at')
    })

/** Opening what is not there, or adding to it, changes nothing. */
const changesNothing = (blueprint: Blueprint, fault: Fault): readonly Problem[] =>
  fault.electrical.flatMap(({ element: id, becomes }) => {
    const element = blueprint.circuit.find((candidate) => candidate.id === id)
    if (element?.kind !== 'stray') return []
    if (becomes === 'short' || (typeof becomes === 'object' && 'ohm' in becomes)) return []
    const what = `The stray path “${id}” is not there in a healthy machine, so this effect changes nothing`
    return [problem('effect-on-nothing', `faults.${fault.id}.electrical`, what, 'Give its ohm, or “short”')]
  })

const changesTwice = (fault: Fault): readonly Problem[] => {
  const elements = fault.electrical.map((effect) => effect.element)
  const twice = elements.find((id, i) => elements.indexOf(id) !== i)
  if (twice === undefined) return []
  const what = `It does two things to the element “${twice}”`
  return [problem('effect-twice', `faults.${fault.id}.electrical`, what, 'Say what the element becomes once')]
}
