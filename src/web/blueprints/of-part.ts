import { moneyText } from '../../base/money.ts'
import type { Blueprint, Fault, Repair } from '../../blueprint/schema.ts'
import type { Complaint } from '../../facts/complaints.ts'
import { coversToClose, coversToOpen } from '../machine/cover-steps.ts'

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

/** Repairs that remove a fault, in the blueprint's order. */
export const repairsThatRemove = ({ repairs }: Blueprint, fault: string): readonly Repair[] =>
  repairs.filter(({ removes }) => removes.includes(fault))

/** Minutes of a repair on a closed machine: its own, and those of taking its covers off and putting them back. */
export const wholeMinutes = (blueprint: Blueprint, repair: Repair, ownMin: number): number => {
  const opened = coversToOpen(blueprint, [], repair.coversOff)
  const closed = coversToClose(
    blueprint,
    opened.map(({ id }) => id),
  )
  return [...opened, ...closed].reduce((sum, { minutes }) => sum + minutes, ownMin)
}

/** Replacements of a part, new or salvaged: each option of the repairs that are its own, with what they ask for. */
export const replacementsOf = ({ repairs }: Blueprint, part: string): readonly Replacement[] =>
  repairs
    .filter((repair) => repair.part === part)
    .flatMap((repair) =>
      repair.options
        .filter(({ id }) => id === 'new' || id === 'salvaged')
        .map((option) => ({ repair, option, isNew: option.id === 'new' })),
    )

type Replacement = { readonly repair: Repair; readonly option: Repair['options'][number]; readonly isNew: boolean }

/** What something costs: `£1.20 to £3.00`, `costs nothing`. */
export const costText = ({ low, high }: { readonly low: number; readonly high: number }): string => {
  if (high === 0) return 'costs nothing'
  return low === high ? moneyText(low, 'GBP') : `${moneyText(low, 'GBP')} to ${moneyText(high, 'GBP')}`
}

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
