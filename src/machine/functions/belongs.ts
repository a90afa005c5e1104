import { partKindOf } from '../../blueprint/part-kind-of.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { FunctionKind } from '../../facts/function-kind.ts'

type Part = Blueprint['parts'][number]

/** Whether an id ends in these words: `lower-hose` in `hose`, `hose-grip` not. */
export const endsIn = (id: string, words: string): boolean => id === words || id.endsWith(`-${words}`)

const isAmong = (id: string, words: readonly string[] = []): boolean => words.some((each) => endsIn(id, each))

/** The parts that a kind of function tries on this blueprint, in the order of the kind's words, then of the blueprint. */
export const partsOf = (kind: FunctionKind, blueprint: Blueprint): readonly Part[] => {
  const all = blueprint.parts.filter(({ id }) => !isAmong(id, kind.except))
  const byWords = kind.belongs.flatMap((words) => all.filter(({ id }) => endsIn(id, words)))
  const byKind = all.filter(({ id }) => kind.partKinds?.includes(partKindOf(id)))
  const ofAir = kind.airPath === true ? all.filter(({ id }) => blueprint.airPath.includes(id)) : []
  return [...new Set([...byWords, ...byKind, ...ofAir])]
}

/** Parts of the blueprint that a kind shows something of besides those that it tries. */
export const touchedBy = (kind: FunctionKind, blueprint: Blueprint): readonly string[] =>
  blueprint.parts.map(({ id }) => id).filter((id) => isAmong(id, kind.touches))

/** Controls by the kind's words, and those that a contact of one of these parts follows. */
export const controlsOf = (kind: FunctionKind, blueprint: Blueprint, parts: readonly Part[]): readonly string[] => {
  const followed = blueprint.circuit.flatMap((element) =>
    element.kind === 'contact' && parts.some(({ id }) => id === element.part) ? [element.closedWhen.control] : [],
  )
  return blueprint.controls
    .map(({ id }) => id)
    .filter((id) => isAmong(id, kind.controls) || (isWorked(kind) && followed.includes(id)))
}

/** A kind that names controls is one that works a switch; others only have switches among their parts. */
const isWorked = ({ controls }: FunctionKind): boolean => controls !== undefined

/** Whether a machine of this blueprint has this function. */
export const belongsTo = (
  kind: FunctionKind,
  blueprint: Blueprint,
  parts: readonly Part[],
  controls: readonly string[],
): boolean =>
  kind.whole === true ||
  parts.length > 0 ||
  controls.length > 0 ||
  blueprint.parts.some(({ id }) => isAmong(id, kind.beside) && !isAmong(id, kind.except))
