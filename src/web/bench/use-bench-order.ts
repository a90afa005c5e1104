import { useState } from 'react'
import { benchOrder, type BenchOrder } from '../../bench/next-hour.ts'
import type { BenchRow } from './use-bench-views.ts'

export type ShownOrder = {
  /** Null while nothing is ordered yet. */
  readonly order: BenchOrder | null
  /** Some answers are there that the order shown does not heed. */
  readonly canOrderNow: boolean
  readonly orderNow: () => void
  /** Spread on the lists: nothing moves under a finger that is down. */
  readonly touch: {
    readonly onPointerDown: () => void
    readonly onPointerUp: () => void
    readonly onPointerCancel: () => void
    readonly onPointerLeave: () => void
  }
}

/** The order of the bench, which changes only once all answers are in, or when it is asked for. */
export const useBenchOrder = (rows: readonly BenchRow[]): ShownOrder => {
  const [shown, setShown] = useState<BenchOrder | null>(null)
  const [touched, setTouched] = useState(false)
  const now = benchOrder(rows.map(({ machine, offer }) => ({ id: machine.id, currency: machine.currency, offer })))
  const differs = JSON.stringify(now) !== JSON.stringify(shown)
  const allIn = rows.length > 0 && rows.every(({ done }) => done)
  // Set while drawing, so that what is known already is never drawn in another order first.
  if (allIn && differs && !touched) setShown(now)
  const answered = rows.filter(({ offer }) => offer !== null).length
  const letGo = (): void => setTouched(false)
  return {
    order: shown,
    canOrderNow: !allIn && answered > 1 && differs,
    orderNow: () => setShown(now),
    touch: {
      onPointerDown: () => setTouched(true),
      onPointerUp: letGo,
      onPointerCancel: letGo,
      onPointerLeave: letGo,
    },
  }
}
