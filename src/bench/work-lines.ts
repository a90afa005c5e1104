import { inSentence } from '../base/in-sentence.ts'
import { moneyText, type Currency } from '../base/money.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { gradeFacts } from '../facts/asking.ts'
import { cleaningTaskName } from './cleaning/task-name.ts'
import { functionName } from './functions/function-name.ts'
import type { NoteContent } from './note.ts'
import { sectionNames } from './sale/section-names.ts'
import type { Fixing } from './stripping/strip-note.ts'
import { listText, minutesText } from './words.ts'

/** Notes of stripping, cleaning, trying, selling and filming. */
export type WorkContent = Extract<
  NoteContent,
  { kind: 'taken-out' | 'put-in' | 'cleaned' | 'dried' | 'graded' | 'tried' | 'worded' | 'camera' }
>

type Context = {
  readonly blueprint: Blueprint | null
  readonly currency: Currency
  readonly textOf: (note: string) => string | undefined
}

/** Such a note as it reads in the history. */
export const workText = (content: WorkContent, context: Context): string => {
  switch (content.kind) {
    case 'taken-out':
    case 'put-in':
      return movedText(content, context)
    case 'cleaned':
      return cleanedText(content, context)
    case 'dried':
      return withText(`Dry: ${inSentence(context.textOf(content.note) ?? content.note)}`, content.text)
    case 'graded': {
      const head = `Looks ${content.when} cleaning, ${partName(context, content.part)}: ${content.grade}`
      return withText(`${head}, ${gradeFacts[content.grade].name}`, content.text)
    }
    case 'tried': {
      const name = functionName(content.function, context.blueprint)
      return withText(`Tried: ${inSentence(name)}, ${triedText[content.result]}`, content.text)
    }
    case 'worded':
      return content.text === ''
        ? `Sale sheet, ${sectionNames[content.section]}: as the notes say it`
        : `Sale sheet, ${sectionNames[content.section]} in own words: ${content.text}`
    case 'camera':
      return withText(content.state === 'rolling' ? 'Camera on' : 'Camera off', content.film)
  }
}

const triedText = {
  good: 'good',
  bad: 'not as it should be',
  'not-there': 'not there',
  'cannot-tell': 'could not tell',
}

/** `3 × screw 4 × 16 in the lid`, or `from the lid` as they go back; empty where none were counted. */
export const fixingsText = (fixings: readonly Fixing[], where: 'in' | 'from' = 'in'): string =>
  listText(fixings.map(({ count, kind, place }) => `${count} × ${kind}${place === '' ? '' : ` ${where} ${place}`}`))

type Moved = Extract<NoteContent, { kind: 'opened' | 'closed' | 'taken-out' | 'put-in' }>

/** The fixings of a step, and those left over before that went in with it; empty where neither is said. */
export const heldText = (content: Moved): string => {
  const isBack = content.kind === 'closed' || content.kind === 'put-in'
  const found = isBack ? fixingsText(content.leftOverIn ?? [], 'from') : ''
  return [
    fixingsText(content.fixings ?? [], isBack ? 'from' : 'in'),
    found === '' ? '' : `left over before and in now: ${found}`,
  ]
    .filter((text) => text !== '')
    .join('; ')
}

const movedText = (content: Extract<WorkContent, { kind: 'taken-out' | 'put-in' }>, context: Context): string => {
  const head = `${content.kind === 'taken-out' ? 'Taken out' : 'Put back'}: ${partName(context, content.part)}`
  const held = heldText(content)
  return withText(`${head}${minutes(content.minutes)}${held === '' ? '' : `; ${held}`}`, content.text)
}

const cleanedText = (content: Extract<WorkContent, { kind: 'cleaned' }>, context: Context): string => {
  const task = inSentence(cleaningTaskName(content.task))
  const part = content.part === undefined ? '' : partName(context, content.part)
  // Most tasks name their part already.
  const of = part === '' || task.includes(part) ? '' : `, ${part}`
  const cost = content.costMinor === 0 ? '' : `, ${moneyText(content.costMinor, context.currency)}`
  const dry = content.dryHours === undefined ? '' : `; to dry for ${content.dryHours} h`
  const head = `Cleaned: ${task}${of}${minutes(content.minutes)}${cost}${dry}`
  return withText(head, content.text)
}

const minutes = (min: number): string => (min === 0 ? '' : `, ${minutesText(min)}`)

const withText = (head: string, text: string): string => (text === '' ? head : `${head}: ${text}`)

const partName = ({ blueprint }: Context, id: string): string =>
  inSentence(blueprint?.parts.find((part) => part.id === id)?.name ?? id)
