import { problem, type Problem } from '../base/problem.ts'
import type { Blueprint, Fault } from './schema.ts'

/** Sections and ways lie in the air path, one fan draws it, and what a fault does to the air it does at a place that is there. */
export const checkAir = (blueprint: Blueprint): readonly Problem[] => [
  ...blueprint.faults.flatMap((fault) => effectProblems(blueprint, fault)),
  ...fanProblems(blueprint),
  ...blueprint.airWays.flatMap(({ id, from, past }) =>
    [from, ...past].flatMap((part) => notOnPath(blueprint, `airWays.${id}`, part)),
  ),
  ...blueprint.airWays.flatMap((way) => wayProblems(blueprint, way)),
]

const notOnPath = ({ airPath }: Blueprint, where: string, part: string): readonly Problem[] => {
  if (airPath.includes(part)) return []
  const what = `“${part}” is not a part of the air path`
  return [problem('not-on-air-path', where, what, `Use one of ${airPath.join(', ')}, or add it to airPath`)]
}

const effectProblems = (blueprint: Blueprint, { id, air }: Fault): readonly Problem[] => {
  if (air === undefined || !('part' in air)) return []
  const where = `faults.${id}.air`
  const gone = notOnPath(blueprint, where, air.part)
  if (gone.length > 0 || air.does !== 'blocks') return gone
  const section = blueprint.parts.find((part) => part.id === air.part)?.air
  if (section !== undefined && section.kind !== 'fan') return []
  const what = `“${air.part}” has no loss that it could add to`
  return [problem('no-air-section', where, what, `Give the part an “air” of the kind hose or passage`)]
}

const isFan = ({ parts }: Blueprint, id: string): boolean => parts.find((part) => part.id === id)?.air?.kind === 'fan'

const fanProblems = (blueprint: Blueprint): readonly Problem[] => {
  if (blueprint.airWays.length === 0) return []
  const fans = blueprint.airPath.filter((id) => isFan(blueprint, id))
  if (fans.length === 1) return []
  const what = fans.length === 0 ? 'No part of the air path is the fan' : `The air path has ${fans.length} fans`
  return [problem('one-fan', 'airPath', what, 'Give just one part of the air path an “air” of the kind fan')]
}

const wayProblems = (blueprint: Blueprint, { id, from }: Blueprint['airWays'][number]): readonly Problem[] => {
  const { airPath } = blueprint
  const start = airPath.indexOf(from)
  const fan = airPath.findIndex((part) => isFan(blueprint, part))
  if (start < 0 || fan < 0 || start <= fan) return []
  const what = `The way begins at “${from}”, after the fan: nothing is sucked in there`
  return [
    problem('way-after-fan', `airWays.${id}.from`, what, `Begin it at one of ${airPath.slice(0, fan + 1).join(', ')}`),
  ]
}
