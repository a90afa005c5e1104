import type { Source } from '../base/source.ts'
import type { PartKind } from './part-kinds.ts'

/** Why a machine of class I takes a lead with a core for the earth. */
export const earthedLead: Source = {
  title: 'IEC 60335-1, accessible metal of an appliance of class I is connected to the protective conductor',
  clause: '27.1',
  evidence: 'from memory',
}

/** Why a switch is taken that carries at least what the machine draws, and opens as many poles. */
export const switchRating: Source = {
  title: 'IEC 61058-1, a switch is used within the current and the load it is rated for',
  evidence: 'from memory',
}

/** What stands on a fuse that goes into a plug. */
export const plugFuseStandard = 'BS 1362'

/** Kinds that stand between the mains and a person: one that is worn is not used again. Judgement. */
export const notUsedWorn: readonly PartKind[] = ['flex', 'fuse', 'plug', 'switch', 'reel']
