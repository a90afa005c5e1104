import type { Blueprint } from '../../blueprint/schema.ts'
import { liftedOutWith } from '../../facts/lifted-out.ts'
import { stripCautions, type StripCaution } from '../../facts/strip-cautions.ts'
import { foldNotes, standing } from '../fold.ts'
import type { Note } from '../note.ts'
import { machinePhotos, type MachinePhoto } from '../photos/machine-photos.ts'
import { deviationsOf, type Deviation } from './deviations.ts'
import { fixingLedger, type Ledger, type LedgerEvent, type Lot } from './fixing-ledger.ts'
import { backOrder, coversBefore, goBackBefore, movedOf, pieceKey, pieceOf, stripOrder } from './pieces.ts'
import type { Moved, Piece } from './pieces.ts'
import { stayingLedger, type StayingLedger } from './staying-ledger.ts'
import type { Fixing } from './strip-note.ts'
import { coversOffText, keptByPlace, notCounted, stripWarnings, type KeptInPlace } from './strip-words.ts'

/** A piece that can come away, now or after the covers named. */
export type NextPiece = {
  readonly piece: Piece
  /** Covers that must come off before it, in order; none when it can come away now. */
  readonly after: readonly Piece[]
  /** What held it by the blueprint, or what went in last time it was counted here; null where neither says. */
  readonly fixings: readonly Fixing[] | null
  readonly fixingsFrom: 'blueprint' | 'last-time' | 'nobody'
  readonly minutes: number
  readonly hint: string | null
  readonly cautions: readonly string[]
}

/** A step as it was done, with its photographs. */
export type StripStep = Moved & { readonly photos: readonly MachinePhoto[] }

/** A piece that is away, in the order in which such pieces go back. */
export type AwayPiece = StripStep & {
  /** Its fixings where they are kept; `isCounted` is false where nobody counted them. */
  readonly kept: readonly Fixing[]
  readonly isCounted: boolean
  /** Left over as it went together before, and not in yet. */
  readonly leftOver: readonly Fixing[]
  /** What goes back before it. */
  readonly before: readonly Piece[]
  readonly minutesBack: number
  /** What its taking off asked for, to be done the other way round; null where it asked for nothing. */
  readonly cameSo: string | null
  readonly cautions: readonly string[]
}

/** A piece that went back though some of its fixings did not, or are not closed. */
export type LeftOver = {
  readonly piece: Piece
  readonly fixings: readonly Fixing[]
  /** The note of its going back last; with `fixings` added it would be whole. Null where it is away again, or that note was struck out. */
  readonly closing: Moved | null
}

/** Where the taking apart of a machine stands. */
export type StripView = {
  /** Covers and parts that are on the machine, in an order in which they can come away. */
  readonly next: readonly NextPiece[]
  /** What is away, in the order in which it goes back: the last that came away first. */
  readonly away: readonly AwayPiece[]
  /** All steps that stand, in the order of the log. */
  readonly done: readonly StripStep[]
  /** By the places they are kept in; those that stay in what they close lie in none. */
  readonly kept: readonly KeptInPlace[]
  readonly staying: readonly Lot[]
  readonly leftOver: readonly LeftOver[]
  /** Fixings that stay on the machine, such as catches, of pieces that went back without them being closed. */
  readonly notClosed: readonly LeftOver[]
  readonly deviations: readonly Deviation[]
  /** What nobody counted, in whole sentences. */
  readonly notCounted: readonly string[]
  /** Whether all covers are on. */
  readonly isClosed: boolean
  /** What should be seen to as the machine is closed up or sold, in whole sentences. */
  readonly warnings: readonly string[]
  /** The covers that are off, in a sentence; empty where all are on. */
  readonly coversOff: string
  /** How many counted fixings there are that come away: all that were taken are in exactly one of the other four. */
  readonly balance: Readonly<Record<'taken' | 'back' | 'kept' | 'leftOver' | 'unknown', number>>
}

