import { staysInPlace } from '../../facts/fixing-kinds.ts'
import { pieceKey, type Moved, type Piece } from './pieces.ts'
import type { Fixing } from './strip-note.ts'

/** Fixings of one kind that came away with a piece and are kept in one place. */
export type Lot = Fixing & { readonly piece: Piece }

/**
 * Where every counted fixing is that comes away. All that was `taken` is in exactly one of the other four: it went `back`, it is `kept`
 * while its piece is away, it is `leftOver` since its piece went back without it, or it is `unknown` since nobody counted as the piece
 * went back. What is left over stays so, whatever happens to its piece, until it went in.
 */
export type Ledger = {
  readonly taken: number
  readonly back: number
  readonly kept: readonly Lot[]
  readonly leftOver: readonly Lot[]
  readonly unknown: readonly Lot[]
  /** Went back without having come away: a new screw, or one that nobody counted before. */
  readonly beyond: readonly Lot[]
  /** Keys of the pieces that came away last without anybody counting. */
  readonly uncounted: ReadonlySet<string>
}

/** Something that happened to a piece; `gone`: it went to the shelf, and nobody counted what went with it. */
export type LedgerEvent = Omit<Moved, 'way'> & { readonly way: Moved['way'] | 'gone' }

/** Follows the counted fixings that come away through what happened, in the order of the log. */
export const fixingLedger = (events: readonly LedgerEvent[]): Ledger => {
  const book = new Book()
  for (const event of events) book.enter({ ...event, fixings: event.fixings?.filter(comesAway) ?? null })
  return book.result()
}

const comesAway = ({ kind }: Fixing): boolean => !staysInPlace(kind)

type Held = Lot & { readonly isOver: boolean }
const lotOf = ({ count, kind, place, piece }: Held): Lot => ({ count, kind, place, piece })

class Book {
  #taken = 0
  #back = 0
  #held: Held[] = []
  readonly #unknown: Lot[] = []
  readonly #beyond: Lot[] = []
  readonly #away = new Set<string>()
  readonly #counted = new Set<string>()

  enter({ piece, way, fixings, leftOverIn }: LedgerEvent): void {
    const key = pieceKey(piece)
    if (way === 'away') {
      this.#away.add(key)
      if (fixings === null) this.#counted.delete(key)
      else this.#counted.add(key)
      for (const fixing of fixings ?? []) this.#take({ ...fixing, piece })
      return
    }
    this.#away.delete(key)
    if (way === 'gone' || fixings === null) this.#loseCount(key)
    else for (const fixing of fixings) this.#putBack({ ...fixing, piece })
    for (const fixing of leftOverIn) this.#putIn({ ...fixing, piece })
    this.#held = this.#held.map((lot) => (pieceKey(lot.piece) === key ? { ...lot, isOver: true } : lot))
  }

  result(): Ledger {
    const lots = (isOver: boolean): readonly Lot[] => this.#held.filter((lot) => lot.isOver === isOver).map(lotOf)
    return {
      taken: this.#taken,
      back: this.#back,
      kept: lots(false),
      leftOver: lots(true),
      unknown: this.#unknown,
      beyond: this.#beyond,
      uncounted: new Set([...this.#away].filter((key) => !this.#counted.has(key))),
    }
  }

  #take(lot: Lot): void {
    this.#taken += lot.count
    this.#held.push({ ...lot, isOver: false })
  }

  #loseCount(key: string): void {
    const isLost = ({ piece, isOver }: Held): boolean => !isOver && pieceKey(piece) === key
    this.#unknown.push(...this.#held.filter(isLost).map(lotOf))
    this.#held = this.#held.filter((lot) => !isLost(lot))
  }

  /** Out of what came away with the piece, first from the place that is named; then out of what is left over. */
  #putBack(fixing: Lot): void {
    const key = pieceKey(fixing.piece)
    const isOwn = ({ piece, isOver }: Held): boolean => !isOver && pieceKey(piece) === key
    let count = fixing.count
    count = this.#draw(count, (lot) => isOwn(lot) && lot.kind === fixing.kind && lot.place === fixing.place)
    count = this.#draw(count, (lot) => isOwn(lot) && lot.kind === fixing.kind)
    // One that came away uncounted has its own fixings, which nobody took down: they are not what is left over.
    if (this.#counted.has(key)) count = this.#drawLeftOver(count, fixing)
    if (count > 0) this.#beyond.push({ ...fixing, count })
  }

  /** Out of what is left over alone: what is said to have been so goes in first of all. */
  #putIn(fixing: Lot): void {
    const count = this.#drawLeftOver(fixing.count, fixing)
    if (count > 0) this.#beyond.push({ ...fixing, count })
  }

  /** The piece's own first. */
  #drawLeftOver(count: number, { piece, kind }: Lot): number {
    const key = pieceKey(piece)
    const fits = (lot: Held): boolean => lot.isOver && lot.kind === kind
    const rest = this.#draw(count, (lot) => fits(lot) && pieceKey(lot.piece) === key)
    return this.#draw(rest, fits)
  }

  /** Takes up to so many out of the lots that fit, the oldest first. Gives how many are still wanted. */
  #draw(count: number, fits: (lot: Held) => boolean): number {
    let wanted = count
    this.#held = this.#held.flatMap((lot) => {
      const drawn = fits(lot) ? Math.min(wanted, lot.count) : 0
      wanted -= drawn
      return drawn === lot.count ? [] : [{ ...lot, count: lot.count - drawn }]
    })
    this.#back += count - wanted
    return wanted
  }
}

/** Fixings of one kind added up, whatever piece and place they are of, in the order in which they first come. */
export const byKind = (
  fixings: readonly Pick<Fixing, 'count' | 'kind'>[],
): readonly Pick<Fixing, 'count' | 'kind'>[] => {
  const counts = new Map<string, number>()
  for (const { kind, count } of fixings) counts.set(kind, (counts.get(kind) ?? 0) + count)
  return [...counts].map(([kind, count]) => ({ count, kind }))
}
