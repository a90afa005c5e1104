import type { Blueprint, Check, Fault, Repair } from '../../blueprint/schema.ts'
import type { Complaint } from '../../facts/complaints.ts'

type Part = Blueprint['parts'][number]

const groups = [
  { id: 'electrical', name: 'Electrical' },
  { id: 'air', name: 'Air' },
  { id: 'mechanical', name: 'Mechanical' },
  { id: 'control', name: 'Control' },
] as const

/** The parts under the names of their groups, in the blueprint's order; groups without a part are left out. */
export const groupedParts = ({
  parts,
}: Pick<Blueprint, 'parts'>): readonly { readonly name: string; readonly parts: readonly Part[] }[] =>
  groups
    .map(({ id, name }) => ({ name, parts: parts.filter(({ group }) => group === id) }))
    .filter((group) => group.parts.length > 0)

export const faultsOf = ({ faults }: Blueprint, part: string): readonly Fault[] =>
  faults.filter((fault) => fault.part === part)

/** Repairs of the part itself, and those elsewhere that remove one of its faults. */
export const repairsOf = (blueprint: Blueprint, part: string): readonly Repair[] => {
  const faults = faultsOf(blueprint, part).map(({ id }) => id)
  return blueprint.repairs.filter((repair) => repair.part === part || repair.removes.some((id) => faults.includes(id)))
}

/**
 * Checks that could show a fault, in the blueprint's order: graded ones that name it, and, when it changes the circuit,
 * meter checks with a probe on the faulty part or on what the fault changes, or that move the part. Checks from further
 * off can show it too; these are the near ones.
 */
export const checksShowing = (blueprint: Blueprint, fault: Fault): readonly Check[] => {
  const changed = fault.electrical.map(({ element }) => element)
  const ends = blueprint.circuit
    .filter(({ id, part, kind }) => changed.includes(id) || (part === fault.part && kind !== 'stray'))
    .flatMap(({ from, to }) => [from, to])
  return blueprint.checks.filter((check) => {
    if (check.kind !== 'meter') return fault.id in check.under
    const touches = ends.includes(check.red) || ends.includes(check.black) || check.moving.includes(fault.part)
    return changed.length > 0 && touches
  })
}

const kinds = [
  { kind: 'meter', name: 'Meter' },
  { kind: 'look', name: 'Look' },
  { kind: 'run', name: 'Run' },
  { kind: 'air', name: 'Air' },
] as const

/** Names of checks under what is done for them; kinds without a check are left out. */
export const checksByKind = (
  checks: readonly Check[],
): readonly { readonly name: string; readonly checks: readonly string[] }[] =>
  kinds
    .map(({ kind, name }) => ({
      name,
      checks: checks.filter((check) => check.kind === kind).map((check) => check.name),
    }))
    .filter((group) => group.checks.length > 0)

/** Complaints that a fault causes with how often each comes with it, the most usual first. */
export const complaintsOf = (
  fault: Fault,
): readonly { readonly complaint: Complaint; readonly probability: number }[] =>
  Object.entries(fault.complaints)
    .map(([complaint, probability]) => ({ complaint: complaint as Complaint, probability }))
    .filter(({ probability }) => probability > 0)
    .sort((a, b) => b.probability - a.probability)

/** A rate from 0 to 1 as cases in a hundred machines: `under 0.01`, `0.04`, `4.3`, `12`. */
export const perHundredText = (rate: number): string => {
  const cases = rate * 100
  if (cases === 0) return '0'
  if (cases < 0.01) return 'under 0.01'
  if (cases < 0.1) return cases.toFixed(2)
  return cases < 9.95 ? cases.toFixed(1) : cases.toFixed(0)
}

/** The middle and the 90 % interval of a rate: `About 4.3 in 100 machines bought as faulty, 90 % interval 1.2 to 9.0`. */
export const rateText = ({ rate, low, high }: { readonly rate: number; readonly low: number; readonly high: number }) =>
  `About ${perHundredText(rate)} in 100 machines bought as faulty, 90 % interval ${perHundredText(low)} to ${perHundredText(high)}`
