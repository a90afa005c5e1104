import { complaintIds, complaints, type Complaint } from '../../facts/complaints.ts'
import type { Advert } from './advert.ts'
import type { Understood } from './buying-view.ts'
import { readSellerWords } from './seller-words.ts'

/** What was said, with complaints that no fault of the blueprint would cause left out. */
export const understanding = (
  advert: Advert,
  faults: readonly { readonly complaints: Partial<Readonly<Record<Complaint, number>>> }[],
): Understood => {
  const read = readSellerWords(advert.words)
  const fits = (id: Complaint): boolean => faults.some((fault) => (fault.complaints[id] ?? 0) > 0)
  const fitting = read.complaints.filter(fits)
  const made = advert.complaints ?? fitting
  const claims = advert.claims ?? read.claims
  const doesNotFit = advert.complaints === undefined ? read.complaints.filter((id) => !fits(id)) : []
  const remark = remarkOn(made, claims, doesNotFit)
  return { phrases: read.phrases, complaints: made, claims, doesNotFit, remark }
}

const remarkOn = (
  made: readonly Complaint[],
  claims: readonly string[],
  doesNotFit: readonly Complaint[],
): string | null => {
  if (doesNotFit.length > 0) {
    const names = complaintIds.filter((id) => doesNotFit.includes(id)).map((id) => complaints[id])
    return `Nothing in this blueprint would cause “${names.join('”, “')}”; left out.`
  }
  return made.length + claims.length === 0
    ? 'No complaint was understood: reckoned as a machine sold as faulty, its fault unsaid.'
    : null
}
