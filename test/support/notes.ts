import {
  noteContentSchema,
  noteSchema,
  type Note,
  type NoteContent,
  type NoteContentInput,
} from '../../src/bench/note.ts'
import { tinyBlueprint } from './tiny-blueprint.ts'

/** A note's content with its defaults filled in. */
export const content = (input: NoteContentInput): NoteContent => noteContentSchema.parse(input)

/** The first note of a machine of the tiny blueprint, bought for 5.00. */
export const added = (over: Partial<Extract<NoteContentInput, { kind: 'added' }>> = {}): NoteContent =>
  content({
    kind: 'added',
    name: 'Heather grey upright',
    blueprint: tinyBlueprint.id,
    plate: tinyBlueprint.plate,
    paidMinor: 500,
    currency: 'GBP',
    ...over,
  })

/** A log of these contents in this order: ids `n1`, `n2`, … a minute apart. */
export const log = (contents: readonly NoteContentInput[], machine = 'm1'): readonly Note[] =>
  contents.map((each, index) =>
    noteSchema.parse({
      id: `n${index + 1}`,
      machine,
      seq: index + 1,
      at: new Date(Date.UTC(2026, 2, 14, 10, index)).toISOString(),
      content: each,
    }),
  )

/** The checks to be passed before running, passed. */
export const gatesPassed: readonly NoteContentInput[] = [
  { kind: 'reading', check: 'insulation', result: { kind: 'open' }, minutes: 1 },
  { kind: 'reading', check: 'look-flex', result: { kind: 'grade', outcome: 'good' }, minutes: 2 },
]

export const runsWell: NoteContentInput = {
  kind: 'reading',
  check: 'run',
  result: { kind: 'grade', outcome: 'runs' },
  minutes: 2,
}

export const flexRefitted: NoteContentInput = {
  kind: 'repaired',
  repair: 'refit-flex',
  option: 'refit',
  minutes: 12,
  costMinor: 150,
}
