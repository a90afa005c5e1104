import type { BeliefEvent } from '../../engines/belief/index.ts'
import type { Fault } from '../../blueprint/schema.ts'
import { complaintIds } from '../../facts/complaints.ts'
import { cleansUp, noticedFrom, sellerClaims, type ClaimAbout, type ClaimId } from '../../facts/seller-claims.ts'
import type { MachineModel } from '../model.ts'

/**
 * A claim as evidence on a belief: what it is about gets the share of machines of which that is true when a seller says so, and
 * the suspects on either side keep their proportions (Jeffrey's rule, The Logic of Decision, 1965, from memory). A claim that
 * something is wrong only ever raises it. Null where it says nothing of this blueprint.
 */
export const claimEvent = (model: MachineModel, belief: ArrayLike<number>, claim: ClaimId): BeliefEvent | null => {
  const { about, share } = sellerClaims[claim]
  const isTrue = model.sets.map((set) => holds(about, set.map((f) => model.blueprint.faults[f]))) // prettier-ignore
  const now = isTrue.reduce((sum, yes, s) => sum + (yes ? belief[s] : 0), 0)
  if (now <= 0 || now >= 1 || (about.kind === 'components' && now >= share)) return null
  const [yes, no] = [share / now, (1 - share) / (1 - now)]
  const most = Math.max(yes, no)
  const likelihood = isTrue.map((is) => (is ? yes : no) / most)
  return { kind: 'reading', id: `claim ${claim}`, likelihood, slip: 0, slipLikelihood: 1 }
}

const holds = (about: ClaimAbout, faults: readonly Fault[]): boolean => {
  switch (about.kind) {
    case 'works':
      return faults.every((fault) => !isNoticed(fault))
    case 'works-or-cleans-up':
      return faults.every((fault) => !isNoticed(fault) || cleansUp.includes(componentOf(fault)))
    case 'components':
      return faults.some((fault) => about.components.includes(componentOf(fault)))
  }
}

const componentOf = ({ rate }: Fault): string => rate.component?.id ?? ''

const isNoticed = ({ complaints }: Fault): boolean => complaintIds.some((id) => (complaints[id] ?? 0) >= noticedFrom)