/** What was taken apart, what comes next, what goes back and what would be left over, from the notes that stand. */
export const stripView = (notes: readonly Note[], blueprint: Blueprint): StripView => {
  const state = foldNotes(notes)
  const events = standing(notes).flatMap((note) => eventOf(note, blueprint))
  const moves = events.filter((event): event is Moved => event.way !== 'gone')
  const ledger = fixingLedger(events)
  const staying = stayingLedger(events)
  const photos = machinePhotos(notes)
  const step = (moved: Moved): StripStep => ({ ...moved, photos: photosOf(photos, moved.note) })
  const away = awayNow(moves, state.off, state.out)
  const order = backOrder(blueprint, away)
  return {
    next: stripOrder(blueprint)
      .filter((piece) => !isAway(piece, blueprint, away))
      .filter(({ kind, id }) => kind === 'cover' || !state.missing.includes(id))
      .map((piece) => nextPiece(piece, blueprint, state.off, moves, staying)),
    away: order.map((moved) => awayPiece(step(moved), away, blueprint, ledger, staying)),
    done: moves.map(step),
    kept: keptByPlace(ledger.kept),
    staying: staying.open,
    leftOver: leftOverOf(ledger.leftOver, moves),
    notClosed: leftOverOf(staying.notClosed, moves),
    deviations: deviationsOf(moves, blueprint),
    notCounted: notCounted(ledger, staying, uncountedHeld(order, ledger, blueprint)),
    isClosed: state.off.length === 0,
    warnings: stripWarnings(ledger, staying, order),
    coversOff: coversOffText(order),
    balance: balanceOf(ledger),
  }
}

/** What a note does to a piece and its fixings. What went to the shelf took along whatever held it, uncounted. */
const eventOf = (note: Note, blueprint: Blueprint): readonly LedgerEvent[] => {
  const moved = movedOf(note, blueprint)
  if (moved !== null) return [moved]
  const { id, at, content } = note
  if (content.kind !== 'took-off') return []
  const piece = pieceOf(blueprint, 'part', content.part)
  return [{ note: id, at, piece, way: 'gone', fixings: null, leftOverIn: [], minutes: content.minutes, text: '' }]
}

/** The step by which each piece that is away now came away last, in that order. */
const awayNow = (moves: readonly Moved[], off: readonly string[], out: readonly string[]): readonly Moved[] => {
  const last = new Map<string, Moved>()
  for (const moved of moves) {
    const key = pieceKey(moved.piece)
    last.delete(key)
    if (moved.way === 'away') last.set(key, moved)
  }
  return [...last.values()].filter(({ piece }) => (piece.kind === 'cover' ? off : out).includes(piece.id))
}

/** Away by its own step, with a cover that carries it out, or within a part that is out. */
const isAway = ({ kind, id }: Pick<Piece, 'kind' | 'id'>, blueprint: Blueprint, away: readonly Moved[]): boolean => {
  if (away.some(({ piece }) => piece.kind === kind && piece.id === id)) return true
  if (kind === 'cover') return false
  if (away.some(({ piece }) => piece.kind === 'cover' && liftedOutWith[piece.id] === id)) return true
  const within = blueprint.parts.find((part) => part.id === id)?.within
  return within !== undefined && away.some(({ piece }) => piece.kind === 'part' && piece.id === within)
}

const photosOf = (photos: readonly MachinePhoto[], note: string): readonly MachinePhoto[] =>
  photos.filter(({ about }) => about.kind === 'note' && about.note === note)

