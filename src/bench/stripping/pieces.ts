import type { Blueprint } from '../../blueprint/schema.ts'
import type { Note, NoteContent } from '../note.ts'
import { coversToOpen } from '../reach.ts'
import type { Fixing } from './strip-note.ts'

/** What comes off a machine or out of it. */
export type Piece = { readonly kind: 'cover' | 'part'; readonly id: string; readonly name: string }

type MovedContent = Extract<NoteContent, { kind: 'opened' | 'closed' | 'taken-out' | 'put-in' }>

/** A note of a piece that came away or went back. */
export type Moved = {
  readonly note: string
  readonly at: string
  readonly piece: Piece
  readonly way: 'away' | 'back'
  /** Null where nobody counted. */
  readonly fixings: readonly Fixing[] | null
  /** Fixings left over before that went in with it. */
  readonly leftOverIn: readonly Fixing[]
  readonly minutes: number
  readonly text: string
}

/** The same piece, whatever it is called. */
export const pieceKey = ({ kind, id }: Pick<Piece, 'kind' | 'id'>): string => `${kind} ${id}`

/** A cover or part by its id; its id stands for its name where this blueprint does not know it. */
export const pieceOf = (blueprint: Blueprint, kind: Piece['kind'], id: string): Piece => {
  const all = kind === 'cover' ? blueprint.covers : blueprint.parts
  return { kind, id, name: all.find((one) => one.id === id)?.name ?? id }
}

/** What a note moved; null for a note of anything else. */
export const movedOf = ({ id, at, content }: Note, blueprint: Blueprint): Moved | null => {
  if (!isMoved(content)) return null
  const isCover = content.kind === 'opened' || content.kind === 'closed'
  return {
    note: id,
    at,
    piece: isCover ? pieceOf(blueprint, 'cover', content.cover) : pieceOf(blueprint, 'part', content.part),
    way: content.kind === 'opened' || content.kind === 'taken-out' ? 'away' : 'back',
    fixings: content.fixings ?? null,
    leftOverIn: 'leftOverIn' in content ? (content.leftOverIn ?? []) : [],
    minutes: content.minutes,
    text: content.text ?? '',
  }
}

const isMoved = (content: NoteContent): content is MovedContent =>
  content.kind === 'opened' || content.kind === 'closed' || content.kind === 'taken-out' || content.kind === 'put-in'

/**
 * All covers and parts in an order in which they can come away: a cover after those that come off before it, a part after the
 * cover that it is behind. Apart from that in the order of the blueprint; what is behind no cover comes first.
 */
export const stripOrder = (blueprint: Blueprint): readonly Piece[] => {
  const partsBehind = (cover: string | undefined): readonly Piece[] =>
    blueprint.parts.filter(({ behind }) => behind === cover).map(({ id, name }) => ({ kind: 'part', id, name }))
  const opened: string[] = []
  const covers = blueprint.covers.flatMap(({ id }) => {
    const steps = coversToOpen(blueprint, id, opened)
    opened.push(...steps.map((step) => step.id))
    return steps.flatMap((step) => [pieceOf(blueprint, 'cover', step.id), ...partsBehind(step.id)])
  })
  return [...partsBehind(undefined), ...covers]
}

/** The covers that must still come off before this piece can, in order; none when it can come away now. */
export const coversBefore = (
  blueprint: Blueprint,
  { kind, id }: Pick<Piece, 'kind' | 'id'>,
  off: readonly string[],
): readonly Piece[] => {
  const cover = kind === 'cover' ? id : blueprint.parts.find((part) => part.id === id)?.behind
  if (cover === undefined) return []
  return coversToOpen(blueprint, cover, off)
    .filter((one) => kind === 'part' || one.id !== id)
    .map((one) => pieceOf(blueprint, 'cover', one.id))
}

/** Of these pieces, those that go back before this one: the covers that came off after it, and the parts behind it. */
export const goBackBefore = <T extends { readonly piece: Piece }>(
  blueprint: Blueprint,
  { kind, id }: Piece,
  away: readonly T[],
): readonly T[] =>
  kind === 'part'
    ? []
    : away.filter(({ piece }) =>
        piece.kind === 'cover'
          ? piece.id !== id && coversToOpen(blueprint, piece.id, []).some((one) => one.id === id)
          : coversToOpen(blueprint, behindOf(blueprint, piece.id), []).some((one) => one.id === id),
      )

const behindOf = (blueprint: Blueprint, part: string): string =>
  blueprint.parts.find(({ id }) => id === part)?.behind ?? ''

/**
 * The order in which pieces go back: the last that came away first. Where notes were struck out, that alone may not be possible;
 * then what must go back before a piece goes before it.
 * @param away the pieces in the order in which they came away
 */
export const backOrder = <T extends { readonly piece: Piece }>(
  blueprint: Blueprint,
  away: readonly T[],
): readonly T[] => {
  const left = [...away]
  const order: T[] = []
  while (left.length > 0) {
    const free = left.findLastIndex(({ piece }) => goBackBefore(blueprint, piece, left).length === 0)
    order.push(...left.splice(free === -1 ? left.length - 1 : free, 1))
  }
  return order
}
