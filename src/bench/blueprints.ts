import { problem, type Problem } from '../base/problem.ts'
import type { Result } from '../base/result.ts'
import { adaptBlueprint } from '../blueprint/adapt.ts'
import type { Edit } from '../blueprint/adapt-edits.ts'
import { editText } from '../blueprint/adapt-words.ts'
import { checkBlueprint } from '../blueprint/check.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { gateProblems } from '../machine/index.ts'
import { canonical } from './canonical.ts'
import type { BlueprintOrigin } from './contract.ts'
import { nextOwnId, type OwnBlueprint } from './own-blueprint.ts'
import type { BlueprintStore, Clock } from './ports.ts'
import { unknownId } from './unknown.ts'

/** Looks a blueprint up by id. */
export type FindBlueprint = (id: string) => Blueprint | undefined | Promise<Blueprint | undefined>

/** The blueprints at hand: those that come with the program, and one's own. */
export type BlueprintDeps = {
  readonly library: readonly Blueprint[]
  readonly own: BlueprintStore
  readonly now: Clock
}

/** What became of a blueprint to be kept. Nothing was written unless it is `kept`. */
export type KeepOutcome =
  /** `isNew` is false when the very same one was there already; then its id is given. */
  | { readonly kind: 'kept'; readonly id: string; readonly blueprint: Blueprint; readonly isNew: boolean }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  /** There is no blueprint to adapt under this id. */
  | { readonly kind: 'missing'; readonly problems: readonly Problem[] }
  | { readonly kind: 'not-kept'; readonly problems: readonly Problem[] }

/**
 * A finder over the library and one's own. The same id gives the same object each time, so that what is worked out from a
 * blueprint is kept; that is right because a blueprint of one's own is never changed under its id.
 */
export const blueprintFinder = (library: readonly Blueprint[], own: BlueprintStore): FindBlueprint => {
  const known = new Map(library.map((blueprint) => [blueprint.id, blueprint]))
  return async (id) => {
    const blueprint = known.get(id) ?? (await own.get(id))?.blueprint
    if (blueprint !== undefined) known.set(id, blueprint)
    return blueprint
  }
}

/** Ids of all blueprints at hand, to name in a refusal. */
export const blueprintIds = async ({ library, own }: Omit<BlueprintDeps, 'now'>): Promise<readonly string[]> => [
  ...library.map(({ id }) => id),
  ...(await own.list()).map(({ id }) => id),
]

/** What a blueprint of one's own was made from; null for one that is not there, or that came with the program. */
export const blueprintOrigin = async (
  deps: Omit<BlueprintDeps, 'now'>,
  id: string,
): Promise<BlueprintOrigin | null> => {
  const own = await deps.own.get(id)
  if (own === null) return null
  const base = own.base === null ? undefined : await blueprintFinder(deps.library, deps.own)(own.base)
  return {
    savedAt: own.savedAt,
    base: own.base === null ? null : { id: own.base, name: base?.name ?? own.base },
    differences: own.edits.map((edit) => editText(edit, base ?? null)),
  }
}

/** Checks a blueprint from outside and keeps it under an id of its own. The very same one again is not kept twice. */
export const keepBlueprint = async (deps: BlueprintDeps, input: unknown): Promise<KeepOutcome> => {
  const checked = soundBlueprint(checkBlueprint(input))
  return checked.kind === 'refused' ? checked : keep(deps, checked.value, checked.value.name, null, [])
}

/**
 * Adapts a blueprint to a machine in hand and keeps the variant under a name of its own. A variant is never changed: saving
 * another one under the same name makes a new revision.
 */
export const keepVariant = async (
  deps: BlueprintDeps,
  base: string,
  { name, edits }: { readonly name: string; readonly edits: readonly Edit[] },
): Promise<KeepOutcome> => {
  const blueprint = await blueprintFinder(deps.library, deps.own)(base)
  if (blueprint === undefined) {
    return { kind: 'missing', problems: [unknownId('blueprint', 'id', base, await blueprintIds(deps))] }
  }
  if (edits.length === 0) return { kind: 'refused', problems: [nothingDifferent] }
  const adapted = soundBlueprint(adaptBlueprint(blueprint, edits))
  return adapted.kind === 'refused' ? adapted : keep(deps, { ...adapted.value, name }, name, base, edits)
}

const nothingDifferent = problem(
  'nothing-different',
  'edits',
  'Nothing is said to be different',
  'Say what is different on this machine first',
)

/** A blueprint can be of the right form and yet ask for a reading that no sound machine gives. */
export const soundBlueprint = (checked: Result<Blueprint>): Result<Blueprint> => {
  if (checked.kind === 'refused') return checked
  const problems = gateProblems(checked.value)
  return problems.length === 0 ? checked : { kind: 'refused', problems }
}

/** How often another id is tried when someone else took it meanwhile. */
const tries = 20

const keep = async (
  deps: BlueprintDeps,
  blueprint: Blueprint,
  name: string,
  base: string | null,
  edits: readonly Edit[],
): Promise<KeepOutcome> => {
  for (let turn = 1; ; turn++) {
    const kept = await deps.own.list()
    const same = [...deps.library, ...kept.map((one) => one.blueprint)].find((one) => isSame(one, blueprint))
    if (same !== undefined) return { kind: 'kept', id: same.id, blueprint: same, isNew: false }
    const id = nextOwnId(
      name,
      kept.map((one) => one.id),
    )
    const own: OwnBlueprint = {
      id,
      name,
      base,
      edits: [...edits],
      blueprint: { ...blueprint, id },
      savedAt: deps.now(),
    }
    const outcome = await deps.own.put(own)
    if (outcome.kind === 'kept') return { kind: 'kept', id, blueprint: own.blueprint, isNew: true }
    if (outcome.kind === 'not-kept') return { kind: 'not-kept', problems: [outcome.problem] }
    if (turn === tries) return { kind: 'not-kept', problems: [alwaysTaken] }
  }
}

const alwaysTaken = problem('busy', '', 'Others save under this name at the same moment', 'Send it again in a moment')

/** The same but for the id, whatever the order of the fields. */
const isSame = (a: Blueprint, b: Blueprint): boolean => canonical({ ...a, id: '' }) === canonical({ ...b, id: '' })
