import type { BlueprintInput } from './schema.ts'

type Lists = Pick<
  BlueprintInput,
  'points' | 'parts' | 'controls' | 'circuit' | 'covers' | 'faults' | 'checks' | 'repairs'
>
type ListName = keyof Lists
type CheckInput = BlueprintInput['checks'][number]
type Under = Extract<CheckInput, { under: unknown }>['under']

/** A piece that several architectures share. `addsTo`: what its faults show in checks that are written elsewhere. */
export type BlueprintFragment = Partial<Lists> & { readonly addsTo?: Readonly<Record<string, Under>> }

/** What a blueprint says once: all but the lists that fragments fill. */
export type BlueprintBase = Omit<BlueprintInput, ListName>

/**
 * The blueprint made of a base and fragments. Each list holds the fragments' items in the order given; then every `addsTo`
 * is merged into the `under` table of the check it names. Throws (a mistake in the library, not in use) when an id of one
 * kind comes twice, when `addsTo` names no graded check, or when a fault is already in that check's table.
 */
export const compose = (base: BlueprintBase, ...fragments: readonly BlueprintFragment[]): BlueprintInput => ({
  ...base,
  points: once(
    'points',
    fragments.flatMap(({ points = [] }) => points),
  ),
  parts: once(
    'parts',
    fragments.flatMap(({ parts = [] }) => parts),
  ),
  controls: once(
    'controls',
    fragments.flatMap(({ controls = [] }) => controls),
  ),
  circuit: once(
    'circuit',
    fragments.flatMap(({ circuit = [] }) => circuit),
  ),
  covers: once(
    'covers',
    fragments.flatMap(({ covers = [] }) => covers),
  ),
  faults: once(
    'faults',
    fragments.flatMap(({ faults = [] }) => faults),
  ),
  checks: fragments.reduce(
    withAdditions,
    once(
      'checks',
      fragments.flatMap(({ checks = [] }) => checks),
    ),
  ),
  repairs: once(
    'repairs',
    fragments.flatMap(({ repairs = [] }) => repairs),
  ),
})

const once = <Item extends { readonly id: string }>(kind: ListName, items: Item[]): Item[] => {
  const seen = new Set<string>()
  for (const { id } of items) {
    if (seen.has(id)) throw new Error(`${kind}: “${id}” comes from two fragments`)
    seen.add(id)
  }
  return items
}

const withAdditions = (checks: CheckInput[], { addsTo = {} }: BlueprintFragment): CheckInput[] =>
  Object.entries(addsTo).reduce((sofar, [checkId, under]) => {
    if (!sofar.some(({ id }) => id === checkId)) throw new Error(`addsTo names no check: “${checkId}”`)
    return sofar.map((check) => (check.id === checkId ? withUnder(check, under) : check))
  }, checks)

const withUnder = (check: CheckInput, under: Under): CheckInput => {
  if (check.kind === 'meter')
    throw new Error(`addsTo: “${check.id}” is a meter check, its readings follow from the circuit`)
  const twice = Object.keys(under).find((faultId) => faultId in check.under)
  if (twice !== undefined) throw new Error(`addsTo: “${check.id}” already says what “${twice}” shows`)
  return { ...check, under: { ...check.under, ...under } }
}
