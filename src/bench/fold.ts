import type { Listing, MachineState } from './contract.ts'
import { dryingFrom } from './cleaning/drying.ts'
import type { Note, NoteContent } from './note.ts'
import { defaultSettings } from './settings.ts'

type AddedContent = Extract<NoteContent, { kind: 'added' }>
type ListedContent = Extract<NoteContent, { kind: 'listed' }>
type LeftContent = Extract<NoteContent, { kind: 'left' }>
type TriedContent = Extract<NoteContent, { kind: 'tried' }>
type ValuedContent = Extract<NoteContent, { kind: 'valued' }>

/** The notes in the order of the log, each once. */
export const inOrder = (notes: readonly Note[]): readonly Note[] => {
  const byId = new Map<string, Note>()
  for (const note of notes) if (!byId.has(note.id)) byId.set(note.id, note)
  return [...byId.values()].sort((a, b) => a.seq - b.seq)
}

/** Ids of the notes that a later note strikes out. */
export const struckIds = (notes: readonly Note[]): ReadonlySet<string> => {
  const struck = new Set<string>()
  for (const note of notes) if (note.content.kind === 'struck') struck.add(note.content.note)
  return struck
}

/** The notes that still stand, in the order of the log: those struck out and the strikes themselves are left out. */
export const standing = (notes: readonly Note[]): readonly Note[] => {
  const struck = struckIds(notes)
  return inOrder(notes).filter((note) => note.content.kind !== 'struck' && !struck.has(note.id))
}

/**
 * What the notes of one machine add up to. The order in which they are given and repeats of a note change nothing.
 * Money in minor units, time in minutes; profit is money only: received less fees, paid and spent, but for what went to the shelf.
 * Throws when there is no `added` note: a log without one is a programmer's mistake.
 */
export const foldNotes = (notes: readonly Note[]): MachineState => {
  const ordered = inOrder(notes)
  const first = ordered.find((note) => note.content.kind === 'added')
  if (first?.content.kind !== 'added') throw new Error('a log of notes has no first note')
  const start = startOf(first, first.content, ordered)
  // One object is filled in, for a log is folded at every note.
  for (const note of standing(ordered)) Object.assign(start, step(start, note))
  return start
}

const startOf = (first: Note, content: AddedContent, ordered: readonly Note[]): MachineState => {
  const struck = struckIds(ordered)
  return {
    id: first.machine,
    name: content.name,
    blueprint: content.blueprint,
    plate: content.plate,
    currency: content.currency,
    hourMinor: content.hourMinor ?? defaultSettings.hourMinor,
    hourSetAt: first.at,
    prices: { working: null, spares: null, parts: {} },
    practiceSeed: content.practiceSeed ?? null,
    ageYears: content.ageYears ?? null,
    wear: content.wear ?? null,
    marks: [],
    rules: null,
    lead: null,
    version: ordered.length,
    addedAt: first.at,
    claimed: { complaints: content.complaints, words: content.claim },
    seen: [],
    confirmed: [],
    fixed: [],
    missing: content.missing,
    off: [],
    out: [],
    drying: [],
    struck: ordered.filter((note) => struck.has(note.id)).map((note) => note.id),
    model: content.model ?? '',
    ...(content.make === undefined || content.make === '' ? {} : { make: content.make }),
    source: content.source ?? null,
    advert: content.advert ?? null,
    paidMinor: content.paidMinor,
    spentMinor: content.travelMinor ?? 0,
    toShelfMinor: 0,
    receivedMinor: 0,
    feesMinor: 0,
    minutes: content.travelMin ?? 0,
    listed: [],
    left: null,
  }
}

