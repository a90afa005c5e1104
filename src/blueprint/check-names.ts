import { problem, type Problem } from '../base/problem.ts'
import { componentShares } from '../facts/fault-rates.ts'
import { nearest } from '../base/nearest.ts'
import type { Blueprint, Check, Fault, GradedCheck, MeterCheck } from './schema.ts'

type Named = { readonly id: string }

/** Every name that is used must be there: points, parts, elements, covers, controls, positions, faults, components. */
export const checkNames = (blueprint: Blueprint): readonly Problem[] => {
  const names = knownNames(blueprint)
  return [
    ...names('point', 'supply.line', [blueprint.supply.line]),
    ...names('point', 'supply.neutral', [blueprint.supply.neutral]),
    ...names('point', 'supply.earth', [blueprint.supply.earth]),
    ...blueprint.points.flatMap((point) => names('cover', `points.${point.id}.behind`, [point.behind])),
    ...blueprint.parts.flatMap((part) => names('cover', `parts.${part.id}.behind`, [part.behind])),
    ...blueprint.parts.flatMap((part) => names('part', `parts.${part.id}.within`, [part.within])),
    ...blueprint.circuit.flatMap((element) => elementNames(blueprint, names, element)),
    ...names('part', 'airPath', blueprint.airPath),
    ...blueprint.covers.flatMap((cover) => names('cover', `covers.${cover.id}.after`, cover.after)),
    ...blueprint.faults.flatMap((fault) => faultNames(names, fault)),
    ...blueprint.checks.flatMap((check) => checkOwnNames(blueprint, names, check)),
    ...blueprint.repairs.flatMap((repair) => [
      ...names('part', `repairs.${repair.id}.part`, [repair.part]),
      ...names('fault', `repairs.${repair.id}.removes`, repair.removes),
      ...names('cover', `repairs.${repair.id}.coversOff`, repair.coversOff),
    ]),
  ]
}

type Kind = 'point' | 'part' | 'element' | 'cover' | 'control' | 'fault' | 'component'
type Names = (kind: Kind, where: string, used: readonly (string | undefined)[]) => readonly Problem[]

const knownNames = (blueprint: Blueprint): Names => {
  const known: Readonly<Record<Kind, readonly string[]>> = {
    point: ids(blueprint.points),
    part: ids(blueprint.parts),
    element: ids(blueprint.circuit),
    cover: ids(blueprint.covers),
    control: ids(blueprint.controls),
    fault: ids(blueprint.faults),
    component: ids(componentShares),
  }
  return (kind, where, used) =>
    used
      .filter((id) => id !== undefined && !known[kind].includes(id))
      .map((id) => unknownName(kind, where, id ?? '', known[kind]))
}

const ids = (items: readonly Named[]): readonly string[] => items.map(({ id }) => id)

const unknownName = (kind: string, where: string, id: string, known: readonly string[]): Problem => {
  const close = nearest(id, known)
  const whose = kind === 'component' ? 'of the open repair data' : 'of this blueprint'
  const add = kind === 'component' ? 'leave the component out' : `add the ${kind} “${id}”`
  const mend = close === null ? capital(add) : `Write “${close}”, or ${add}`
  return problem(`unknown-${kind}`, where, `“${id}” is no ${kind} ${whose}`, mend)
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const elementNames = (
  blueprint: Blueprint,
  names: Names,
  element: Blueprint['circuit'][number],
): readonly Problem[] => {
  const where = `circuit.${element.id}`
  return [
    ...names('part', `${where}.part`, [element.part]),
    ...names('point', `${where}.from`, [element.from]),
    ...names('point', `${where}.to`, [element.to]),
    ...(element.kind === 'contact'
      ? positionNames(blueprint, names, `${where}.closedWhen`, [
          [element.closedWhen.control, element.closedWhen.positions],
        ])
      : []),
  ]
}

const faultNames = (names: Names, fault: Fault): readonly Problem[] => {
  const where = `faults.${fault.id}`
  const elements = fault.electrical.map((effect) => effect.element)
  return [
    ...names('part', `${where}.part`, [fault.part]),
    ...names('element', `${where}.electrical`, elements),
    ...names('fault', `${where}.excludes`, fault.excludes),
    ...names('component', `${where}.rate.component`, [fault.rate.component?.id]),
  ]
}

const checkOwnNames = (blueprint: Blueprint, names: Names, check: Check): readonly Problem[] => {
  const where = `checks.${check.id}`
  const controls = Object.entries(check.controls).map(([control, position]) => [control, [position]] as const)
  return [
    ...names('cover', `${where}.coversOff`, check.coversOff),
    ...positionNames(blueprint, names, `${where}.controls`, controls),
    ...(check.kind === 'meter' ? meterNames(names, where, check) : gradedNames(names, where, check)),
  ]
}

const meterNames = (names: Names, where: string, check: MeterCheck): readonly Problem[] => [
  ...names('point', `${where}.red`, [check.red]),
  ...names('point', `${where}.black`, [check.black]),
  ...names('element', `${where}.unplug`, check.unplug),
  ...names('part', `${where}.moving`, check.moving),
]

const gradedNames = (names: Names, where: string, check: GradedCheck): readonly Problem[] => [
  ...names('fault', `${where}.under`, Object.keys(check.under)),
  ...names('element', `${where}.driven`, [check.driven?.element]),
]

const positionNames = (
  blueprint: Blueprint,
  names: Names,
  where: string,
  used: readonly (readonly [string, readonly string[]])[],
): readonly Problem[] =>
  used.flatMap(([id, positions]) => {
    const control = blueprint.controls.find((candidate) => candidate.id === id)
    if (control === undefined) return names('control', where, [id])
    return positions
      .filter((position) => !control.positions.includes(position))
      .map((position) => {
        const what = `“${position}” is no position of the control “${id}”`
        return problem('unknown-position', where, what, `Use one of ${control.positions.join(', ')}`)
      })
  })
