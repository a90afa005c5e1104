import type { Path } from '../../../base/form/place-text.ts'
import { parse } from '../../../base/parse.ts'
import type { Problem } from '../../../base/problem.ts'
import { ok, refused, type Result } from '../../../base/result.ts'
import type { Blueprint } from '../../../blueprint/schema.ts'
import { checkNote } from '../../append.ts'
import { noteContentSchema, type Note, type NoteContentInput } from '../../note.ts'
import { machineLines } from '../lines-of.ts'
import { placeOf } from './field-readers.ts'
import type { PastMachine } from './past-machine.ts'

/** Stands in the note of a past sale in place of the checks that nobody can make any more. */
export const soldBefore = 'Sold before this book began'

/**
 * The notes of a past machine, dated by its own days: that it came in, what was spent and worked, and that it left. All work
 * and spending stands on the day it came, for a file says no other. The rules for selling a machine now do not hold for one
 * that was sold before.
 * @param id of the machine; its notes take theirs from it
 * @returns refused at its row where a field is longer or larger than a note takes
 */
export const pastNotes = (
  past: PastMachine,
  blueprint: Blueprint,
  { id, row, hourMinor }: { readonly id: string; readonly row: number; readonly hourMinor: number },
): Result<readonly Note[]> => {
  const problems: Problem[] = []
  const notes = contentsOf(past, blueprint, hourMinor).flatMap(({ day, content }, i): readonly Note[] => {
    const parsed = parse(noteContentSchema, content, 'row', ([field]) => placeOf(row, columnOf(field)))
    if (parsed.kind === 'ok')
      return [{ id: `${id}-${i + 1}`, machine: id, seq: i + 1, at: momentOf(day, i), content: parsed.value }]
    problems.push(...parsed.problems)
    return []
  })
  if (problems.length > 0) return refused(...problems)
  const first = notes[0]
  const checked = first === undefined ? null : checkNote([], first.content, blueprint)
  const lines = machineLines(notes)
  const wrong = [checked, lines].flatMap((one) => (one?.kind === 'refused' ? one.problems : []))
  return wrong.length === 0 ? ok(notes) : refused(...wrong.map((one) => ({ ...one, where: `row ${row}` })))
}

/** Noon of the day, so that it is the same day nearly everywhere; later notes later. */
const momentOf = (day: string, place: number): string => `${day}T12:00:0${place}.000Z`

type Dated = { readonly day: string; readonly content: NoteContentInput }

const contentsOf = (past: PastMachine, { id, plate }: Blueprint, hourMinor: number): readonly Dated[] => [
  {
    day: past.bought,
    content: {
      kind: 'added',
      name: past.name,
      blueprint: id,
      plate,
      paidMinor: past.paidMinor,
      currency: past.currency,
      complaints: [...past.complaints],
      hourMinor,
      ...(past.model === '' ? {} : { model: past.model }),
      ...(past.source === null ? {} : { source: past.source }),
    },
  },
  ...(past.spentMinor === 0 && past.minutes === 0
    ? []
    : [
        {
          day: past.bought,
          content: {
            kind: 'spent' as const,
            costMinor: past.spentMinor,
            minutes: past.minutes,
            text: 'All spending and work, from a file',
          },
        },
      ]),
  ...(past.left === null ? [] : [{ day: past.left.day, content: leftContent(past.left) }]),
]

const leftContent = ({ exit, receivedMinor, feesMinor }: NonNullable<PastMachine['left']>): NoteContentInput => ({
  kind: 'left',
  exit,
  receivedMinor,
  ...(feesMinor === 0 ? {} : { feeMinor: feesMinor }),
  safety: exit === 'sell-working' ? soldBefore : '',
})

const columns: Readonly<Record<string, string>> = {
  paidMinor: 'paid',
  costMinor: 'spent',
  receivedMinor: 'received',
  feeMinor: 'fees',
}
const columnOf = (field: Path[number] = ''): string => columns[String(field)] ?? String(field)
