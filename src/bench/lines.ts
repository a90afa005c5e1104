import { moneyText, type Currency } from '../base/money.ts'
import { editText } from '../blueprint/adapt-words.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { conditionShares } from '../facts/buying.ts'
import { complaints, type Complaint } from '../facts/complaints.ts'
import { sellerQuestions } from '../facts/seller-questions.ts'
import { saleShots } from '../facts/sale-shots.ts'
import { gaugeText } from '../machine/air/air-text.ts'
import { findingText, rulesText } from '../machine/proof/proof-text.ts'
import { markText } from '../machine/stamps/marks.ts'
import type { NoteLine } from './contract.ts'
import { inOrder, struckIds } from './fold.ts'
import type { Note, NoteContent } from './note.ts'
import { inSentence } from '../base/in-sentence.ts'
import { heldText, workText } from './work-lines.ts'
import { exitText, minutesText, resultText } from './words.ts'

/** What a line needs to know beyond its own note. */
type Context = {
  readonly blueprint: Blueprint | null
  readonly others: readonly Blueprint[]
  readonly currency: Currency
  readonly textOf: (note: string) => string | undefined
}

/**
 * The history as it reads, in the order of the log; a note that was struck out stays in it, marked.
 * Names come from the blueprint, then from `others` that it was read by before; where none knows one, its id stands there.
 */
export const noteLines = (
  notes: readonly Note[],
  blueprint: Blueprint | null,
  others: readonly Blueprint[] = [],
): readonly NoteLine[] => {
  const ordered = inOrder(notes)
  const struck = struckIds(ordered)
  const byId = new Map(ordered.map((note) => [note.id, note]))
  const added = ordered.find((note) => note.content.kind === 'added')?.content
  const textOf = (id: string): string | undefined => {
    const note = byId.get(id)
    // A strike cannot strike a strike, so this goes one step deep.
    return note === undefined || note.content.kind === 'struck' ? undefined : contentText(note.content, context)
  }
  const context: Context = {
    blueprint: withNames(blueprint, others),
    others,
    currency: added?.kind === 'added' ? added.currency : 'GBP',
    textOf,
  }
  const gone = ordered.some((note) => note.content.kind === 'left' && !struck.has(note.id))
  return ordered.map((note) => ({
    id: note.id,
    seq: note.seq,
    at: note.at,
    kind: note.content.kind,
    text: contentText(note.content, context),
    ...(note.by === undefined ? {} : { by: note.by }),
    struck: struck.has(note.id),
    canStrike: !struck.has(note.id) && strikeable(note, gone),
  }))
}

/** Once a machine has left, only the note of its leaving can be struck out. */
const strikeable = ({ content }: Note, gone: boolean): boolean =>
  content.kind === 'left' || (!gone && content.kind !== 'added' && content.kind !== 'struck')

