import { inSentence } from '../../base/in-sentence.ts'
import { gradeLooks } from '../../facts/sale-claims.ts'
import { complaints } from '../../facts/complaints.ts'
import { capital } from '../../machine/air/air-text.ts'
import { cleaningTaskDone } from '../cleaning/task-name.ts'
import { dayText, listText } from '../words.ts'
import type { Evidence } from './evidence.ts'
import { lackingWords, notThere } from './lacking-words.ts'
import { testedWords } from './tested-words.ts'
import { kindName, titleWords } from './title-words.ts'
import { isFitting } from './whole-clean.ts'
import { standingOf } from './standing-of.ts'
import type { SheetSection } from './worded-note.ts'

/** The sections as the notes say them, a line for each thing. Nothing stands in them that no note says. */
export const sectionWords = (evidence: Evidence, lastDay: string): Readonly<Record<SheetSection, string>> => ({
  title: titleWords(evidence),
  opening: lines(openingWords(evidence)),
  wrong: lines(wrongWords(evidence)),
  done: lines(doneWords(evidence)),
  tested: lines(testedWords(evidence)),
  worn: lines(wornWords(evidence)),
  'with-it': lines(withItWords(evidence)),
  closing: lines(closingWords(evidence, lastDay)),
})

const lines = (all: readonly string[]): string => all.filter((one) => one !== '').join('\n')

/** A sentence with its stop. */
const said = (text: string): string => (text === '' || /[.!?]$/.test(text) ? text : `${text}.`)

const partName = ({ blueprint }: Evidence, id: string): string =>
  inSentence(blueprint.parts.find((part) => part.id === id)?.name ?? id)

const openingWords = (evidence: Evidence): readonly string[] => {
  const { state, blueprint, years } = evidence
  const { voltageV, powerW, protectionClass } = state.plate
  return [
    `${kindName(blueprint)}. ${plateSays[evidence.plate]}: ${voltageV} V, ${powerW} W, class ${protectionClass}.`,
    years === null ? '' : yearsText(years),
    {
      working: '',
      spares: 'For spares or repair: it is not sold as one that can be used.',
      'not-shown':
        evidence.run.kind === 'good'
          ? 'It runs, and not all of it is as it should be: see what was wrong.'
          : 'It has not been shown to work.',
    }[standingOf(evidence)],
  ]
}

/** Nobody notes that a plate was read: what is entered is said to be entered. */
const plateSays: Readonly<Record<Evidence['plate'], string>> = {
  own: 'As entered when it came in',
  'as-its-kind': 'Usual for its kind, and so entered',
}

const yearsText = ({ from, to, bySaying }: NonNullable<Evidence['years']>): string => {
  if (bySaying) return `About the age of one made in ${from}, as far as anybody said.`
  return from === to
    ? `Made in ${from}, by the date marks on its parts.`
    : `By the date marks on its parts from ${from} to ${to}.`
}

const wrongWords = (evidence: Evidence): readonly string[] => {
  const { state, blueprint, openFaults, wrong } = evidence
  const unmended = wrong.filter(({ isMended }) => !isMended)
  const lacking = lackingWords(evidence)
  const nothingFound = unmended.length + lacking.length === 0 ? 'Nobody noted a cause.' : ''
  const faultName = (id: string): string => inSentence(blueprint.faults.find((fault) => fault.id === id)?.name ?? id)
  const claimed = state.claimed.complaints.map((one) => inSentence(complaints[one]))
  const seen = [...new Set(state.seen.flatMap((one) => one.complaints))].map((one) => inSentence(complaints[one]))
  const found = [...new Set(state.confirmed.map(({ fault }) => fault))].map(faultName)
  const open = [...new Set(openFaults.map(({ fault }) => fault))].map(faultName)
  return [
    claimed.length === 0 ? '' : `It came in with this said of it: ${listText(claimed)}.`,
    seen.length === 0 ? '' : `Seen here: ${listText(seen)}.`,
    found.length === 0 ? nothingFound : `Found: ${listText(found)}.`,
    open.length === 0 ? '' : `Not mended: ${listText(open)}.`,
    ...new Set(unmended.map(({ says, text }) => withText(says, text))),
    ...lacking,
  ]
}

