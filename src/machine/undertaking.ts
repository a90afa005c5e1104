import type { MoveView } from './view.ts'

/** A check or a way of repair that could come next, with the covers it puts back and takes off, in order. */
export type Undertaking = {
  readonly kind: 'check' | 'repair'
  /** The check's id, or the repair's and the option's as `repair:option`. */
  readonly id: string
  readonly close: readonly string[]
  readonly open: readonly string[]
}

/** A move as an undertaking; null for an exit. */
export const undertakingOf = (move: MoveView): Undertaking | null => {
  if (move.kind === 'exit') return null
  const [close, open] = [move.close, move.open].map((steps) => steps.map(({ id }) => id))
  return { kind: move.kind, id: move.kind === 'check' ? move.id : `${move.repair}:${move.option}`, close, open }
}