const contentText = (content: NoteContent, context: Context): string => {
  const { blueprint, currency } = context
  switch (content.kind) {
    case 'added':
      return addedText(content, blueprint)
    case 'seen':
      return withWords('Seen', [...content.complaints.map(complaintText), content.text])
    case 'reading': {
      const check = blueprint?.checks.find((one) => one.id === content.check)
      return `${check?.name ?? content.check}: ${resultText(content.result, check)}`
    }
    case 'gauge':
      return `Air, ${gaugeText(content.reading, blueprint)}`
    case 'rules':
      return rulesText(content.rules, content.lead)
    case 'proof':
      return `Check after repair, ${findingText(content.finding)}`
    case 'opened':
    case 'closed':
      return coverText(content, blueprint)
    case 'confirmed':
      return withWords('Confirmed', [inSentence(nameIn(blueprint?.faults, content.fault)), content.text])
    case 'repaired':
      return repairedText(content, context)
    case 'described-by':
      return describedText(content, context)
    case 'history':
      return withWords('Known of it', [
        content.ageYears === undefined ? '' : `about ${content.ageYears} years old`,
        content.wear === undefined ? '' : `${content.wear} use`,
        content.make === undefined ? '' : `make ${content.make}`,
      ])
    case 'valued':
      return valuedText(content, context)
    case 'listed': {
      const offered = `Offered at ${moneyText(content.priceMinor, currency)}, grade ${content.grade}`
      return withWords(offered, [content.where])
    }
    case 'stamp': {
      const part = inSentence(nameIn(blueprint?.parts, content.part))
      return withWords(`Date mark, ${part}: ${markText(content.reading)}`, [content.text], '. ')
    }
    case 'taken-out':
    case 'put-in':
    case 'cleaned':
    case 'dried':
    case 'graded':
    case 'tried':
    case 'worded':
    case 'camera':
      return workText(content, context)
    case 'took-off': {
      const part = inSentence(nameIn(blueprint?.parts, content.part))
      return `Taken off and put on the shelf: ${part}${effort(content.minutes, content.costMinor, currency)} of its cost`
    }
    case 'spent':
      return `Spent: ${content.text}${effort(content.minutes, content.costMinor, currency)}`
    case 'said':
      return content.text
    case 'photo':
      return photoText(content, context)
    case 'struck':
      return withWords(`Struck out: ${context.textOf(content.note) ?? content.note}`, [content.reason], ' – ')
    case 'left':
      return leftText(content, currency)
    case 'came-back': {
      const back = `Came back, ${moneyText(content.refundMinor, currency)} given back`
      return withWords(back, [content.text])
    }
  }
}

const coverText = (
  content: Extract<NoteContent, { kind: 'opened' | 'closed' }>,
  blueprint: Blueprint | null,
): string => {
  const head = content.kind === 'opened' ? 'Opened' : 'Closed'
  const name = inSentence(nameIn(blueprint?.covers, content.cover))
  const held = heldText(content)
  const said = `${head}: ${name}, ${minutesText(content.minutes)}${held === '' ? '' : `; ${held}`}`
  return withWords(said, [content.text ?? ''])
}

const nameIn = (all: readonly { id: string; name: string }[] | undefined, id: string): string =>
  all?.find((one) => one.id === id)?.name ?? id

const complaintText = (complaint: Complaint): string => inSentence(complaints[complaint])

const withWords = (head: string, words: readonly string[], join = ': '): string => {
  const said = words.filter((word) => word !== '').join('; ')
  return said === '' ? head : `${head}${join}${said}`
}

const addedText = (content: Extract<NoteContent, { kind: 'added' }>, blueprint: Blueprint | null): string => {
  const missing = content.missing.map((part) => inSentence(nameIn(blueprint?.parts, part)))
  const travel = content.travelMinor ?? 0
  return [
    `Came in: ${content.name}, paid ${moneyText(content.paidMinor, content.currency)}${
      travel === 0 ? '' : `, fetching it ${moneyText(travel, content.currency)}`
    }`,
    withWords('Seller says', [...content.complaints.map(complaintText), content.claim]),
    withWords('Answered before buying', (content.answers ?? []).flatMap(answerText)),
    content.condition === undefined || content.condition === 'good'
      ? ''
      : `Looks: ${conditionShares[content.condition].name}`,
    missing.length === 0 ? '' : `Missing: ${missing.join(', ')}`,
  ]
    .filter((part) => part !== '' && part !== 'Seller says' && part !== 'Answered before buying')
    .join('. ')
}

const answerText = ({ question, answer }: { readonly question: string; readonly answer: string }): readonly string[] =>
  sellerQuestions.flatMap(({ id, answers }) => (id === question ? (answers[answer] ?? []) : []))

const repairedText = (
  content: Extract<NoteContent, { kind: 'repaired' }>,
  { blueprint, currency }: Context,
): string => {
  const repair = blueprint?.repairs.find((one) => one.id === content.repair)
  const option = repair?.options.find((one) => one.id === content.option)
  const name = inSentence(repair?.name ?? content.repair)
  const shelf = content.shelfPart === undefined ? '' : ', from the shelf'
  const how =
    repair !== undefined && repair.options.length > 1 ? ` (${inSentence(option?.name ?? content.option)})` : ''
  const done = `Repaired: ${name}${how}${shelf}, ${minutesText(content.minutes)}, ${moneyText(content.costMinor, currency)}`
  return withWords(done, [content.text], ' – ')
}

