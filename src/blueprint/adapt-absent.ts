import { fatesOf, withFates } from './adapt-circuit.ts'
import { editsOf, type Edit } from './adapt-edits.ts'
import type { Blueprint, Check, Fault } from './schema.ts'
import { canReveal } from './sight.ts'

/**
 * The blueprint without the parts that are not there, and without all that hung on them: their elements, their faults, the
 * repairs of them and those left with nothing to mend, the checks that saw only them, controls that no longer switch
 * anything, their places in the air path. Parts sold with an absent one go with it.
 */
export const withoutParts = (blueprint: Blueprint, edits: readonly Edit[]): Blueprint => {
  const absent = withPartsWithin(blueprint, editsOf(edits, 'part-absent'))
  if (absent.length === 0) return blueprint
  const gone = new Set(absent.map(({ part }) => part))
  const rewired = withFates(blueprint, fatesOf(blueprint, absent))
  const faults = faultsLeft(rewired, gone)
  const listed: Blueprint = {
    ...rewired,
    parts: rewired.parts.filter(({ id }) => !gone.has(id)),
    airPath: rewired.airPath.filter((id) => !gone.has(id)),
    airWays: rewired.airWays
      .filter(({ from }) => !gone.has(from))
      .map((way) => ({ ...way, past: way.past.filter((id) => !gone.has(id)) })),
    controls: controlsLeft(blueprint, rewired),
    faults,
    repairs: repairsLeft(rewired, gone, faults),
  }
  return withoutLoosePoints(blueprint, { ...listed, checks: checksLeft(blueprint, listed, gone) })
}

type Absent = { readonly part: string; readonly elements?: Readonly<Record<string, 'bridged' | 'taken-away'>> }

const withPartsWithin = (blueprint: Blueprint, absent: readonly Absent[]) => {
  const all = new Map(absent.map((edit) => [edit.part, edit]))
  for (let before = -1; before !== all.size;) {
    before = all.size
    for (const { id, within } of blueprint.parts) {
      if (within !== undefined && all.has(within) && !all.has(id)) all.set(id, { part: id })
    }
  }
  return [...all.values()].map(({ part, elements }) => ({
    kind: 'part-absent' as const,
    part,
    ...(elements === undefined ? {} : { elements: { ...elements } }),
  }))
}

const faultsLeft = (blueprint: Blueprint, gone: ReadonlySet<string>): Fault[] => {
  const elements = new Set(blueprint.circuit.map(({ id }) => id))
  const left = blueprint.faults.filter(({ part }) => !gone.has(part))
  const names = new Set(left.map(({ id }) => id))
  return left.map(({ air, ...fault }) => ({
    ...fault,
    // What it did to the air it did at a part that is not there.
    ...(air === undefined || ('part' in air && gone.has(air.part)) ? {} : { air }),
    electrical: fault.electrical.filter(({ element }) => elements.has(element)),
    excludes: fault.excludes.filter((id) => names.has(id)),
  }))
}

/** A control that switched something and now switches nothing goes. */
const controlsLeft = (before: Blueprint, after: Blueprint): Blueprint['controls'] => {
  const switching = ({ circuit }: Blueprint): ReadonlySet<string> =>
    new Set(circuit.flatMap((element) => (element.kind === 'contact' ? [element.closedWhen.control] : [])))
  const [did, does] = [switching(before), switching(after)]
  return after.controls.filter(({ id }) => !did.has(id) || does.has(id))
}

/** A repair of a part that is not there cannot be done, unless it is the only one that mends a fault that can still be. */
const repairsLeft = (
  blueprint: Blueprint,
  gone: ReadonlySet<string>,
  faults: readonly Fault[],
): Blueprint['repairs'] => {
  const names = new Set(faults.map(({ id }) => id))
  const left = blueprint.repairs
    .map((repair) => ({ ...repair, removes: repair.removes.filter((id) => names.has(id)) }))
    .filter(({ removes }) => removes.length > 0)
  const mendedElsewhere = (fault: string): boolean =>
    left.some(({ part, removes }) => !gone.has(part) && removes.includes(fault))
  return left.flatMap((repair) => {
    if (!gone.has(repair.part)) return [repair]
    const only = repair.removes.filter((fault) => !mendedElsewhere(fault))
    const part = faults.find(({ id }) => id === only[0])?.part
    return part === undefined ? [] : [{ ...repair, removes: only, part }]
  })
}

