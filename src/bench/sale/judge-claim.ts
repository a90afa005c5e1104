import { inSentence } from '../../base/in-sentence.ts'
import { takenBack, yearsWithin, type SaleClaim, type SupportId } from '../../facts/sale-claims.ts'
import { listText } from '../words.ts'
import type { Evidence } from './evidence.ts'
import { strongSuction, suctionFigure } from './judge-suction.ts'
import { no, noteOf, unsaid, yes, type Judged } from './judged.ts'
import { isFitting } from './whole-clean.ts'

type Judge = (evidence: Evidence, claim: SaleClaim, match: RegExpMatchArray) => Judged

/** Whether the notes bear a claim out. @param match where the claim's words were found in a text */
export const judgeClaim = (evidence: Evidence, claim: SaleClaim, match: RegExpMatchArray): Judged =>
  judges[claim.support](evidence, claim, match)

const proved: Judge = ({ proof, proofNotes }, { needs }) => {
  const { verdict, voided } = proof
  if (verdict.kind === 'fit') return yes('The checks after repair have all passed', proofNotes)
  if (verdict.kind === 'not-fit') return no(`The checks after repair say: ${inSentence(verdict.title)}`, proofNotes)
  if (voided !== null)
    return no(
      'Its proof is void: it was opened or repaired after the checks',
      voided.note === null ? [] : [voided.note],
    )
  return unsaid(`Nothing proves it. It takes ${needs}`)
}

const works: Judge = ({ run, state, wrong, repaired, seenSince, openFaults }, { needs }) => {
  const bad = wrong.filter(({ isMended }) => !isMended)
  if (state.left !== null && state.left.exit !== 'sell-working') return no('It left as one that does not work', [])
  if (run.kind === 'bad') return no('The last run shows that it does not', run.notes)
  if (bad.length > 0)
    return no(
      `Tried and not as it should be: ${listText(bad.map(({ name }) => inSentence(name)))}`,
      bad.map(({ note }) => note),
    )
  const seen = seenSince.filter(({ complaints }) => complaints.length > 0)
  if (seen.length > 0)
    return no(
      'A complaint was seen since the last work',
      seen.map(({ note }) => note),
    )
  if (run.kind === 'not-made')
    return unsaid(`No run shows it${repaired.length === 0 ? '' : ' since the last repair'}. It takes ${needs}`)
  if (openFaults.length > 0)
    return no(
      'A fault that was found is not mended',
      openFaults.map(({ note }) => note),
    )
  return yes('A run shows it', run.notes)
}

const tested: Judge = (evidence, claim, match) => {
  const { proof, proofNotes, run, gauge, tried } = evidence
  if (proof.verdict.kind === 'not-fit' || proof.voided !== null) {
    const byProof = proved(evidence, claim, match)
    if (byProof.verdict !== 'supported') return byProof
  }
  const notes = [
    ...proofNotes,
    ...run.notes,
    ...gauge.filter((one) => one.sinceRepair).map(({ note }) => note),
    ...tried.map(({ note }) => note),
  ]
  if (proof.verdict.kind === 'fit' || run.kind === 'good') return yes('What was tested stands in the notes', notes)
  if (run.kind === 'bad') return no('The last run went badly', run.notes)
  return unsaid(`No test since the last repair is noted. It takes ${claim.needs}`)
}

/** Notes whose own words make the claim, and do not take it back. */
const saying = (words: Evidence['words'], pattern: RegExp): readonly string[] =>
  words
    .filter(({ text }) => {
      const found = pattern.exec(text)
      return found !== null && !takenBack.test(text.slice(0, found.index))
    })
    .map(({ note }) => note)