const effort = (minutes: number, costMinor: number, currency: Currency): string =>
  `${minutes === 0 ? '' : `, ${minutesText(minutes)}`}, ${moneyText(costMinor, currency)}`

const leftText = (content: Extract<NoteContent, { kind: 'left' }>, currency: Currency): string => {
  const exit = exitText[content.exit]
  const head = `${exit.charAt(0).toUpperCase()}${exit.slice(1)}${effort(content.minutes, content.receivedMinor, currency)}${feesText(content, currency)}`
  const safety = content.safety === '' ? '' : `Safety: ${content.safety}`
  const barrier = content.barrier === undefined ? '' : `In the way of mending it: ${inSentence(content.barrier)}`
  return withWords(head, [safety, barrier], '. ')
}

const photoTimeText = { before: 'before', work: 'while working', after: 'after' } as const

const photoText = (content: Extract<NoteContent, { kind: 'photo' }>, { blueprint, textOf }: Context): string => {
  const { about, shot } = content
  const of = {
    machine: () => '',
    part: () => inSentence(nameIn(blueprint?.parts, about.kind === 'part' ? about.part : '')),
    fault: () => inSentence(nameIn(blueprint?.faults, about.kind === 'fault' ? about.fault : '')),
    note: () => inSentence(textOf(about.kind === 'note' ? about.note : '') ?? ''),
  }[about.kind]()
  const what = [shot === undefined ? '' : inSentence(saleShots[shot]), of, content.text]
  return withWords(`Photograph, ${photoTimeText[content.when]}`, what)
}

const feesText = (content: Extract<NoteContent, { kind: 'left' }>, currency: Currency): string => {
  const minor = (content.feeMinor ?? 0) + (content.postageMinor ?? 0)
  return minor === 0 ? '' : ` less ${moneyText(minor, currency)} of fees and postage`
}

/** What it is reckoned with from there on. */
const valuedText = (content: Extract<NoteContent, { kind: 'valued' }>, { blueprint, currency }: Context): string => {
  const named = (name: string, minor: number | undefined): readonly string[] =>
    minor === undefined ? [] : [`${name} ${moneyText(minor, currency)}`]
  return withWords('Reckoned with', [
    ...named('an hour of yours', content.hourMinor),
    ...named('sold working', content.workingMinor),
    ...named('sold for spares or repair', content.sparesMinor),
    ...content.parts.flatMap(({ part, priceMinor }) => named(inSentence(nameIn(blueprint?.parts, part)), priceMinor)),
    content.text,
  ])
}

/** What it is read by from there on, and in what that differs. */
const describedText = (
  { blueprint: id, edits }: Extract<NoteContent, { kind: 'described-by' }>,
  { blueprint, others }: Context,
): string => {
  const name = [...(blueprint === null ? [] : [blueprint]), ...others].find((one) => one.id === id)?.name ?? id
  return withWords(
    `This machine is different, read by “${name}”`,
    edits.map((edit) => editText(edit, blueprint)),
  )
}

/** The blueprint with the names that only the others know, to look names up in. */
const withNames = (blueprint: Blueprint | null, others: readonly Blueprint[]): Blueprint | null => {
  if (others.length === 0) return blueprint
  const all = blueprint === null ? others : [blueprint, ...others]
  const [first] = all
  if (first === undefined) return null
  return {
    ...first,
    parts: all.flatMap(({ parts }) => parts),
    covers: all.flatMap(({ covers }) => covers),
    faults: all.flatMap(({ faults }) => faults),
    checks: all.flatMap(({ checks }) => checks),
    repairs: all.flatMap(({ repairs }) => repairs),
    controls: all.flatMap(({ controls }) => controls),
    points: all.flatMap(({ points }) => points),
    airWays: all.flatMap(({ airWays }) => airWays),
  }
}
