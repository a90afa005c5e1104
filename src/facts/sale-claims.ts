import type { Source } from '../base/source.ts'
import type { Grade } from './asking.ts'

const trade = (clause: string): Source => ({
  title: 'What the words of a second-hand sale promise a buyer, UK street level 2024–26',
  clause,
  evidence: 'judgement',
})
const misleading: Source = {
  title: 'Directive 2005/29/EC on unfair commercial practices, kept in UK law of misleading actions',
  clause: 'article 6: false information about the main characteristics of a product',
  evidence: 'from memory',
}
const inService: Source = {
  title: 'IET Code of Practice for In-service Inspection and Testing of Electrical Equipment',
  edition: '5th',
  clause: 'a pass is of all the tests that apply, with their readings',
  evidence: 'from memory',
}
const filterGroups: Source = {
  title: 'EN 1822-1, ISO 29463-1: high efficiency filters are a tested class of filter, not a word',
  evidence: 'from memory',
}

/** What can bear out a claim. */
export type SupportId =
  | 'proof'
  | 'insulation'
  | 'tested'
  | 'works'
  | 'no-fault'
  | 'serviced'
  | 'cleaned'
  | 'strong-suction'
  | 'suction-figure'
  | 'no-smell'
  | 'quiet'
  | 'complete'
  | 'year'
  | 'looks'
  | 'little-used'
  | 'power'
  | 'voltage'
  | 'class-two'
  | 'earthed'
  | 'all-original'
  | 'noted-word'

/** A claim as sellers write it. */
export type SaleClaim = {
  readonly id: string
  readonly name: string
  /** Words that make the claim; a group catches the figure where there is one. */
  readonly pattern: RegExp
  readonly support: SupportId
  /** What would bear it out. */
  readonly needs: string
  /** For a word that must be noted: the word in a note. */
  readonly word?: RegExp
  readonly source: Source
}

const claim = (
  id: string,
  name: string,
  pattern: RegExp,
  support: SupportId,
  needs: string,
  more: { readonly word?: RegExp; readonly source?: Source } = {},
): SaleClaim => ({ id, name, pattern, support, needs, source: trade(name), ...more })

