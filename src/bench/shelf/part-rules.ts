import { moneyText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { partKinds, type PartKind, type SpecField } from '../../facts/part-kinds.ts'
import { strikeProblems } from '../logs/strike-problems.ts'
import { unknownId } from '../unknown.ts'
import type { PartContent, PartSpec } from './part-note.ts'
import { foldPart, shareOfStock, type PartEntry, type PartState } from './part-state.ts'

/**
 * The rules at the door of the shelf: what stands against writing this next in the log of a part.
 * @param entries the part's log so far; empty for a part that is only put there
 */
export const partProblems = (entries: readonly PartEntry[], content: PartContent): readonly Problem[] => {
  if (entries.length === 0) return content.kind === 'put' ? putProblems(content) : [notPut]
  if (content.kind === 'put') return [putAlready]
  return nextProblems(foldPart(entries), entries, content)
}

const putProblems = ({ partKind, spec, origin, costMinor, currency }: Extract<PartContent, { kind: 'put' }>) => [
  ...specProblems(partKind, spec),
  ...(origin.kind === 'there' && costMinor > 0
    ? [
        problem(
          'cost-of-what-lay-there',
          'costMinor',
          `What lay there cost nothing, and ${moneyText(costMinor, currency)} are given`,
          'Say where it was bought, or leave the cost out',
        ),
      ]
    : []),
]

/** What of a specification does not belong to its kind, or is words where a measure should be. */
const specProblems = (partKind: PartKind, spec: PartSpec): readonly Problem[] => {
  const fields: readonly SpecField[] = partKinds[partKind].fields
  return Object.entries(spec).flatMap(([id, value]) => {
    const field = fields.find((one) => one.id === id)
    if (field === undefined)
      return [
        unknownId(
          'measure',
          `spec.${id}`,
          id,
          fields.map((one) => one.id),
        ),
      ]
    const isMeasure = typeof value === 'number'
    if (isMeasure === (field.tolerance > 0 || field.unit !== '' || field.id === 'cores' || field.id === 'poles'))
      return []
    return [
      problem(
        'not-a-measure',
        `spec.${id}`,
        isMeasure
          ? `${field.name} is said in words`
          : `${field.name} is a number${field.unit === '' ? '' : ` of ${field.unit}`}`,
        isMeasure ? 'Write it out' : 'Give the number alone',
      ),
    ]
  })
}

const nextProblems = (
  state: PartState,
  entries: readonly PartEntry[],
  content: Exclude<PartContent, { kind: 'put' }>,
): readonly Problem[] => {
  switch (content.kind) {
    case 'said':
      return []
    case 'described':
      return describedProblems(state, content)
    case 'reserved':
      if (state.count === 0) return [noneLeft]
      return state.reservedFor === null || state.reservedFor === content.machine ? [] : [reserved]
    case 'released':
      return state.reservedFor === null ? [notReserved] : []
    case 'used':
      return usedProblems(state, content)
    case 'sold':
    case 'scrapped':
      if (state.count === 0) return [noneLeft]
      if (content.count > state.count) return [tooMany(content.count, state.count)]
      return content.kind === 'sold' && state.reservedFor !== null ? [reserved] : []
    case 'counted':
      return content.count === state.count ? [countsAgree(state.count)] : []
    case 'struck':
      return struckProblems(entries, content.note)
  }
}

const describedProblems = (
  { partKind }: PartState,
  { kind: _, ...changes }: Extract<PartContent, { kind: 'described' }>,
): readonly Problem[] => {
  if (Object.values(changes).every((value) => value === undefined)) return [nothingGiven]
  return changes.spec === undefined ? [] : specProblems(partKind, changes.spec)
}

const usedProblems = (
  state: PartState,
  { machine, costMinor }: Extract<PartContent, { kind: 'used' }>,
): readonly Problem[] => {
  if (state.count === 0) return [noneLeft]
  if (state.reservedFor !== null && state.reservedFor !== machine) return [reserved]
  const share = shareOfStock(state.costMinor, state.count, 1)
  return costMinor === share ? [] : [otherShare(moneyText(share, state.currency), share)]
}

/** An entry can be struck out while the rest still makes a history. */
const struckProblems = (entries: readonly PartEntry[], id: string): readonly Problem[] => {
  const problems = strikeProblems(entries, id)
  const entry = entries.find((one) => one.id === id)
  if (problems.length > 0 || entry === undefined) return problems
  const later = entries.filter(({ seq, content }) => seq > entry.seq && movesStock(content))
  const standing = later.filter(
    (one) => !entries.some(({ content }) => content.kind === 'struck' && content.note === one.id),
  )
  return movesStock(entry.content) && standing.length > 0 ? [laterFirst] : []
}

/** Whether an entry changes how many there are and what they stand at; the shares of later ones rest on it. */
const movesStock = ({ kind }: PartContent): boolean =>
  kind === 'put' || kind === 'used' || kind === 'sold' || kind === 'scrapped' || kind === 'counted'

const notPut = problem('not-on-the-shelf', 'kind', 'This part is not on the shelf yet', 'Put it there first')
const putAlready = problem('put-already', 'kind', 'This part is on the shelf already', 'Put another one under a new id')
const noneLeft = problem('none-left', '', 'None of this part is left on the shelf', 'Look at the shelf for another one')
const reserved = problem(
  'reserved',
  '',
  'This part is kept for another machine',
  'Release it first, or take another one',
)
const notReserved = problem('not-reserved', '', 'This part is not kept for any machine', 'Nothing is left to do')
const nothingGiven = problem(
  'nothing-given',
  '',
  'Nothing is said to be changed',
  'Give a name, measures, condition, place or price',
)
const laterFirst = problem(
  'later-first',
  'note',
  'What came after it rests on this entry',
  'Strike out the later entries first, the last one before the others',
)
const tooMany = (count: number, there: number): Problem =>
  problem(
    'too-many',
    'count',
    `${count} are named and ${there} are there`,
    'Give how many of them went, or count them first',
  )
const countsAgree = (count: number): Problem =>
  problem('counts-agree', 'count', `${count} is what the shelf says already`, 'Nothing is left to do')
const otherShare = (text: string, share: number): Problem =>
  problem('other-share', 'costMinor', `One of them stands at ${text}`, `Give ${share}, or leave it to the program`)
