import { inSentence } from '../../base/in-sentence.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { gradeFacts } from '../../facts/asking.ts'
import { saleShots } from '../../facts/sale-shots.ts'
import type { NoteLine } from '../contract.ts'
import { noteLines } from '../lines.ts'
import type { Note, NoteContent } from '../note.ts'
import type { PhotoNote } from '../photos/photo-note.ts'
import { exitText } from '../words.ts'

/** What notes tell to others than the one who keeps the books: no price, no cost. */
export type PlainText = (note: Note) => string

/**
 * Notes as they read in a story or a list of chapters, without money. Empty for a note that is about money alone.
 * @param others blueprints that it was read by before, for names that the one of now does not know
 */
export const plainTexts = (
  notes: readonly Note[],
  blueprint: Blueprint,
  others: readonly Blueprint[] = [],
): PlainText => {
  const lines = new Map(noteLines(notes.map(withoutCost), blueprint, others).map((line) => [line.id, line]))
  return (note) => plainText(note, blueprint, lines)
}

/** What a photograph shows and when it was taken: `Before: motor`. */
export const photoCaption = (photo: PhotoNote, blueprint: Blueprint, ofNote: (id: string) => string): string => {
  const { about, shot, text, when } = photo
  const of = {
    machine: () => '',
    part: () => nameIn(blueprint.parts, about.kind === 'part' ? about.part : ''),
    fault: () => nameIn(blueprint.faults, about.kind === 'fault' ? about.fault : ''),
    note: () => ofNote(about.kind === 'note' ? about.note : ''),
  }[about.kind]()
  const words = [shot === undefined ? '' : saleShots[shot], of, text].filter((word) => word !== '')
  const time = { before: 'Before', work: 'At work', after: 'After' }[when]
  return words.length === 0 ? time : `${time}: ${words.map(inSentence).join('; ')}`
}

/** A cleaning names its cost where it has one. */
const withoutCost = (note: Note): Note =>
  note.content.kind === 'cleaned' ? { ...note, content: { ...note.content, costMinor: 0 } } : note

const plainText = (note: Note, blueprint: Blueprint, lines: ReadonlyMap<string, NoteLine>): string => {
  const { content } = note
  switch (content.kind) {
    case 'added':
      return 'Came in'
    case 'repaired':
      return repairText(content, blueprint)
    case 'spent':
    case 'valued':
      return ''
    case 'listed':
      return `Offered for sale, looks ${content.grade}: ${gradeFacts[content.grade].name}`
    case 'took-off':
      return `Taken off and put on the shelf: ${inSentence(nameIn(blueprint.parts, content.part))}`
    case 'left':
      return capital(exitText[content.exit])
    case 'came-back':
      return withText('Came back', content.text)
    default:
      return lines.get(note.id)?.text ?? ''
  }
}

const repairText = (content: Extract<NoteContent, { kind: 'repaired' }>, blueprint: Blueprint): string => {
  const repair = blueprint.repairs.find(({ id }) => id === content.repair)
  const option = repair?.options.find(({ id }) => id === content.option)
  const how =
    repair !== undefined && repair.options.length > 1 ? ` (${inSentence(option?.name ?? content.option)})` : ''
  const shelf = content.shelfPart === undefined ? '' : ', with a part from the shelf'
  return withText(`Repaired: ${inSentence(repair?.name ?? content.repair)}${how}${shelf}`, content.text)
}

const withText = (head: string, text: string): string => (text === '' ? head : `${head}. ${text}`)

const nameIn = (all: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  all.find((one) => one.id === id)?.name ?? id

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`