/** Claims as sellers write them, each with what bears it out. The order is that of the words looked for: the longer first. */
export const saleClaims: readonly SaleClaim[] = Object.freeze([
  claim(
    'safety-tested',
    'safety tested',
    /\b(?:safety[- ](?:tested|checked|certified)|electrically (?:tested|safe|sound)|safe electrically|pat[- ]?(?:tested|passed|pass|certificate|certified|test)|passed (?:its |the |all )?(?:safety|pat|electrical) (?:tests?|checks?))\b/i,
    'proof',
    'the checks after repair, made since it was last opened, all passed',
    { source: inService },
  ),
  claim(
    'safe',
    'safe',
    /\b(?:perfectly |completely |totally )?safe(?: to use| to run)?\b/i,
    'proof',
    'the checks after repair, all passed',
    { source: inService },
  ),
  claim(
    'insulation',
    'insulation proven',
    /\binsulation (?:is |was |has been )?(?:tested|proven|proved|good|sound|passed)\b/i,
    'insulation',
    'an insulation reading that passes, taken since it was last opened',
    { source: inService },
  ),
  claim(
    'working',
    'works',
    /\b(?:in )?(?:full(?:y)? |good |perfect(?:ly)? |excellent )?working(?: order| well| perfectly| fine)?\b|\bworks(?: well| fine| perfectly| as it should)?\b|\bruns (?:well|fine|perfectly|smoothly|like new)\b/i,
    'works',
    'a run that shows it working, since the last repair',
  ),
  claim(
    'tested',
    'tested',
    /\b(?:fully |bench[- ])?(?:tested|checked over)\b/i,
    'tested',
    'a check after repair or a run, since the last repair',
  ),
  claim(
    'no-fault',
    'nothing wrong with it',
    /\b(?:no (?:known )?(?:faults?|issues?|problems?)|fault[- ]free|nothing wrong(?: with it)?)\b/i,
    'no-fault',
    'a run that shows it working, with every fault that was found mended',
  ),
  claim(
    'serviced',
    'serviced',
    /\b(?:fully |recently |professionally )?(?:serviced|overhauled|refurbished|reconditioned)\b|\bfull service\b/i,
    'serviced',
    'a note of cleaning, and one of a repair or of parts tried',
  ),
  claim(
    'cleaned',
    'cleaned',
    /\b(?:deep[- ]|fully |thoroughly |professionally )?cleaned\b|\b(?:washed|spotless|sanitised|sanitized)\b/i,
    'cleaned',
    'notes of the tasks that make up a clean machine, or of a full clean',
  ),
  claim(
    'strong-suction',
    'strong suction',
    /\b(?:very )?(?:strong|powerful|great|excellent|full|superb|good|brilliant) suction\b|\bsuction (?:is )?(?:(?:very )?(?:strong|powerful|great|excellent|good)|(?:as|like) new)\b/i,
    'strong-suction',
    'a gauge reading with the hose sealed, since the last repair, near what its kind gives',
  ),
  claim(
    'suction-figure',
    'a figure of suction',
    /(\d+(?:[.,]\d+)?)\s*(kPa|mbar|hPa)\b/i,
    'suction-figure',
    'a gauge reading of that figure',
  ),
  claim(
    'no-smell',
    'no smell',
    /\b(?:no|without(?: any)?) (?:bad |burning |nasty |musty |dusty )?(?:smells?|odou?rs?)\b|\b(?:odou?r|smell)[- ]free\b|\bsmells (?:fresh|clean)\b/i,
    'no-smell',
    'a note that it was smelt at and found good, after the cleaning',
  ),
  claim(
    'quiet',
    'quiet',
    /\b(?:very |nice and )?quiet(?:ly)?\b|\bno (?:strange |odd )?noises?\b/i,
    'quiet',
    'a note that its sound was tried and is good',
  ),
  claim(
    'complete',
    'complete',
    /\b(?:is |100 ?% )?complete(?: with)?\b(?! clean| service)|\ball (?:the |its |original )?(?:tools|attachments|accessories|parts)\b|\bnothing(?: is)? missing\b|\bfull set of (?:tools|attachments)\b/i,
    'complete',
    'no part noted as missing or laid by, and a photograph of the tube and tools laid out',
  ),
  claim(
    'warranty',
    'a warranty or guarantee',
    /\b(?:\d+[- ](?:day|month|year)s?[- ])?(?:warranty|guaranteed?|money[- ]back|returns accepted)\b/i,
    'noted-word',
    'a note with its terms: a promise binds whoever makes it',
    { word: /warrant|guarantee|money[- ]back|returns/i, source: misleading },
  ),
  claim(
    'year',
    'a year it was made',
    /\b(?:made|built|manufactured|dates?|dating)(?: \w+)?(?: in| from)? ((?:19|20)\d\d)\b|\b((?:19|20)\d\d) (?:model|machine)\b/i,
    'year',
    'date marks on its parts, or an age that was noted',
  ),
  claim(
    'all-original',
    'all original',
    /\ball[- ]original(?! tools| accessories| attachments)\b|\buntouched\b|\bnever (?:been )?(?:opened|repaired)\b/i,
    'all-original',
    'no part changed and no cover opened',
  ),
  claim(
    'original',
    'original parts',
    /\b(?:genuine|original)(?: \w+)? ?(?:parts?|tools|filters?|bags?|belts?|hose|box|accessories|attachments|motor|manual)\b/i,
    'noted-word',
    'a note that says so of that part',
    { word: /genuine|original/i, source: misleading },
  ),
  claim('hepa', 'a HEPA filter', /\bhepa\b/i, 'noted-word', 'a note of what is printed on the filter', {
    word: /hepa/i,
    source: filterGroups,
  }),
  claim(
    'allergy',
    'fit for allergies',
    /\b(?:allergy|asthma|anti[- ]allergen)[- ]?(?:friendly|approved|safe|sufferers?)?\b/i,
    'noted-word',
    'a note of an approval that is printed on the machine',
    { word: /allerg|asthma/i, source: filterGroups },
  ),
  claim(
    'looks',
    'like new',
    /\b(?:like|as) new\b|\b(?:mint|immaculate|pristine|flawless)\b|\bno (?:marks|scratches|scuffs)\b/i,
    'looks',
    'grade A as it is offered, or every part that was graded A, the casing and another among them',
  ),
  claim(
    'little-used',
    'little used',
    /\b(?:hardly|barely|little|lightly|rarely) used\b|\b(?:light|low) use(?: only)?\b|\bone (?:careful )?owner\b/i,
    'little-used',
    'a note that it had light use',
  ),
  claim(
    'power',
    'its power',
    /(?<!(?:takes|took|draws|drew|taking|drawing|showed|at) )\b(\d{3,4}) ?(?:W|watts?)\b(?! (?:h|in|at|measured)\b)/,
    'power',
    'the power on its plate',
  ),
  claim(
    'voltage',
    'its voltage',
    /(?<!(?:at|mains|with) )\b(\d{3}) ?(?:V|volts?)\b(?! (?:test|mains)\b)/,
    'voltage',
    'the voltage on its plate',
  ),
  claim(
    'class-two',
    'double insulated',
    /\bclass (?:II|2)\b|\bdouble[- ]insulated\b/i,
    'class-two',
    'the sign of class II on its plate',
  ),
  claim('earthed', 'earthed', /\bearthed\b|\bclass (?:I|1)\b(?!I)/i, 'earthed', 'class I by its plate'),
])

/** From what share of the work of a clean machine it can be called clean as a whole. Judgement. */
export const cleanFrom = { share: 0.8, source: trade('cleaned: four fifths of the tasks by what a buyer sees of them') }
/** Words of a note that tell of a clean of the whole machine. Judgement. */
export const fullClean =
  /\b(?:full|deep|thorough|complete) clean\b|\b(?:fully|deep[- ]?|thoroughly|completely|all of it) ?cleaned\b|\bcleaned (?:throughout|inside and out|all over|all of it)\b|^cleaned\b(?=[,.;]|$)/i

/** From what share of the suction that its kind gives sealed a machine can be called strong. Judgement. */
export const strongSuctionFrom = {
  share: 0.8,
  source: trade('strong suction: at least four fifths of what its kind gives sealed'),
}
/** How far a figure in words may lie from a gauge reading. Judgement. */
export const figureWithin = {
  share: 0.05,
  source: trade('a figure of suction: within a twentieth of what the gauge showed'),
}
/** How far a year in words may lie from an age that somebody said. Judgement. */
export const yearsWithin = { years: 2, source: trade('a year from an age that was said: within two years') }

/** Words before a claim, in the same clause, that take it back. */
export const takenBack =
  /\b(?:not|no|never|nor|neither|without|isn.t|wasn.t|hasn.t|cannot|nothing|yet to be|needs?|needing|to be|before it (?:is|was)|nobody)\b[^.,;:!?\n]{0,28}$/i

/** What a grade says of the looks alone, for a buyer: a grade is no word on whether it works or is safe. */
export const gradeLooks: Readonly<Record<Grade, string>> = {
  A: 'nothing to be seen from a metre away',
  B: 'light marks',
  C: 'worn to look at',
  D: 'shabby or damaged',
}