const judges: Readonly<Record<SupportId, Judge>> = {
  proof: proved,
  insulation: ({ proof }, { needs }) => {
    const step = proof.steps.find(({ id }) => id === 'insulation')
    const notes = (step?.findings ?? []).flatMap(({ note }) => note ?? [])
    if (step?.state === 'passed') return yes('The insulation reading passes', notes)
    return step?.state === 'failed'
      ? no('The insulation reading failed', notes)
      : unsaid(`Not proven. It takes ${needs}`)
  },
  tested,
  works,
  'no-fault': (evidence, claim, match) => {
    const { openFaults } = evidence
    if (openFaults.length > 0) return no('A fault that was found is not mended', openFaults.map(noteOf))
    return works(evidence, claim, match)
  },
  serviced: ({ cleaned, repaired, tried, words }, { needs }) => {
    const cleaning = [
      ...cleaned.filter((one) => !isFitting(one)).map(noteOf),
      ...repaired.filter(({ option }) => option === 'clean').map(noteOf),
      ...saying(words, /\bcleaned\b/i),
    ]
    const work = [...repaired.map(noteOf), ...tried.map(noteOf)]
    return cleaning.length > 0 && work.length > 0
      ? yes('Cleaned, and repaired or tried', [...cleaning, ...work])
      : unsaid(`It takes ${needs}`)
  },
  cleaned: ({ clean, state, graded }, { needs }) => {
    if (clean.isWhole) return yes('The cleaning is noted', clean.notes)
    if (state.drying.length > 0) return unsaid('What was washed is not found dry yet')
    if (clean.notes.length > 0)
      return unsaid(`Some of it is noted as cleaned, not all: say what was, or note the rest. It takes ${needs}`)
    const before = graded.filter(({ when }) => when === 'before')
    return before.length > 0
      ? no('It was graded before a cleaning that is not noted', before.map(noteOf))
      : unsaid(`It takes ${needs}`)
  },
  'strong-suction': strongSuction,
  'suction-figure': suctionFigure,
  'no-smell': ({ seenSince, tried, words, state, cleaned }, { needs, pattern }) => {
    const seen = seenSince.filter(({ complaints }) => complaints.includes('smell'))
    if (seen.length > 0) return no('A smell was noted since the last work', seen.map(noteOf))
    const smelt = tried.filter((one) => /smell/i.test(`${one.function} ${one.name}`))
    const bad = smelt.filter(({ result }) => result === 'bad')
    if (bad.length > 0) return no('It was smelt at and was not good', bad.map(noteOf))
    const good = [...smelt.filter(({ result }) => result === 'good').map(noteOf), ...saidOutright(words, pattern)]
    if (good.length > 0) return yes('A note says so', good)
    if (state.claimed.complaints.includes('smell') && cleaned.length === 0)
      return no('It came in with a smell, and no cleaning is noted')
    return unsaid(`It takes ${needs}`)
  },
  quiet: ({ seenSince, tried, words, state, repaired }, { needs, pattern }) => {
    const seen = seenSince.filter(({ complaints }) => complaints.includes('noise'))
    if (seen.length > 0) return no('A noise was noted since the last work', seen.map(noteOf))
    if (state.claimed.complaints.includes('noise') && repaired.length === 0)
      return no('It came in with a noise, and no repair is noted')
    const good = tried.filter((one) => /sound|noise/i.test(`${one.function} ${one.name}`) && one.result === 'good')
    const said = [...good.map(noteOf), ...saidOutright(words, pattern)]
    return said.length > 0 ? yes('A note says so', said) : unsaid(`It takes ${needs}`)
  },
  complete: ({ state, tried, shots, blueprint }, { needs }) => {
    const gone = [...state.missing, ...state.out].map((id) =>
      inSentence(blueprint.parts.find((part) => part.id === id)?.name ?? id),
    )
    const notThere = tried.filter(({ result }) => result === 'not-there')
    const lacking = [...gone, ...notThere.map(({ name }) => inSentence(name))]
    if (lacking.length > 0) return no(`Not there: ${listText(lacking)}`, notThere.map(noteOf))
    const shown = shots.get('tools')
    return shown === undefined
      ? unsaid(`Nobody noted that all is there. It takes ${needs}`)
      : yes('No part is noted as missing, and the tools are on a photograph', [shown])
  },
  year: ({ years }, { needs }, match) => {
    const year = Number(match[1] ?? match[2])
    if (years === null) return unsaid(`Its age is not noted. It takes ${needs}`)
    const spare = years.bySaying ? yearsWithin.years : 0
    const span = years.from === years.to ? `${years.from}` : `${years.from} to ${years.to}`
    const fits = year >= years.from - spare && year <= years.to + spare
    return fits ? yes(`The notes say ${span}`, years.notes) : no(`The notes say ${span}`, years.notes)
  },
  looks: ({ looks, graded }, { needs }) => {
    const worse = graded.filter(({ grade }) => grade !== 'A')
    if (looks !== null && looks.grade !== 'A') return no(`It is offered as grade ${looks.grade}`, [looks.note])
    if (worse.length > 0) return no('A part is graded below A', worse.map(noteOf))
    if (looks !== null) return yes('It is offered as grade A', [looks.note])
    return graded.length > 1 && graded.some(({ part }) => part === 'casing')
      ? yes('Every part that was graded is graded A', graded.map(noteOf))
      : unsaid(`It takes ${needs}`)
  },
  'little-used': ({ state, addedNote, historyNotes }, { needs }) => {
    const notes = historyNotes.length > 0 ? historyNotes.slice(-1) : [addedNote]
    if (state.wear === 'light') return yes('Its use is noted as light', notes)
    return state.wear === null
      ? unsaid(`Its use is not noted. It takes ${needs}`)
      : no(`Its use is noted as ${state.wear}`, notes)
  },
  power: (evidence, _claim, match) => plateFigure(evidence, Number(match[1]), evidence.state.plate.powerW, 'W'),
  voltage: (evidence, _claim, match) => plateFigure(evidence, Number(match[1]), evidence.state.plate.voltageV, 'V'),
  'class-two': (evidence) => plateClass(evidence, 'II'),
  earthed: (evidence) => plateClass(evidence, 'I'),
  'all-original': ({ repaired, opened }, { needs }) => {
    if (repaired.length > 0) return no('It was repaired', repaired.map(noteOf))
    return opened.length > 0
      ? no('It was opened', opened)
      : unsaid(`What happened before it came in nobody knows; it takes ${needs}`)
  },
  'noted-word': ({ words }, { word, needs }) => {
    const said = word === undefined ? [] : saying(words, word)
    return said.length > 0 ? yes('A note says so', said) : unsaid(`No note says so. It takes ${needs}`)
  },
}

/** As {@link saying}, for claims that begin with a no of their own. */
function saidOutright(words: Evidence['words'], pattern: RegExp): readonly string[] {
  return words.filter(({ text }) => pattern.test(text)).map(noteOf)
}

/** Nobody notes that a plate was read; a plate that is its kind's may have been taken over as it was offered. */
const asEntered = ({ plate }: Evidence): string =>
  plate === 'own'
    ? 'As entered when it came in'
    : 'As entered when it came in, which is usual for its kind; no note says that its plate was read'

function plateFigure(evidence: Evidence, said: number, plate: number, unit: string): Judged {
  const notes = [evidence.addedNote]
  return said === plate ? yes(asEntered(evidence), notes) : no(`Entered when it came in: ${plate} ${unit}`, notes)
}

function plateClass(evidence: Evidence, said: string): Judged {
  const plate = evidence.state.plate.protectionClass
  return plate === said
    ? yes(`${asEntered(evidence)}: class ${plate}. That is no proof that its insulation is sound`, [evidence.addedNote])
    : no(`Entered when it came in: class ${plate}`, [evidence.addedNote])
}
