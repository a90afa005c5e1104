import { problem, type Problem } from '../base/problem.ts'
import { editDistance } from '../base/nearest.ts'

const shownAtMost = 8

/** Problem of an id that is not among those of the blueprint; names the nearest ones that are. */
export const unknownId = (what: string, where: string, id: string, known: readonly string[]): Problem =>
  problem(
    `unknown-${what}`,
    where,
    `“${id}” is not ${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what} here`,
    mendFor(id, known),
  )

const mendFor = (id: string, known: readonly string[]): string => {
  if (known.length === 0) return 'There is none to name'
  if (known.length === 1) return `It must be ${known[0]}`
  if (known.length <= shownAtMost) return `Use one of ${known.join(', ')}`
  return `Did you mean ${nearest(id, known).join(' or ')}`
}

/** The two known ids that fewest changed letters lead to. */
const nearest = (id: string, known: readonly string[]): readonly string[] =>
  known
    .map((one) => ({ one, away: editDistance(id, one) }))
    .sort((a, b) => a.away - b.away)
    .slice(0, 2)
    .map(({ one }) => one)
