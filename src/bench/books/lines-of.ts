import type { Result } from '../../base/result.ts'
import { ok } from '../../base/result.ts'
import { post, type Log, type MachineEvent, type Posting, type ShelfEvent } from '../../engines/money/index.ts'
import { standing } from '../fold.ts'
import { dayOf } from '../logs/calendar-day.ts'
import type { EntryOf } from '../logs/entry.ts'
import { standingEntries } from '../logs/standing-entries.ts'
import type { Note } from '../note.ts'
import type { PartContent } from '../shelf/part-note.ts'
import { foldPart, shareOfStock, type PartEntry, type PartState } from '../shelf/part-state.ts'
import type { BookLine } from './book-line.ts'
import type { ExpenseContent } from './expense-note.ts'

/** The lines of the books that a machine's notes make. Refused where the notes, one struck out, make an impossible history. */
export const machineLines = (notes: readonly Note[]): Result<readonly BookLine[]> => {
  const own = standing(notes)
  return withMinutes({ kind: 'machine', events: own.flatMap(machineEvent) }, own.map(workOf))
}

const machineEvent = ({ id, at, content }: Note): readonly MachineEvent[] => {
  const told = { note: id, day: dayOf(at) }
  switch (content.kind) {
    case 'added':
      return [
        { ...told, kind: 'bought', minor: content.paidMinor },
        { ...told, kind: 'spent', minor: content.travelMinor ?? 0 },
      ]
    case 'spent':
    case 'cleaned':
      return [{ ...told, kind: 'spent', minor: content.costMinor }]
    case 'repaired':
      return content.shelfPart === undefined
        ? [{ ...told, kind: 'spent', minor: content.costMinor }]
        : [{ ...told, kind: 'part-fitted', part: content.shelfPart, minor: content.costMinor }]
    case 'took-off':
      return [{ ...told, kind: 'part-taken', part: content.shelfPart, minor: content.costMinor }]
    case 'left':
      return [leaving(told, content)]
    case 'came-back':
      return [{ ...told, kind: 'came-back', refundMinor: content.refundMinor }]
    default:
      return []
  }
}

type Told = { readonly note: string; readonly day: string }

/** What brought money was sold; what brought none is written off with what it still stood at. */
const leaving = (told: Told, content: Extract<Note['content'], { kind: 'left' }>): MachineEvent =>
  content.exit === 'sell-working' || content.exit === 'sell-for-spares' || content.receivedMinor > 0
    ? {
        ...told,
        kind: 'sold',
        receivedMinor: content.receivedMinor,
        feeMinor: content.feeMinor ?? 0,
        postageMinor: content.postageMinor ?? 0,
      }
    : { ...told, kind: 'written-off' }

type Work = Told & { readonly minutes: number }

const workOf = ({ id, at, content }: Note): Work => ({
  note: id,
  day: dayOf(at),
  minutes: content.kind === 'added' ? (content.travelMin ?? 0) : 'minutes' in content ? content.minutes : 0,
})

const withMinutes = (log: Log, work: readonly Work[]): Result<readonly BookLine[]> => {
  const posted = post(log)
  if (posted.kind === 'refused') return posted
  return ok([
    ...posted.value.map(moneyLine),
    ...work
      .filter(({ minutes }) => minutes > 0)
      .map(({ note, day, minutes }) => ({ note, day, account: 'minutes' as const, minor: 0, minutes })),
  ])
}

const moneyLine = ({ note, day, account, minor }: Posting): BookLine => ({ note, day, account, minor, minutes: 0 })

/** The lines that a shelf part's entries make. Its moves from and to machines stand in the machines' logs. */
export const partLines = (entries: readonly PartEntry[]): Result<readonly BookLine[]> => {
  const own = standingEntries(entries)
  const events: ShelfEvent[] = []
  own.forEach((entry, i) => events.push(...partEvent(entry, stateBefore(own, i))))
  const part = own[0]?.log ?? ''
  return withMinutes({ kind: 'part', part, events }, own.map(partWork))
}

/** What there was before an entry, for the share that it takes. */
const stateBefore = (own: readonly PartEntry[], i: number): PartState | null =>
  i === 0 ? null : foldPart(own.slice(0, i))

const partEvent = ({ id, at, content }: PartEntry, before: PartState | null): readonly ShelfEvent[] => {
  const told = { note: id, day: dayOf(at) }
  const share = (count: number): number => (before === null ? 0 : shareOfStock(before.costMinor, before.count, count))
  switch (content.kind) {
    case 'put':
      return [comingIn(told, content)]
    case 'used':
      return [{ ...told, kind: 'to-machine', minor: content.costMinor }]
    case 'sold':
      return [
        {
          ...told,
          kind: 'sold',
          receivedMinor: content.receivedMinor,
          feeMinor: content.feeMinor,
          postageMinor: content.postageMinor,
          costMinor: share(content.count),
        },
      ]
    case 'scrapped':
      return [{ ...told, kind: 'written-off', costMinor: share(content.count) }]
    case 'counted':
      return before === null || content.count >= before.count
        ? []
        : [{ ...told, kind: 'written-off', costMinor: share(before.count - content.count) }]
    default:
      return []
  }
}

const comingIn = (told: Told, { origin, costMinor }: Extract<PartContent, { kind: 'put' }>): ShelfEvent => {
  switch (origin.kind) {
    case 'machine':
      return { ...told, kind: 'from-machine', minor: costMinor }
    case 'bought':
      return { ...told, kind: 'bought', minor: costMinor }
    case 'there':
      return { ...told, kind: 'found' }
  }
}

const partWork = ({ id, at, content }: PartEntry): Work => ({
  note: id,
  day: dayOf(at),
  minutes: content.kind === 'sold' ? content.minutes : 0,
})

/** The lines of what the bench spent on no machine in particular. */
export const expenseLines = (entries: readonly EntryOf<ExpenseContent>[]): Result<readonly BookLine[]> => {
  const own = standingEntries(entries).flatMap(({ id, content }) =>
    content.kind === 'spent' ? [{ note: id, day: content.day, content }] : [],
  )
  return withMinutes(
    {
      kind: 'expenses',
      events: own.map(({ note, day, content }) => ({ note, day, minor: content.costMinor, what: content.what })),
    },
    own.map(({ note, day, content }) => ({ note, day, minutes: content.minutes })),
  )
}
