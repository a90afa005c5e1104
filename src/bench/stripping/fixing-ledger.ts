import { pieceKey, type Moved, type Piece } from './pieces.ts'
import type { Fixing } from './strip-note.ts'

/** Fixings of one kind that came away with a piece and are kept in one place. */
export type Lot = Fixing & { readonly piece: Piece }

/**
 * Where every counted fixing is. All that was `taken` is in exactly one of the other four: it went `back`, it is `kept` while its piece is
 * away, it is `leftOver` though its piece is back, or it is `unknown` since nobody counted as the piece went back.
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

/** Follows the counted fixings through what happened, in the order of the log. */
export const fixingLedger = (events: readonly LedgerEvent[]): Ledger => {
  const book = new Book()
  for (const event of events) book.enter(event)
  return book.result()
}

class Book {
  #taken = 0
  #back = 0
  #held: Lot[] = []
  readonly #unknown: Lot[] = []
  readonly #beyond: Lot[] = []
  readonly #away = new Set<string>()
  readonly #counted = new Set<string>()

  enter({ piece, way, fixings }: LedgerEvent): void {
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
  }

  result(): Ledger {
    const isAway = ({ piece }: Lot): boolean => this.#away.has(pieceKey(piece))
    return {
      taken: this.#taken,
      back: this.#back,
      kept: this.#held.filter(isAway),
      leftOver: this.#held.filter((lot) => !isAway(lot)),
      unknown: this.#unknown,
      beyond: this.#beyond,
      uncounted: new Set([...this.#away].filter((key) => !this.#counted.has(key))),
    }
  }

  #take(lot: Lot): void {
    this.#taken += lot.count
    this.#held.push(lot)
  }

  #loseCount(key: string): void {
    this.#unknown.push(...this.#held.filter(({ piece }) => pieceKey(piece) === key))
    this.#held = this.#held.filter(({ piece }) => pieceKey(piece) !== key)
  }

  /** Out of the piece's own, first from the place that is named; then out of what is left over from pieces that are back. */
  #putBack(fixing: Lot): void {
    const key = pieceKey(fixing.piece)
    const isOwn = ({ piece }: Lot): boolean => pieceKey(piece) === key
    let count = fixing.count
    count = this.#draw(count, (lot) => isOwn(lot) && lot.kind === fixing.kind && lot.place === fixing.place)
    count = this.#draw(count, (lot) => isOwn(lot) && lot.kind === fixing.kind)
    // One that came away uncounted has its own fixings, which nobody took down: they are not what is left over elsewhere.
    if (this.#counted.has(key))
      count = this.#draw(count, (lot) => !this.#away.has(pieceKey(lot.piece)) && lot.kind === fixing.kind)
    if (count > 0) this.#beyond.push({ ...fixing, count })
  }

  /** Takes up to so many out of the lots that fit, the oldest first. Gives how many are still wanted. */
  #draw(count: number, fits: (lot: Lot) => boolean): number {
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
