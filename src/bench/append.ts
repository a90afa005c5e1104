import { moneyText } from '../base/money.ts'
import { inSentence } from '../base/in-sentence.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { answerProblems } from '../machine/buying/index.ts'
import type { Job } from '../machine/job.ts'
import type { MachineState } from './contract.ts'
import { machineLines } from './books/lines-of.ts'
import { closingProblems, openingProblems, workCoveredProblems } from './cover-rules.ts'
import { exitProblems } from './exit-rules.ts'
import { costLeft, foldNotes } from './fold.ts'
import { gaugeProblems } from './gauge-rules.ts'
import { jobOf } from './job.ts'
import type { Note, NoteContent } from './note.ts'
import { cleaningProblems } from './cleaning/clean-rules.ts'
import { triedProblems } from './functions/tried-rules.ts'
import { photoProblems } from './photos/photo-rules.ts'
import { findingProblems, rulesProblems } from './proof-rules.ts'
import { readingProblems } from './reading-rules.ts'
import { stripProblems } from './stripping/strip-rules.ts'
import { unknownId } from './unknown.ts'
import { dayText, exitText } from './words.ts'

/**
 * The rules at the door: whether this can be written next in the log of a machine.
 * @param notes the machine's log so far; empty for a machine that is only coming in
 * @param blueprint the machine's blueprint
 * @returns the content, or what is wrong with it; what was entered stays with the caller
 */
export const checkNote = (notes: readonly Note[], content: NoteContent, blueprint: Blueprint): Result<NoteContent> => {
  const problems = notes.length === 0 ? firstProblems(content, blueprint) : nextProblems(notes, content, blueprint)
  return problems.length === 0 ? ok(content) : refused(...problems)
}

const firstProblems = (content: NoteContent, blueprint: Blueprint): readonly Problem[] => {
  if (content.kind !== 'added') {
    return [problem('first-note', 'kind', 'The first note of a machine says that it came in', 'Add the machine first')]
  }
  if (content.blueprint !== blueprint.id) {
    return [unknownId('blueprint', 'blueprint', content.blueprint, [blueprint.id])]
  }
  const parts = blueprint.parts.map((part) => part.id)
  const missing = content.missing.flatMap((part, index) =>
    parts.includes(part) ? [] : [unknownId('part', `missing[${index}]`, part, parts)],
  )
  return [...missing, ...answerProblems({ answers: content.answers ?? [] })]
}

const nextProblems = (notes: readonly Note[], content: NoteContent, blueprint: Blueprint): readonly Problem[] => {
  const state = foldNotes(notes)
  if (content.kind === 'added') {
    return [problem('already-added', 'kind', 'This machine came in already', 'Add another machine for another one')]
  }
  if (content.kind === 'came-back') return cameBackProblems(content, state)
  if (state.left !== null && !strikesTheLeaving(notes, content)) return [hasLeft(state.left)]
  return contentProblems(content, notes, jobOf(state, notes, blueprint))
}

const strikesTheLeaving = (notes: readonly Note[], content: NoteContent): boolean =>
  content.kind === 'struck' && notes.find((note) => note.id === content.note)?.content.kind === 'left'

const hasLeft = (left: NonNullable<MachineState['left']>): Problem =>
  problem(
    'has-left',
    '',
    `This machine was ${exitText[left.exit]} on ${dayText(left.at)}`,
    'If that was a slip, strike out the note of it first',
  )

const contentProblems = (
  content: Exclude<NoteContent, { kind: 'added' | 'came-back' }>,
  notes: readonly Note[],
  job: Job,
): readonly Problem[] => {
  const { blueprint } = job
  switch (content.kind) {
    case 'seen':
    case 'spent':
    case 'said':
    case 'listed':
    case 'camera':
    case 'worded':
      return []
    case 'taken-out':
    case 'put-in':
      return stripProblems(content, job, foldNotes(notes))
    case 'cleaned':
    case 'dried':
    case 'graded':
      return cleaningProblems(content, notes, blueprint)
    case 'tried':
      return triedProblems(content, job)
    case 'photo':
      return photoProblems(content, notes, blueprint)
    case 'described-by':
      return describedProblems(content.blueprint, job, notes)
    case 'reading':
      return readingProblems(content, job)
    case 'gauge':
      return gaugeProblems(content.reading, job)
    case 'rules':
      return rulesProblems(content, job)
    case 'proof':
      return findingProblems(content.finding, job)
    case 'opened':
      return openingProblems(content.cover, blueprint, job.off)
    case 'closed':
      return closingProblems(content.cover, blueprint, job.off)
    case 'confirmed': {
      const faults = blueprint.faults.map((fault) => fault.id)
      return faults.includes(content.fault) ? [] : [unknownId('fault', 'fault', content.fault, faults)]
    }
    case 'repaired':
      return repairProblems(content, job)
    case 'took-off':
      return tookOffProblems(content, job, foldNotes(notes))
    case 'history':
      return (content.ageYears ?? content.wear ?? content.make) === undefined ? [nothingKnown] : []
    case 'valued':
      return valuedProblems(content, blueprint)
    case 'stamp': {
      const parts = blueprint.parts.map((part) => part.id)
      return parts.includes(content.part) ? [] : [unknownId('part', 'part', content.part, parts)]
    }
    case 'struck':
      return strikeProblems(content, notes)
    case 'left':
      return exitProblems(content, job)
  }
}

