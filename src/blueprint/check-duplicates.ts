import { problem, type Problem } from '../base/problem.ts'
import type { Blueprint } from './schema.ts'

/** An id names one thing of its kind; a check's outcomes, a repair's ways and a control's positions are told apart too. */
export const checkDuplicates = (blueprint: Blueprint): readonly Problem[] => {
  const { points, parts, controls, circuit, covers, faults, checks, repairs } = blueprint
  const lists = { points, parts, controls, circuit, covers, faults, checks, repairs }
  return [
    ...Object.entries(lists).flatMap(([where, items]) => duplicates(where, ids(items))),
    ...controls.flatMap((control) => duplicates(`controls.${control.id}.positions`, control.positions)),
    ...checks.flatMap((check) =>
      check.kind === 'meter' ? [] : duplicates(`checks.${check.id}.outcomes`, ids(check.outcomes)),
    ),
    ...repairs.flatMap((repair) => duplicates(`repairs.${repair.id}.options`, ids(repair.options))),
  ]
}

const ids = (items: readonly { readonly id: string }[]): readonly string[] => items.map(({ id }) => id)

const duplicates = (where: string, names: readonly string[]): readonly Problem[] =>
  [...new Set(names.filter((name, i) => names.indexOf(name) !== i))].map((name) =>
    problem('duplicate-id', where, `“${name}” is there twice`, 'Give each its own id'),
  )
