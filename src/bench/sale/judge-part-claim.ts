import { inSentence } from '../../base/in-sentence.ts'
import { cleaningTask } from '../../facts/cleaning-tasks.ts'
import { partSayingNeeds } from '../../facts/sale-part-words.ts'
import { functionsOf } from '../../machine/functions/functions-of.ts'
import { partsOfTask } from '../../machine/cleaning/task-parts.ts'
import { stateOf } from '../../machine/functions/function-state.ts'
import { listText } from '../words.ts'
import type { Evidence } from './evidence.ts'
import type { Noted } from './noted.ts'
import { no, noteOf, unsaid, yes, type Judged } from './judged.ts'
import { partClaimsIn, partsIn, type PartClaim, type SpokenPart } from './part-claims.ts'
import { isFitting } from './whole-clean.ts'

/** Whether the notes bear out what is said of a part. */
export const judgePartClaim = (evidence: Evidence, { part, saying }: PartClaim): Judged => {
  const said = saidOf(evidence, part, saying)
  switch (saying) {
    case 'new':
      return newPart(evidence, part, said)
    case 'cleaned': {
      const notes = [...cleanedOf(evidence, part), ...repairsOf(evidence, part, ['clean']).map(noteOf), ...said]
      if (notes.length > 0) return yes('The cleaning is noted', notes)
      return evidence.clean.isWhole
        ? yes('A clean of all of it is noted', evidence.clean.notes)
        : unsaid(`It takes ${partSayingNeeds.cleaned}`)
    }
    case 'mended': {
      const notes = [...repairsOf(evidence, part).map(noteOf), ...said]
      return notes.length > 0 ? yes('The repair is noted', notes) : unsaid(`It takes ${partSayingNeeds.mended}`)
    }
    case 'as-new':
      return asNew(evidence, part)
    case 'works':
      return partWorks(evidence, part, said)
  }
}

/** Notes whose own words say the same of that part. */
const saidOf = ({ words, blueprint }: Evidence, part: SpokenPart, saying: PartClaim['saying']): readonly string[] =>
  words
    .filter(({ text }) => partClaimsIn(text, blueprint).some((one) => one.saying === saying && isSame(one.part, part)))
    .map(({ note }) => note)

/** The same word heads both, and what stands before it does not tell them apart. */
const isSame = (one: SpokenPart, other: SpokenPart): boolean =>
  one.word === other.word &&
  (one.of.length === 0 || other.of.length === 0 || one.of.some((word) => other.of.includes(word))) &&
  (one.parts.length === 0 || other.parts.length === 0 || one.parts.some((id) => other.parts.includes(id)))

/** Repairs of that part by its own name; a new bearing of a motor is no new motor. */
const repairsOf = (
  { repaired, blueprint }: Evidence,
  part: SpokenPart,
  options: readonly string[] | null = null,
): readonly (Noted<'repaired'> & { readonly part: string })[] =>
  repaired.flatMap((one) => {
    const repair = blueprint.repairs.find(({ id }) => id === one.repair)
    if (repair === undefined || (options !== null && !options.includes(one.option))) return []
    const named = partsIn(repair.name, blueprint).filter(
      ({ from }) => !/\b(?:at|on|of|in|from) the $/i.test(repair.name.slice(0, from)),
    )
    const isOfIt = part.parts.includes(repair.part) || !/^(?:shorten|cut|mend)\b/i.test(repair.name)
    const isNamed = isOfIt && named.some((each) => isSame(each, part))
    const isUnnamed = named.length === 0 && !/\b(?:at|on) the\b/i.test(repair.name) && part.parts.includes(repair.part)
    return isNamed || isUnnamed ? [{ ...one, part: repair.part }] : []
  })

const nameOf = ({ blueprint }: Evidence, id: string): string =>
  inSentence(blueprint.parts.find((part) => part.id === id)?.name ?? id)

const newPart = (evidence: Evidence, part: SpokenPart, said: readonly string[]): Judged => {
  const { state, blueprint } = evidence
  const gone = state.missing.filter((id) => part.parts.includes(id))
  const isNew = repairsOf(evidence, part, ['new'])
  const fitted = evidence.cleaned.filter(
    (one) => isFitting(one) && taskParts(evidence, one).some((id) => part.parts.includes(id)),
  )
  const there = new Set([...isNew.map((one) => one.part), ...fitted.flatMap((one) => taskParts(evidence, one))])
  const notes = [...isNew.map(noteOf), ...fitted.map(noteOf), ...said]
  const left =
    part.isMany && said.length === 0
      ? part.parts.filter((id) => !there.has(id) && blueprint.parts.some((one) => one.id === id))
      : []
  if (notes.length > 0 && left.length > 0)
    return unsaid(`No note tells of a new ${listText(left.map((id) => nameOf(evidence, id)))}; of the others one does`)
  if (notes.length > 0) return yes('A new one went in', notes)
  if (gone.length > 0) return no('That part is missing', [])
  const used = repairsOf(evidence, part, ['salvaged'])
  if (used.length > 0) return no('The one that went in came off the shelf or another machine', used.map(noteOf))
  return unsaid(`It takes ${partSayingNeeds.new}`)
}

const taskParts = ({ blueprint }: Evidence, { task, part }: Noted<'cleaned'>): readonly string[] => {
  const known = cleaningTask(task)
  const own = known === undefined ? null : partsOfTask(known, blueprint, [])
  return part === undefined ? (own ?? []).map(({ id }) => id) : [part]
}

const cleanedOf = (evidence: Evidence, part: SpokenPart): readonly string[] =>
  evidence.cleaned
    .filter((one) => !isFitting(one) && taskParts(evidence, one).some((id) => part.parts.includes(id)))
    .map(noteOf)

/** A grade bears out what is said of its own part and of no other. */
const asNew = ({ graded }: Evidence, part: SpokenPart): Judged => {
  const own = graded.filter((one) => part.parts.includes(one.part))
  const worse = own.filter(({ grade }) => grade !== 'A')
  if (worse.length > 0) return no(`It is graded ${worse[0]?.grade}`, worse.map(noteOf))
  return own.length > 0
    ? yes('That part is graded A', own.map(noteOf))
    : unsaid(`Nobody graded that part. It takes ${partSayingNeeds['as-new']}`)
}

const partWorks = (evidence: Evidence, part: SpokenPart, said: readonly string[]): Judged => {
  const { blueprint, job, wrong, run } = evidence
  const own = functionsOf(blueprint).functions.filter(({ parts }) => parts.some(({ id }) => part.parts.includes(id)))
  const told = own.flatMap((one) => {
    const state = stateOf(job, one)
    return state.kind === 'told' && state.told.note !== null
      ? [{ note: state.told.note, result: state.told.result }]
      : []
  })
  const bad = told.filter(({ note }) => wrong.some((one) => one.note === note && !one.isMended))
  if (bad.length > 0) return no('It was tried and is not as it should be', bad.map(noteOf))
  const good = told.filter(({ result }) => result === 'good')
  if (good.length + said.length > 0) return yes('It was tried and is good', [...good.map(noteOf), ...said])
  return run.kind === 'good'
    ? yes('A run of the whole machine shows it', run.notes)
    : unsaid(`It takes ${partSayingNeeds.works}`)
}
