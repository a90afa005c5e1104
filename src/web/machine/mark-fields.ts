import { problem, type Problem } from '../../base/problem.ts'
import type { MarkReading } from '../../machine/stamps/stamp.ts'

export type MarkKind = MarkReading['kind']

/** A field of a mark as the eye sees it. `optional` ones may be left empty. */
export type MarkField = { readonly id: string; readonly label: string; readonly optional?: true; readonly text?: true }

const month: MarkField = { id: 'month', label: 'Month' }
const year: MarkField = { id: 'year', label: 'Year' }
const optional = (field: MarkField): MarkField => ({ ...field, optional: true })

/** Kinds of mark in the words of who looks for them, with the fields of each. */
export const markKinds: readonly {
  readonly id: MarkKind
  readonly name: string
  readonly looks: string
  readonly fields: readonly MarkField[]
}[] = [
  {
    id: 'one-ring',
    name: 'One ring with an arrow',
    looks: '1 to 12 round the edge, a digit each side of the arrow.',
    fields: [
      { id: 'digits', label: 'Both digits, as 16' },
      { id: 'month', label: 'Arrow at', optional: true },
    ],
  },
  { id: 'two-rings', name: 'Two rings', looks: 'A ring of months and a ring of years.', fields: [month, year] },
  {
    id: 'three-rings',
    name: 'Three rings',
    looks: 'Rings for day, month and year.',
    fields: [{ id: 'day', label: 'Day' }, month, optional(year)],
  },
  {
    id: 'dots',
    name: 'Dots in cells',
    looks: 'A year, and up to twelve cells with dots.',
    fields: [year, { id: 'dots', label: 'Dots' }],
  },
  {
    id: 'week',
    name: 'Week and year',
    looks: '1 to 52 round the edge, the year in the middle.',
    fields: [year, { id: 'week', label: 'Week' }],
  },
  {
    id: 'written',
    name: 'Date in ink or on a label',
    looks: 'Often on the motor or a board.',
    fields: [year, optional(month), optional({ id: 'day', label: 'Day' })],
  },
  {
    id: 'serial',
    name: 'Serial number',
    looks: 'Its first digits may be a date.',
    fields: [{ id: 'number', label: 'Serial number', text: true }],
  },
  {
    id: 'plate',
    name: 'Plate and plug',
    looks: 'What they show dates the machine from one side.',
    fields: [{ id: 'date', label: 'Date on the plate', optional: true, text: true }],
  },
]

export const plateClues = [
  { id: 'ukca', name: 'UKCA mark' },
  { id: 'sleevedPins', name: 'Sleeved plug pins' },
  { id: 'dryEuOrUk', name: 'Dry machine, EU or UK label' },
] as const
export type PlateClue = (typeof plateClues)[number]['id']

/** What is wrong with what was typed, as far as it can be told here: fields left empty, and digits that are not two. */
export const markProblems = (kind: MarkKind, entries: Readonly<Record<string, string>>): readonly Problem[] =>
  (markKinds.find(({ id }) => id === kind)?.fields ?? []).flatMap(({ id, label, optional }) => {
    const entry = (entries[id] ?? '').trim()
    if (entry === '' && optional !== true)
      return [problem('left-empty', label, 'Nothing is entered', 'Write what the mark shows')]
    if (id === 'digits' && !/^\d\d$/.test(entry))
      return [
        problem(
          'two-digits',
          label,
          `“${entry}” is not two digits`,
          'Write the digit left and the digit right of the arrow',
        ),
      ]
    return []
  })

/** What was typed as a mark; the door says what is wrong with it. */
export const markOf = (
  kind: MarkKind,
  entries: Readonly<Record<string, string>>,
  clues: readonly PlateClue[],
): MarkReading => {
  const fields = markKinds.find(({ id }) => id === kind)?.fields ?? []
  const typed = fields.flatMap(({ id, text }) => {
    const entry = (entries[id] ?? '').trim()
    if (entry === '') return []
    if (id === 'digits') return [['left', Number(entry[0])] as const, ['right', Number(entry[1])] as const]
    return [[id, text === true || !/^\d+$/.test(entry) ? entry : Number(entry)] as const]
  })
  const seen: (readonly [string, string | number | boolean])[] =
    kind === 'plate' ? [...typed, ...clues.map((clue) => [clue, true] as const)] : typed
  // The door checks it; what a person types need not be a mark yet.
  return { kind, seen: Object.fromEntries<string | number | boolean>(seen) } as MarkReading
}