/** Only what was sold can come back, and no more is given back than was received for it. */
const cameBackProblems = (
  { refundMinor }: Extract<NoteContent, { kind: 'came-back' }>,
  { left, receivedMinor, currency }: MachineState,
): readonly Problem[] => {
  if (left === null || (left.exit !== 'sell-working' && left.exit !== 'sell-for-spares')) return [notSold]
  if (refundMinor <= receivedMinor) return []
  const what = `More is given back than the ${moneyText(receivedMinor, currency)} that were received for it`
  return [
    problem('refund-too-high', 'refundMinor', what, 'Give what the buyer got; enter postage and the like as spent'),
  ]
}

const notSold = problem(
  'not-sold',
  'kind',
  'This machine was not sold, so it cannot come back',
  'Enter its sale first, or strike out the note of its leaving',
)

const tookOffProblems = (
  { part, costMinor }: Extract<NoteContent, { kind: 'took-off' }>,
  { blueprint }: Job,
  state: MachineState,
): readonly Problem[] => {
  const parts = blueprint.parts.map(({ id }) => id)
  if (!parts.includes(part)) return [unknownId('part', 'part', part, parts)]
  if (state.missing.includes(part)) {
    return [problem('part-not-there', 'part', 'That part is not on the machine', 'Choose one that is')]
  }
  const costs = costLeft(state)
  if (costMinor <= costs) return []
  const what = `The part takes more with it than the ${moneyText(costs, state.currency)} that the machine still stands at`
  return [problem('share-too-high', 'costMinor', what, 'Give a smaller share of its cost')]
}

const valuedProblems = (
  { hourMinor, workingMinor, sparesMinor, parts }: Extract<NoteContent, { kind: 'valued' }>,
  blueprint: Blueprint,
): readonly Problem[] => {
  const given = [hourMinor, workingMinor, sparesMinor].filter((minor) => minor !== undefined)
  if (given.length + parts.length === 0) return [nothingValued]
  const known = blueprint.parts.map((part) => part.id)
  return parts.flatMap(({ part }, index) => {
    if (!known.includes(part)) return [unknownId('part', `parts[${index}].part`, part, known)]
    return parts.findIndex((one) => one.part === part) === index ? [] : [namedTwice(part, index)]
  })
}

const nothingValued = problem(
  'nothing-valued',
  '',
  'Neither a price nor the worth of an hour is given',
  'Give at least one of them',
)

const namedTwice = (part: string, index: number): Problem =>
  problem('named-twice', `parts[${index}].part`, `“${part}” is given two prices`, 'Give it one')

const nothingKnown = problem(
  'nothing-known',
  '',
  'Neither an age nor a use nor a make is given',
  'Give the years, the use or the make',
)

const repairProblems = (content: Extract<NoteContent, { kind: 'repaired' }>, job: Job): readonly Problem[] => {
  const { repairs } = job.blueprint
  const repair = repairs.find((one) => one.id === content.repair)
  if (repair === undefined)
    return [
      unknownId(
        'repair',
        'repair',
        content.repair,
        repairs.map((one) => one.id),
      ),
    ]
  const options = repair.options.map((option) => option.id as string)
  if (!options.includes(content.option)) return [unknownId('option', 'option', content.option, options)]
  return workCoveredProblems('repair', repair.name, repair.coversOff, job.blueprint, job.off)
}

/** A virtual machine hides a fault of the blueprint that it was made from. */
const describedProblems = (id: string, { blueprint }: Job, notes: readonly Note[]): readonly Problem[] => {
  const first = notes.find((note) => note.content.kind === 'added')?.content
  if (first?.kind === 'added' && first.practiceSeed !== undefined) {
    const what = 'This is a virtual machine, and its hidden fault belongs to the kind that it was made as'
    return [problem('virtual-machine', 'blueprint', what, 'Start another one of the kind you want')]
  }
  if (id !== blueprint.id) return []
  const what = `This machine is read by “${blueprint.name}” already`
  return [problem('read-by-it-already', 'blueprint', what, 'Nothing is left to do, or name another blueprint')]
}

type StruckContent = Extract<NoteContent, { kind: 'struck' }>

const strikeProblems = (content: StruckContent, notes: readonly Note[]): readonly Problem[] => {
  const id = content.note
  const note = notes.find((one) => one.id === id)
  if (note === undefined) {
    return [problem('unknown-note', 'note', `“${id}” is not a note of this machine`, 'Name a note of its log')]
  }
  if (note.content.kind === 'added' || note.content.kind === 'struck') return [cannotStrike(note.content.kind)]
  if (notes.some((one) => one.content.kind === 'struck' && one.content.note === id)) {
    return [problem('already-struck', 'note', 'This note is struck out already', 'Nothing is left to do')]
  }
  return booksProblems(content, notes)
}

/** What later notes rest on cannot be struck out before them: a part took its share of a cost that would then not be there. */
const booksProblems = (content: StruckContent, notes: readonly Note[]): readonly Problem[] => {
  const [first] = notes
  if (first === undefined) return []
  const strike: Note = { ...first, id: `strike of ${content.note}`, seq: notes.length + 1, content }
  const lines = machineLines([...notes, strike])
  if (lines.kind === 'ok') return []
  return [
    problem(
      'books-rest-on-it',
      'note',
      `Without that note the books of this machine would not add up: ${inSentence(lines.problems[0]?.what ?? '')}`,
      'Strike out the later note that rests on it first',
    ),
  ]
}

const cannotStrike = (kind: 'added' | 'struck'): Problem =>
  kind === 'added'
    ? problem(
        'cannot-strike',
        'note',
        'The first note of a machine cannot be struck out',
        'Write a note that says what was wrong',
      )
    : problem('cannot-strike', 'note', 'A strike cannot itself be struck out', 'Enter again what was struck out')
