import type { BlueprintFragment } from '../../compose.ts'
import { leadFaults, type LeadEntry } from './lead-faults.ts'
import { leadLooks } from './lead-looks.ts'

interface LeadOptions extends LeadEntry {
  readonly lengthM: number
  /** What a sound flex fetches. */
  readonly spareMinor: { readonly low: number; readonly high: number }
}

/**
 * Plug, fuse and a fixed two-core flex. The circuit it is put into has the elements `plug-line-terminal`, `plug-fuse`,
 * `plug-neutral-terminal`, `flex-line`, `flex-neutral` and the stray `flex-bridge`; the plug comes apart by the cover `plug-top`.
 */
export const lead = (options: LeadOptions): BlueprintFragment => ({
  parts: leadParts(options),
  faults: leadFaults(options),
  checks: leadLooks,
})

const leadParts = ({ entry, wear, lengthM, spareMinor }: LeadOptions): NonNullable<BlueprintFragment['parts']> => [
  { id: 'plug', name: 'Plug', does: 'Joins the flex to the socket', group: 'electrical' },
  { id: 'plug-fuse', name: 'Plug fuse', does: 'Guards the flex: 13 A', group: 'electrical', behind: 'plug-top' },
  { id: 'flex-plug-end', name: 'Flex at the plug', does: 'The 30 cm that bend most at the plug', group: 'electrical' },
  {
    id: 'flex',
    name: 'Flex',
    does: `Mains lead, ${lengthM} m, two cores, ends in ${entry}`,
    group: 'electrical',
    spareMinor,
  },
  {
    id: 'flex-entry',
    name: `Flex at ${entry}`,
    does: wear,
    group: 'electrical',
  },
]
