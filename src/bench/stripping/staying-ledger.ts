import { staysInPlace } from '../../facts/fixing-kinds.ts'
import type { LedgerEvent, Lot } from './fixing-ledger.ts'
import { pieceKey } from './pieces.ts'

/**
 * Fixings that stay on the machine, such as catches: `open` while their piece is away, `notClosed` where it went back without them,
 * `unknown` where nobody said as it went back. Letting its piece go again begins anew.
 */
export type StayingLedger = {
  readonly open: readonly Lot[]
  readonly notClosed: readonly Lot[]
  readonly unknown: readonly Lot[]
}

type OfAPiece = { readonly lots: readonly Lot[]; readonly how: 'open' | 'not-closed' | 'unknown' }

/** Follows the counted fixings that stay in place through what happened, in the order of the log. */
export const stayingLedger = (events: readonly LedgerEvent[]): StayingLedger => {
  const pieces = new Map<string, OfAPiece>()
  for (const event of events) {
    const key = pieceKey(event.piece)
    const next = after(pieces.get(key) ?? { lots: [], how: 'open' }, event)
    pieces.delete(key)
    if (next.lots.length > 0) pieces.set(key, next)
  }
  const all = (how: OfAPiece['how']): readonly Lot[] =>
    [...pieces.values()].flatMap((one) => (one.how === how ? one.lots : []))
  return { open: all('open'), notClosed: all('not-closed'), unknown: all('unknown') }
}

const after = (before: OfAPiece, { piece, way, fixings }: LedgerEvent): OfAPiece => {
  if (way === 'gone') return { lots: [], how: 'open' }
  const staying = fixings?.filter(({ kind }) => staysInPlace(kind)).map((fixing) => ({ ...fixing, piece })) ?? null
  if (way === 'away') return { lots: staying ?? before.lots, how: 'open' }
  if (staying === null) return { lots: before.lots, how: 'unknown' }
  return { lots: without(before.lots, staying), how: 'not-closed' }
}

/** What is left of these lots once so many of each kind are taken off them. */
const without = (lots: readonly Lot[], off: readonly Lot[]): readonly Lot[] => {
  const wanted = new Map<string, number>()
  for (const { kind, count } of off) wanted.set(kind, (wanted.get(kind) ?? 0) + count)
  return lots.flatMap((lot) => {
    const taken = Math.min(lot.count, wanted.get(lot.kind) ?? 0)
    wanted.set(lot.kind, (wanted.get(lot.kind) ?? 0) - taken)
    return taken === lot.count ? [] : [{ ...lot, count: lot.count - taken }]
  })
}
