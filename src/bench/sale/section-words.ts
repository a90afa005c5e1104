import { inSentence } from '../../base/in-sentence.ts'
import { gradeLooks } from '../../facts/sale-claims.ts'
import { complaints } from '../../facts/complaints.ts'
import { capital } from '../../machine/air/air-text.ts'
import { cleaningTaskName } from '../cleaning/task-name.ts'
import { dayText, listText } from '../words.ts'
import { isFitting, type Evidence } from './evidence.ts'
import { testedWords } from './tested-words.ts'
import type { SheetSection } from './worded-note.ts'

/** How a machine can be offered by what its notes show. */
export type Standing = 'working' | 'spares' | 'not-shown'

/** Working: a run since the last repair shows it, and nothing found is left unmended. For spares: it left so. Else it is not shown to work. */
export const standingOf = ({ state, run, openFaults, tried, proof }: Evidence): Standing => {
  if (state.left !== null && state.left.exit !== 'sell-working') return 'spares'
  const isSound = run.kind === 'good' && openFaults.length === 0 && proof.verdict.kind !== 'not-fit'
  return isSound && tried.every(({ result }) => result !== 'bad') ? 'working' : 'not-shown'
}

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

const titleWords = (evidence: Evidence): string => {
  const { state, blueprint, repaired, cleaned, proof } = evidence
  const standing = standingOf(evidence)
  const worked = [repaired.length === 0 ? '' : 'repaired', cleaned.every(isFitting) ? '' : 'cleaned']
  const how = {
    working: ['working', ...worked, proof.verdict.kind === 'fit' ? 'safety checks passed' : ''],
    spares: ['for spares or repair'],
    'not-shown': [...worked, 'not shown to work'],
  }[standing].filter((one) => one !== '')
  return `${state.model === '' ? state.name : state.model}: ${inSentence(blueprint.name)}, ${how.join(', ')}`
}

const openingWords = (evidence: Evidence): readonly string[] => {
  const { state, blueprint, years } = evidence
  const { voltageV, powerW, protectionClass } = state.plate
  return [
    `${blueprint.name}. By its plate ${voltageV} V, ${powerW} W, class ${protectionClass}.`,
    years === null ? '' : yearsText(years),
    {
      working: '',
      spares: 'For spares or repair: it is not sold as one that can be used.',
      'not-shown': 'It has not been shown to work.',
    }[standingOf(evidence)],
  ]
}

const yearsText = ({ from, to, bySaying }: NonNullable<Evidence['years']>): string => {
  if (bySaying) return `About the age of one made in ${from}, as far as anybody said.`
  return from === to
    ? `Made in ${from}, by the date marks on its parts.`
    : `By the date marks on its parts from ${from} to ${to}.`
}

const wrongWords = (evidence: Evidence): readonly string[] => {
  const { state, blueprint, openFaults } = evidence
  const faultName = (id: string): string => inSentence(blueprint.faults.find((fault) => fault.id === id)?.name ?? id)
  const claimed = state.claimed.complaints.map((one) => inSentence(complaints[one]))
  const seen = [...new Set(state.seen.flatMap((one) => one.complaints))].map((one) => inSentence(complaints[one]))
  const found = [...new Set(state.confirmed.map(({ fault }) => fault))].map(faultName)
  const open = [...new Set(openFaults.map(({ fault }) => fault))].map(faultName)
  return [
    claimed.length === 0 ? '' : `It came in with this said of it: ${listText(claimed)}.`,
    seen.length === 0 ? '' : `Seen here: ${listText(seen)}.`,
    found.length === 0 ? 'Nobody noted a cause.' : `Found: ${listText(found)}.`,
    open.length === 0 ? '' : `Not mended: ${listText(open)}.`,
  ]
}

const doneWords = ({ repaired, cleaned, blueprint }: Evidence): readonly string[] => {
  const repairs = repaired.map(({ repair, option, shelfPart, text }) => {
    const found = blueprint.repairs.find(({ id }) => id === repair)
    const how = found?.options.find(({ id }) => id === option)
    const from = shelfPart === undefined ? '' : ', with a part from stock'
    const named = how === undefined || (found?.options.length ?? 0) < 2 ? '' : `, ${inSentence(how.name)}`
    return said(`${found?.name ?? repair}${named}${from}${text === '' ? '' : `: ${text}`}`)
  })
  const named = (all: Evidence['cleaned']): string =>
    listText([...new Set(all.map(({ task }) => inSentence(cleaningTaskName(task))))])
  const fitted = named(cleaned.filter(isFitting))
  const tasks = named(cleaned.filter((one) => !isFitting(one)))
  return [
    ...(repairs.length === 0 ? ['No repair is noted.'] : repairs),
    tasks === '' ? '' : `Cleaned: ${tasks}.`,
    fitted === '' ? '' : `Put in: ${fitted}.`,
  ]
}

const wornWords = (evidence: Evidence): readonly string[] => {
  const { graded, tried, looks, state } = evidence
  const worn = graded.filter(({ grade, text }) => grade === 'C' || grade === 'D' || text !== '')
  const bad = tried.filter(({ result }) => result === 'bad')
  return [
    looks === null ? '' : `Looks: grade ${looks.grade}, ${gradeLooks[looks.grade]}.`,
    ...worn.map(({ part, grade, text, when }) =>
      said(
        `${capital(partName(evidence, part))}${when === 'before' ? ', before any cleaning' : ''}: grade ${grade}, ${gradeLooks[grade]}${text === '' ? '' : `: ${text}`}`,
      ),
    ),
    ...bad.map(({ name, text }) => said(`${name}: not as it should be${text === '' ? '' : `: ${text}`}`)),
    looks === null && worn.length + bad.length === 0 ? 'Nobody noted how its parts look: go by the photographs.' : '',
    state.wear === null ? '' : `Its use before: ${state.wear}, as far as anybody said.`,
  ]
}

const withItWords = (evidence: Evidence): readonly string[] => {
  const { state, tried, shots } = evidence
  const missing = state.missing.map((id) => partName(evidence, id))
  const out = state.out.map((id) => partName(evidence, id))
  const notThere = tried.filter(({ result }) => result === 'not-there').map(({ name }) => inSentence(name))
  return [
    shots.has('tools')
      ? 'What comes with it is laid out on a photograph.'
      : 'What comes with it was not laid out and counted: ask.',
    missing.length === 0 ? 'No part is noted as missing.' : `Missing: ${listText(missing)}.`,
    out.length === 0 ? '' : `Taken out and not put back: ${listText(out)}.`,
    notThere.length === 0 ? '' : `Not there: ${listText(notThere)}.`,
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