/** `The bin is cracked.` with one's own words: `The bin is cracked: by the hinge.` */
const withText = (says: string, text: string): string =>
  text === '' ? says : said(`${says.replace(/\.$/, '')}: ${text}`)

const doneWords = ({ repaired, cleaned, blueprint }: Evidence): readonly string[] => {
  const partOf = (id: string): string => blueprint.parts.find((part) => part.id === id)?.name ?? id
  const repairs = repaired.map(({ repair, option, shelfPart, text }) => {
    const found = blueprint.repairs.find(({ id }) => id === repair)
    const how = found?.options.find(({ id }) => id === option)
    const from = shelfPart === undefined ? '' : ', with a part from stock'
    const own = text === '' ? '' : `: ${text}`
    if (found === undefined || how === undefined) return said(`${repair}${from}${own}`)
    // A repair that is called by a new part and done another way is told by that way.
    if (/^new /i.test(found.name) && how.id !== 'new')
      return said(`${partOf(found.part)}: ${inSentence(how.name)}${from}${own}`)
    const named = found.options.length < 2 ? '' : `, ${inSentence(how.name)}`
    return said(`${found.name}${named}${from}${own}`)
  })
  const named = (all: Evidence['cleaned']): string =>
    listText([...new Set(all.map(({ task }) => cleaningTaskDone(task)))])
  const fitted = named(cleaned.filter(isFitting))
  const tasks = named(cleaned.filter((one) => !isFitting(one)))
  return [
    ...(repairs.length === 0 ? ['No repair is noted.'] : repairs),
    tasks === '' ? '' : `${capital(tasks)}.`,
    fitted === '' ? '' : `Put in: ${fitted}.`,
  ]
}

const wornWords = (evidence: Evidence): readonly string[] => {
  const { graded, looks, state } = evidence
  const worn = graded.filter(({ grade, text }) => grade === 'C' || grade === 'D' || text !== '')
  const sound = graded.filter((one) => !worn.includes(one))
  return [
    looks === null ? '' : `Looks: grade ${looks.grade}, ${gradeLooks[looks.grade]}.`,
    ...worn.map(({ part, grade, text, when }) =>
      said(
        `${capital(partName(evidence, part))}${when === 'before' ? ', before any cleaning' : ''}: grade ${grade}, ${gradeLooks[grade]}${text === '' ? '' : `: ${text}`}`,
      ),
    ),
    sound.length === 0
      ? ''
      : `Graded: ${listText(sound.map(({ part, grade }) => `${partName(evidence, part)} (${grade})`))}.`,
    looks === null && graded.length === 0 ? 'Nobody noted how its parts look: go by the photographs.' : '',
    state.wear === null ? '' : `Its use before: ${state.wear}, as far as anybody said.`,
  ]
}

const withItWords = (evidence: Evidence): readonly string[] => {
  const { state, shots } = evidence
  const missing = state.missing.map((id) => partName(evidence, id))
  const out = state.out.map((id) => partName(evidence, id))
  const others = notThere(evidence)
  return [
    shots.has('tools')
      ? 'What comes with it is laid out on a photograph.'
      : 'What comes with it was not laid out and counted: ask.',
    missing.length + out.length + others.length + evidence.leftOver.length === 0 ? 'No part is noted as missing.' : '',
    missing.length === 0 ? '' : `Missing: ${listText(missing)}.`,
    out.length === 0 ? '' : `Taken out and not put back: ${listText(out)}.`,
    others.length === 0 ? '' : `Not there: ${listText(others)}.`,
  ]
}

const closingWords = (evidence: Evidence, lastDay: string): readonly string[] => {
  const { state, proof } = evidence
  const standing = standingOf(evidence)
  const isProved = proof.verdict.kind === 'fit'
  const reason = state.left?.exit === 'sell-working' && !isProved ? state.left.safety : ''
  return [
    standing === 'working' && isProved
      ? 'Its safety record comes with it: each check, by which rules, with its reading.'
      : '',
    reason === '' ? '' : said(`Sold with no record that proves its safety. The reason given: ${reason}`),
    standing === 'working' ? '' : 'Not to be plugged in before a competent person has been through it.',
    lastDay === '' ? '' : `This says what was noted up to ${dayText(lastDay)}.`,
    'Local rules decide what may be sold, and how.',
  ]
}