/** What a note changes. */
const step = (state: MachineState, note: Note): Partial<MachineState> => {
  const { content } = note
  switch (content.kind) {
    case 'added':
    case 'said':
    case 'photo':
    case 'struck':
    case 'graded':
    case 'worded':
    case 'camera':
      return {}
    case 'seen':
      return { seen: [...state.seen, { note: note.id, complaints: content.complaints, text: content.text }] }
    case 'reading':
    case 'gauge':
    case 'proof':
      return worked(state, content.minutes, 0)
    case 'tried':
      return { ...worked(state, content.minutes, 0), missing: missingAfter(state.missing, content) }
    case 'opened':
      return { ...worked(state, content.minutes, 0), off: [...without(state.off, content.cover), content.cover] }
    case 'closed':
      return { ...worked(state, content.minutes, 0), off: without(state.off, content.cover) }
    case 'confirmed':
      return { confirmed: [...state.confirmed, { note: note.id, fault: content.fault }] }
    case 'repaired':
      return {
        ...worked(state, content.minutes, content.costMinor),
        fixed: [...state.fixed, { note: note.id, repair: content.repair, option: content.option }],
      }
    case 'rules':
      return { rules: content.rules, lead: content.lead ?? state.lead }
    case 'described-by':
      return { blueprint: content.blueprint }
    case 'history':
      return {
        ageYears: content.ageYears ?? state.ageYears,
        wear: content.wear ?? state.wear,
        ...(content.make === undefined ? {} : { make: content.make }),
      }
    case 'valued':
      return value(state, note, content)
    case 'stamp':
      return { marks: [...state.marks, { note: note.id, part: content.part, reading: content.reading }] }
    case 'listed':
      return list(state, note, content)
    case 'spent':
      return worked(state, content.minutes, content.costMinor)
    case 'cleaned':
      return {
        ...worked(state, content.minutes, content.costMinor),
        drying: [...state.drying, ...dryingFrom(note, content)],
      }
    case 'dried':
      return { drying: state.drying.filter(({ note: washed }) => washed !== content.note) }
    case 'taken-out':
      return { ...worked(state, content.minutes, 0), out: [...without(state.out, content.part), content.part] }
    case 'put-in':
      return { ...worked(state, content.minutes, 0), out: without(state.out, content.part) }
    case 'took-off':
      return {
        ...worked(state, content.minutes, 0),
        missing: [...without(state.missing, content.part), content.part],
        out: without(state.out, content.part),
        toShelfMinor: state.toShelfMinor + content.costMinor,
      }
    case 'left':
      return leave(state, note, content)
    case 'came-back':
      return {
        ...worked(state, content.minutes, 0),
        receivedMinor: state.receivedMinor - content.refundMinor,
        left: null,
      }
  }
}

/** A function that is not there leaves its part missing. */
const missingAfter = (missing: readonly string[], { result, part }: TriedContent): readonly string[] =>
  result === 'not-there' && part !== undefined ? [...without(missing, part), part] : missing

const worked = (
  state: MachineState,
  minutes: number,
  costMinor: number,
): Pick<MachineState, 'minutes' | 'spentMinor'> => ({
  minutes: state.minutes + minutes,
  spentMinor: state.spentMinor + costMinor,
})

const value = (state: MachineState, { at }: Note, content: ValuedContent): Partial<MachineState> => {
  const { hourMinor, workingMinor, sparesMinor } = content
  const { prices } = state
  const parts = content.parts.map(({ part, priceMinor }) => [part, { minor: priceMinor, at }] as const)
  return {
    hourMinor: hourMinor ?? state.hourMinor,
    hourSetAt: hourMinor === undefined ? state.hourSetAt : at,
    prices: {
      working: workingMinor === undefined ? prices.working : { minor: workingMinor, at },
      spares: sparesMinor === undefined ? prices.spares : { minor: sparesMinor, at },
      parts: { ...prices.parts, ...Object.fromEntries(parts) },
    },
  }
}

/** The price it is offered at takes the place of the one before. */
const list = (
  state: MachineState,
  { id, at }: Note,
  { priceMinor, where, grade }: ListedContent,
): Partial<MachineState> => ({
  listed: [...ended(state.listed, at, false), { note: id, priceMinor, where, grade, from: at, to: null, sold: false }],
})

const ended = (listed: readonly Listing[], at: string, sold: boolean): readonly Listing[] =>
  listed.map((one) => (one.to === null ? { ...one, to: at, sold } : one))

const without = (all: readonly string[], one: string): readonly string[] => all.filter((each) => each !== one)

const leave = (before: MachineState, note: Note, content: LeftContent): Partial<MachineState> => {
  const changed = {
    ...worked(before, content.minutes, 0),
    receivedMinor: before.receivedMinor + content.receivedMinor,
    feesMinor: before.feesMinor + (content.feeMinor ?? 0) + (content.postageMinor ?? 0),
  }
  return {
    ...changed,
    listed: ended(before.listed, note.at, content.exit === 'sell-working'),
    left: {
      exit: content.exit,
      receivedMinor: content.receivedMinor,
      profitMinor: profitOf({ ...before, ...changed }),
      safety: content.safety,
      ...(content.barrier === undefined ? {} : { barrier: content.barrier }),
      at: note.at,
    },
  }
}

/** What is left of all that was received once all that was paid is taken off; parts on the shelf take their share of the cost with them. */
const profitOf = ({ receivedMinor, feesMinor, paidMinor, spentMinor, toShelfMinor }: MachineState): number =>
  receivedMinor - feesMinor - paidMinor - spentMinor + toShelfMinor

/** What the machine stands at in the books while it is in hand: paid and spent, less what went to the shelf. Minor units. */
export const costLeft = ({ paidMinor, spentMinor, toShelfMinor }: MachineState): number =>
  paidMinor + spentMinor - toShelfMinor
