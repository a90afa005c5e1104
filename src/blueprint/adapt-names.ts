import { problem, type Problem } from '../base/problem.ts'
import { changesSomething, editsOf, type Edit } from './adapt-edits.ts'
import { nearest } from '../base/nearest.ts'
import type { Blueprint } from './schema.ts'

/** What is wrong with the edits themselves: names that are not there, edits that say nothing, and edits that contradict each other. */
export const editProblems = (blueprint: Blueprint, edits: readonly Edit[]): readonly Problem[] => [
  ...edits.flatMap((edit, index) => [...nameProblems(blueprint, edit, index), ...emptyProblem(edit, index)]),
  ...contradictions(blueprint, edits),
]

type Kind = 'part' | 'cover' | 'control' | 'point' | 'check' | 'fault' | 'repair' | 'element' | 'option'
type Item = { readonly id: string }

const nameProblems = (blueprint: Blueprint, edit: Edit, index: number): readonly Problem[] => {
  const known = (kind: Kind, id: string, items: readonly Item[]): readonly Problem[] =>
    items.some((item) => item.id === id) ? [] : [unknown(kind, `edits[${index}]`, id, items)]
  switch (edit.kind) {
    case 'part-absent': {
      const own = blueprint.circuit.filter((element) => element.part === edit.part)
      const fates = Object.keys(edit.elements ?? {})
      return [
        ...known('part', edit.part, blueprint.parts),
        ...fates.flatMap((element) => known('element', element, own)),
      ]
    }
    case 'part-moved':
      return [
        ...known('part', edit.part, blueprint.parts),
        ...(edit.behind === null ? [] : known('cover', edit.behind, blueprint.covers)),
      ]
    case 'part-note':
      return known('part', edit.part, blueprint.parts)
    case 'cover-fixings':
    case 'cover-absent':
      return known('cover', edit.cover, blueprint.covers)
    case 'renamed':
      return known(edit.what, edit.id, renameable(blueprint)[edit.what])
    case 'check-how':
      return known('check', edit.check, blueprint.checks)
    case 'fault-share':
      return known('fault', edit.fault, blueprint.faults)
    case 'repair-cost': {
      const repair = blueprint.repairs.find(({ id }) => id === edit.repair)
      return repair === undefined
        ? known('repair', edit.repair, blueprint.repairs)
        : known('option', edit.option, repair.options)
    }
    case 'plate':
      return []
  }
}

const renameable = ({ parts, controls, covers, points, checks }: Blueprint) => ({
  part: parts,
  control: controls,
  cover: covers,
  point: points,
  check: checks,
})

const unknown = (kind: Kind, where: string, id: string, items: readonly Item[]): Problem => {
  const ids = items.map((item) => item.id)
  const close = nearest(id, ids)
  const article = /^[aeiou]/.test(kind) ? 'an' : 'a'
  const mend =
    close !== null
      ? `Write “${close}”`
      : ids.length === 0
        ? `It has no ${kind} to name`
        : `Name one of ${ids.slice(0, 8).join(', ')}${ids.length > 8 ? ' …' : ''}`
  return problem(`unknown-${kind}`, where, `“${id}” is not ${article} ${kind} of this blueprint`, mend)
}

const emptyProblem = (edit: Edit, index: number): readonly Problem[] =>
  changesSomething(edit)
    ? []
    : [
        problem(
          'edit-says-nothing',
          `edits[${index}]`,
          'This edit changes nothing',
          'Say what is different, or leave it out',
        ),
      ]

/** What is not there can be neither moved nor changed, and nothing can be behind it. */
const contradictions = (blueprint: Blueprint, edits: readonly Edit[]): readonly Problem[] => {
  const goneParts = new Set(editsOf(edits, 'part-absent').map(({ part }) => part))
  const goneCovers = new Set(editsOf(edits, 'cover-absent').map(({ cover }) => cover))
  const nameOf = (items: readonly { id: string; name: string }[], id: string): string =>
    items.find((item) => item.id === id)?.name ?? id
  return edits.flatMap((edit, index) => {
    const where = `edits[${index}]`
    const part = edit.kind === 'part-moved' || edit.kind === 'part-note' ? edit.part : renamed(edit, 'part')
    const cover =
      edit.kind === 'cover-fixings'
        ? edit.cover
        : edit.kind === 'part-moved'
          ? (edit.behind ?? undefined)
          : renamed(edit, 'cover')
    return [
      ...(part !== undefined && goneParts.has(part)
        ? [notThere(where, 'part-not-there', nameOf(blueprint.parts, part))]
        : []),
      ...(cover !== undefined && goneCovers.has(cover)
        ? [notThere(where, 'cover-not-there', nameOf(blueprint.covers, cover))]
        : []),
    ]
  })
}

const renamed = (edit: Edit, what: 'part' | 'cover'): string | undefined =>
  edit.kind === 'renamed' && edit.what === what ? edit.id : undefined

const notThere = (where: string, code: string, name: string): Problem =>
  problem(
    code,
    where,
    `Another edit says that this machine has no “${name}”`,
    'Take one of the two out: what is not there cannot be changed, moved or put behind',
  )