const checksLeft = (before: Blueprint, after: Blueprint, gone: ReadonlySet<string>): Blueprint['checks'] => {
  const cleaned = after.checks.map((check) => cleanCheck(after, check))
  const isBlind = blindness(before, after)
  return cleaned.filter((check, at) => {
    const old = before.checks.find(({ id }) => id === check.id) ?? check
    if (!canBeMade(after, check)) return false
    if (movesNothingNow(old, check) && cleaned.some((other, i) => i !== at && samePlace(other, check))) return false
    return check.beforeRunning || (check.kind !== 'meter' && check.provesWorking) || !isBlind(old, check, gone)
  })
}

const cleanCheck = (blueprint: Blueprint, check: Check): Check => {
  const controls = Object.fromEntries(
    Object.entries(check.controls).filter(([control]) => blueprint.controls.some(({ id }) => id === control)),
  )
  if (check.kind === 'meter') {
    return {
      ...check,
      controls,
      unplug: check.unplug.filter((id) => blueprint.circuit.some((element) => element.id === id)),
      moving: check.moving.filter((id) => blueprint.parts.some((part) => part.id === id)),
    }
  }
  const under = Object.entries(check.under).filter(([fault]) => blueprint.faults.some(({ id }) => id === fault))
  return { ...check, controls, under: Object.fromEntries(under) }
}

/** Both probes on one point, or one where nothing is left, read nothing; and what must be driven must be there. */
const canBeMade = (blueprint: Blueprint, check: Check): boolean =>
  check.kind === 'meter'
    ? check.red !== check.black && [check.red, check.black].every((point) => isTouched(blueprint, point))
    : check.driven === undefined || blueprint.circuit.some(({ id }) => id === check.driven?.element)

const isTouched = ({ circuit }: Blueprint, point: string): boolean =>
  circuit.some(({ from, to }) => from === point || to === point)

const movesNothingNow = (before: Check, after: Check): boolean =>
  before.kind === 'meter' && after.kind === 'meter' && before.moving.length > 0 && after.moving.length === 0

const samePlace = (a: Check, b: Check): boolean =>
  a.kind === 'meter' &&
  b.kind === 'meter' &&
  JSON.stringify([a.red, a.black, a.controls, a.unplug]) === JSON.stringify([b.red, b.black, b.controls, b.unplug])

/** Whether a check that showed faults of the parts now gone shows none of the faults that are left. */
const blindness = (before: Blueprint, after: Blueprint) => (old: Check, check: Check, gone: ReadonlySet<string>) =>
  !after.faults.some((fault) => canReveal(after, check, fault)) &&
  before.faults.some((fault) => gone.has(fault.part) && canReveal(before, old, fault))

/** Points that only absent elements touched go, unless a check still puts a probe there. */
const withoutLoosePoints = (before: Blueprint, after: Blueprint): Blueprint => {
  const ends = ({ circuit }: Blueprint): ReadonlySet<string> => new Set(circuit.flatMap(({ from, to }) => [from, to]))
  const [were, are] = [ends(before), ends(after)]
  const probed = new Set(after.checks.flatMap((check) => (check.kind === 'meter' ? [check.red, check.black] : [])))
  const { earth, ...mains } = after.supply
  // A machine whose earth wiring is all gone has no earth pin either.
  const supply = earth === undefined || !are.has(earth) ? mains : { ...mains, earth }
  const pins = Object.values(supply)
  const stays = (id: string): boolean => !were.has(id) || are.has(id) || probed.has(id) || pins.includes(id)
  return { ...after, supply, points: after.points.filter(({ id }) => stays(id)) }
}
