import { casesPerHundred, catalogueRows, failureCatalogue, type Family } from '../facts/fault-catalogue.ts'
import type { BlueprintBase, BlueprintFragment, CheckInput, FragmentFault, RowRate, Under } from './fragment.ts'
import { reword } from './reword.ts'
import type { BlueprintInput } from './schema.ts'

type FaultInput = BlueprintInput['faults'][number]
type PartInput = BlueprintInput['parts'][number]

/**
 * The blueprint made of a base and fragments. Each list holds the fragments' items in the order given; every `addsTo` is
 * merged into the `under` table of the check it names; rates come from the catalogue's column for the base's family, spares
 * from the price of the working machine. Names of faults that this architecture goes without are dropped, and outcomes that
 * nothing shows with them. Throws (a mistake in the library, not in use) when an id of one kind comes twice, when a point has
 * no place, when a fault's rows do not occur in the family, or when a fault is already in the check's table.
 */
export const compose = (
  { family, places, wording = [], ...base }: BlueprintBase,
  ...fragments: readonly BlueprintFragment[]
): BlueprintInput => {
  const faults = withExclusions(list('faults', fragments).map((fault) => ({ ...fault, rate: rateOf(fault, family) })))
  const known = new Set(faults.map(({ id }) => id))
  const parts = new Set(list('parts', fragments).map(({ id }) => id))
  const elements = new Set(list('circuit', fragments).map(({ id }) => id))
  const controls = new Set(list('controls', fragments).map(({ id }) => id))
  const checks = fragments.reduce(withAdditions, [...list('checks', fragments)])
  const made: BlueprintInput = {
    ...base,
    points: list('points', fragments).map((point) => ({ ...point, at: placeOf(point.id, places) })),
    parts: list('parts', fragments).map((part) => pricedPart(part, base.worth.workingMinor)),
    controls: [...list('controls', fragments)],
    circuit: [...list('circuit', fragments)],
    covers: [...list('covers', fragments)],
    faults,
    checks: checks
      .map((check) => (check.kind === 'meter' ? ofKnownParts(check, parts, elements) : ofKnownFaults(check, known)))
      .filter((check) => !showsNothing(check))
      .map((check) => ({ ...check, controls: ofKnownControls(check, controls) })),
    repairs: list('repairs', fragments)
      .map((repair) => ({ ...repair, removes: repair.removes.filter((id) => known.has(id)) }))
      .filter(({ removes }) => removes.length > 0),
  }
  return reword(made, wording)
}

type Lists = Omit<Required<BlueprintFragment>, 'addsTo'>

const list = <Name extends keyof Lists>(name: Name, fragments: readonly BlueprintFragment[]): Lists[Name] => {
  const items = fragments.flatMap((fragment) => (fragment[name] ?? []) as readonly { readonly id: string }[])
  const twice = items.find(({ id }, i) => items.findIndex((other) => other.id === id) !== i)
  if (twice !== undefined) throw new Error(`${name}: “${twice.id}” comes from two fragments`)
  return items as unknown as Lists[Name]
}

const placeOf = (id: string, places: BlueprintBase['places']): [number, number] => {
  const place = places[id]
  if (place === undefined) throw new Error(`points: “${id}” has no place on the drawing`)
  return [place[0], place[1]]
}

/** Spares are priced to the nearest ten. */
const pricedPart = (
  { spareShare, ...part }: Lists['parts'][number],
  working: { readonly low: number; readonly high: number },
): PartInput => {
  if (spareShare === undefined) return part
  const price = (share: number): number => Math.round((share * (working.low + working.high)) / 20) * 10
  return { ...part, spareMinor: { low: price(spareShare.low), high: price(spareShare.high) } }
}

const rateOf = ({ id, rate }: FragmentFault, family: Family): FaultInput['rate'] => {
  if (!('rows' in rate)) return rate
  const perHundred = rate.rows.reduce(
    (sum, [row, share]) => sum + casesPerHundred(row, rate.ratedAs ?? family) * share,
    0,
  )
  if (perHundred === 0) throw new Error(`faults: the rows of “${id}” do not occur in the family “${family}”`)
  const source = { ...failureCatalogue, clause: rowsText(rate) }
  const rounded = Math.round(perHundred * 10) / 10
  return rate.component === undefined
    ? { perHundred: rounded, source }
    : { component: rate.component, perHundred: rounded, source }
}

const rowsText = ({ rows }: RowRate): string =>
  rows.map(([row, share]) => `row ${row}${share < 1 ? ', its part' : ''} (${catalogueRows[row].name})`).join('; ')

/** Exclusion is mutual, and says nothing of faults that are not there. */
const withExclusions = (faults: readonly FaultInput[]): FaultInput[] =>
  faults.map((fault) => {
    const named = fault.excludes ?? []
    const excludes = faults.filter(({ id, excludes: back }) => named.includes(id) || (back ?? []).includes(fault.id))
    return { ...fault, excludes: excludes.map(({ id }) => id) }
  })

/** A check that this architecture goes without takes no additions. */
const withAdditions = (checks: readonly CheckInput[], { addsTo = {} }: BlueprintFragment): CheckInput[] =>
  checks.map((check) => (check.id in addsTo ? withUnder(check, addsTo[check.id]) : check))

const withUnder = (check: CheckInput, under: Under): CheckInput => {
  if (check.kind === 'meter')
    throw new Error(`addsTo: “${check.id}” is a meter check, its readings follow from the circuit`)
  const twice = Object.keys(under).find((faultId) => faultId in check.under)
  if (twice !== undefined) throw new Error(`addsTo: “${check.id}” already says what “${twice}” shows`)
  return { ...check, under: { ...check.under, ...under } }
}

type Meter = Extract<CheckInput, { kind: 'meter' }>
type Graded = Exclude<CheckInput, { kind: 'meter' }>

const ofKnownParts = (check: Meter, parts: ReadonlySet<string>, elements: ReadonlySet<string>): Meter => ({
  ...check,
  moving: (check.moving ?? []).filter((id) => parts.has(id)),
  unplug: (check.unplug ?? []).filter((id) => elements.has(id)),
})

/** A look or an air check at what this architecture goes without. Running tells at least whether it runs. */
const showsNothing = (check: CheckInput): boolean =>
  (check.kind === 'look' || check.kind === 'air') && Object.keys(check.under).length === 0

const ofKnownControls = ({ controls = {} }: CheckInput, known: ReadonlySet<string>): Record<string, string> =>
  Object.fromEntries(Object.entries(controls).filter(([id]) => known.has(id)))

const ofKnownFaults = (check: Graded, known: ReadonlySet<string>): Graded => {
  const under = Object.fromEntries(Object.entries(check.under).filter(([id]) => known.has(id)))
  const shown = new Set([
    ...[check.sound, ...Object.values(under)].flatMap((table) =>
      Object.entries(table).flatMap(([outcome, p]) => ((p ?? 0) > 0 ? [outcome] : [])),
    ),
    ...[check.driven?.otherwise, check.whenTrips].filter((id) => id !== undefined),
  ])
  return { ...check, under, outcomes: check.outcomes.filter(({ id }) => shown.has(id)) }
}
