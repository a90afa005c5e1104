import { inSentence } from '../../base/in-sentence.ts'
import { notUsedWorn, switchRating } from '../../facts/spares.ts'
import { figureText } from './figure-text.ts'
import { flexFindings } from './flex-fit.ts'
import { partNeed, type Needed } from './need.ts'
import { partKindOf } from '../../blueprint/part-kind-of.ts'
import { fitOf, type FitFinding, type PartFit, type Spare, type SpareWanted } from './spare.ts'

/**
 * Whether a spare from the shelf fits as this part of the machine, by its specification; null where it is another kind of
 * thing. Two of the same may differ by the tolerance of their kind. Of a flex or a fuse it never says that it fits while
 * anything is unknown that the rules of leads ask for.
 */
export const partFit = (wanted: SpareWanted, part: string, spare: Spare): PartFit | null => {
  if (partKindOf(part) !== spare.partKind || isAnotherThing(wanted, part, spare)) return null
  const measured =
    spare.partKind === 'flex'
      ? flexFindings(wanted, part, spare)
      : partNeed(wanted, part).map((need) => needFinding(need, spare))
  return fitOf([...measured, ...conditionFindings(spare), ...beyondItsFields(wanted, part, spare)])
}

/** Kinds under which quite different things lie: told apart by what they came off as, or by what they are called. */
const mixedKinds: readonly Spare['partKind'][] = ['casing', 'tool', 'other', 'head', 'filter', 'hose']
const calledByName: readonly Spare['partKind'][] = ['casing', 'tool', 'other']

const isAnotherThing = ({ blueprint }: SpareWanted, part: string, spare: Spare): boolean => {
  const { wasPart, partKind, name, spec } = spare
  if (wasPart === part || !mixedKinds.includes(partKind)) return false
  // What it was is one of this machine's parts, and not this one.
  if (wasPart !== null && blueprint.parts.some(({ id }) => id === wasPart)) return true
  const called = plain(blueprint.parts.find(({ id }) => id === part)?.name ?? part)
  return calledByName.includes(partKind) && ![name, spec['type']].some((words) => plain(words).includes(called))
}

const plain = (words: string | number | undefined): string =>
  String(words ?? '')
    .toLowerCase()
    .replace(/[^a-z0-9/]+/g, ' ')
    .trim()

const needFinding = ({ field, value, isLeast }: Needed, { spec }: Spare): FitFinding => {
  const has = spec[field.id]
  if (value === null)
    return { unknown: has === undefined ? field.name : `${field.name}: this one has ${said(has, field.unit)}` }
  if (has === undefined)
    return { unknown: `${field.name}: ${said(value, field.unit)} ${isLeast ? 'at least ' : ''}wanted` }
  if (typeof value === 'string' || typeof has === 'string') {
    return sameWords(String(has), String(value))
      ? { agrees: field.name }
      : { reason: differs(field.name, has, value, '') }
  }
  if (isLeast) {
    return has >= value - 1e-9
      ? { agrees: field.name }
      : { reason: `${differs(field.name, has, value, field.unit)} at least (${switchRating.title})` }
  }
  const apart = Math.abs(has - value) / value
  return apart <= field.tolerance + 1e-9
    ? { agrees: field.name }
    : { reason: `${differs(field.name, has, value, field.unit)}${toleranceText(field.tolerance)}` }
}

const said = (value: number | string, unit: string): string =>
  typeof value === 'number' ? figureText(value, unit) : `“${value}”`

const differs = (name: string, has: number | string, value: number | string, unit: string): string =>
  `${name}: this one has ${said(has, unit)}, and ${said(value, unit)} ${typeof value === 'number' ? 'are' : 'is'} wanted`

const toleranceText = (tolerance: number): string =>
  tolerance === 0 ? '' : `, give or take ${figureText(tolerance * 100, '%')}`

/** A standard's name need not be written out: `BS 1363` is found in the name of the whole plug. */
const leastCode = 5
const sameWords = (has: string, wanted: string): boolean => {
  const [a, b] = [plain(has), plain(wanted)]
  const isCode = a.length >= leastCode && /\d/.test(a)
  return a === b || (isCode && ` ${b} `.includes(` ${a} `))
}

const conditionFindings = ({ condition, partKind }: Spare): readonly FitFinding[] => {
  if (condition === 'worn') {
    return [notUsedWorn.includes(partKind) ? { reason: 'It is noted as worn' } : { unknown: 'How far it is worn' }]
  }
  return partKind === 'fuse' && condition === 'untested' ? [{ unknown: 'Whether it conducts: measure it' }] : []
}

/** What must be known of some kinds that no field of theirs says. */
const beyondItsFields = (
  { blueprint, plate, region }: SpareWanted,
  part: string,
  { partKind }: Spare,
): readonly FitFinding[] => {
  if (partKind === 'reel') return [{ unknown: 'Conductor, cores and type of the flex on it' }]
  if (partKind === 'other') {
    const name = blueprint.parts.find(({ id }) => id === part)?.name ?? part
    return [{ unknown: `What the ${inSentence(name)} of this machine is made for` }]
  }
  if (partKind === 'plug' && plate.protectionClass === 'I' && (region === 'AU' || region === 'NZ'))
    return [{ unknown: 'Whether it has an earth pin' }]
  return []
}