const nextPiece = (
  piece: Piece,
  blueprint: Blueprint,
  off: readonly string[],
  moves: readonly Moved[],
  { notClosed }: StayingLedger,
): NextPiece => {
  const cover = piece.kind === 'cover' ? blueprint.covers.find(({ id }) => id === piece.id) : undefined
  const part = piece.kind === 'part' ? blueprint.parts.find(({ id }) => id === piece.id) : undefined
  const lastBack = moves.findLast((moved) => pieceKey(moved.piece) === pieceKey(piece) && moved.fixings !== null)
  // What was not closed is still there to be let go.
  const open = notClosed.filter((lot) => pieceKey(lot.piece) === pieceKey(piece))
  const wentIn = lastBack?.fixings ?? null
  const lastTime = wentIn === null ? null : added(wentIn, open.map(fixingOf))
  const known = lastTime ?? cover?.fixings.map((fixing) => ({ ...fixing, place: '' })) ?? null
  return {
    piece,
    after: coversBefore(blueprint, piece, off),
    fixings: known,
    fixingsFrom: lastBack === undefined ? (cover === undefined ? 'nobody' : 'blueprint') : 'last-time',
    minutes: cover?.openMin ?? 0,
    hint: cover?.hint ?? part?.note ?? null,
    cautions: cautionsFor(piece, blueprint).map(({ text }) => text),
  }
}

/** A cover has the cautions of what is behind it. */
const cautionsFor = ({ kind, id }: Piece, blueprint: Blueprint): readonly StripCaution[] => {
  const parts = kind === 'part' ? [id] : blueprint.parts.filter(({ behind }) => behind === id).map((part) => part.id)
  return stripCautions.filter((caution) => caution.parts.some((part) => parts.includes(part)))
}

const awayPiece = (
  step: StripStep,
  away: readonly Moved[],
  blueprint: Blueprint,
  { kept, leftOver, uncounted }: Ledger,
  { open }: StayingLedger,
): AwayPiece => {
  const key = pieceKey(step.piece)
  const isCounted = !uncounted.has(key)
  const own = (lots: readonly Lot[]): readonly Fixing[] =>
    lots.filter(({ piece }) => pieceKey(piece) === key).map(fixingOf)
  const cover = step.piece.kind === 'cover' ? blueprint.covers.find(({ id }) => id === step.piece.id) : undefined
  return {
    ...step,
    kept: [...own(kept), ...(isCounted ? own(open) : [])],
    isCounted,
    leftOver: own(leftOver),
    before: goBackBefore(blueprint, step.piece, away).map(({ piece }) => piece),
    minutesBack: cover?.closeMin ?? step.minutes,
    cameSo: cover?.hint ?? null,
    cautions: cautionsFor(step.piece, blueprint).flatMap(({ text, back = text }) => (back === null ? [] : [back])),
  }
}

/** What is away uncounted, but for covers that nothing holds by the blueprint. */
const uncountedHeld = (away: readonly Moved[], { uncounted }: Ledger, { covers }: Blueprint): readonly Piece[] =>
  away
    .map(({ piece }) => piece)
    .filter((piece) => uncounted.has(pieceKey(piece)))
    .filter(({ kind, id }) => kind === 'part' || covers.find((cover) => cover.id === id)?.fixings.length !== 0)

/** Fixings with more of them, each to those of its kind and place where there are some. */
const added = (fixings: readonly Fixing[], more: readonly Fixing[]): readonly Fixing[] =>
  more.reduce<readonly Fixing[]>((all, one) => {
    const at = all.findIndex(({ kind, place }) => kind === one.kind && place === one.place)
    return at === -1
      ? [...all, one]
      : all.map((each, i) => (i === at ? { ...each, count: each.count + one.count } : each))
  }, fixings)

const fixingOf = ({ count, kind, place }: Lot): Fixing => ({ count, kind, place })

const leftOverOf = (lots: readonly Lot[], moves: readonly Moved[]): readonly LeftOver[] =>
  [...new Set(lots.map(({ piece }) => pieceKey(piece)))].flatMap((key) => {
    const own = lots.filter(({ piece }) => pieceKey(piece) === key)
    const last = moves.findLast((moved) => pieceKey(moved.piece) === key)
    const closing = last?.way === 'back' ? last : null
    return own[0] === undefined ? [] : [{ piece: own[0].piece, fixings: own.map(fixingOf), closing }]
  })

const balanceOf = ({ taken, back, kept, leftOver, unknown }: Ledger): StripView['balance'] => {
  const sum = (lots: readonly Lot[]): number => lots.reduce((total, { count }) => total + count, 0)
  return { taken, back, kept: sum(kept), leftOver: sum(leftOver), unknown: sum(unknown) }
}
