import type { Blueprint } from '../../blueprint/schema.ts'
import { complaints, type Complaint } from '../../facts/complaints.ts'
import type { SuspectView } from '../../machine/view.ts'

/** A complaint that a suspect does not cause, and the likeliest suspect that does; null where none of them would. */
export type NotExplained = { readonly complaint: string; readonly first: SuspectView | null }

/**
 * The first complaint that a suspect does not account for by the blueprint; null where it accounts for all of them, or where there is
 * none. Such a complaint still counts: another fault is there beside it, or the seller was wrong.
 * @param suspects the likeliest first
 */
export const notExplained = (
  suspect: Pick<SuspectView, 'faults'>,
  made: readonly Complaint[],
  suspects: readonly SuspectView[],
  blueprint: Pick<Blueprint, 'faults'>,
): NotExplained | null => {
  const causes = (ids: readonly string[], complaint: Complaint): boolean =>
    blueprint.faults.some((fault) => ids.includes(fault.id) && (fault.complaints[complaint] ?? 0) > 0)
  const open = suspect.faults.length === 0 ? undefined : made.find((one) => !causes(suspect.faults, one))
  if (open === undefined) return null
  return {
    complaint: complaints[open].replace(/:.*$/, '').toLowerCase(),
    first: suspects.find(({ faults }) => causes(faults, open)) ?? null,
  }
}
