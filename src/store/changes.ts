import type { BenchId } from '../bench/contract.ts'
import type { Change, Changes } from '../bench/ports.ts'

/** Of more logs than these, written in one go, it is told that everything may have changed. */
export const mostByName = 50

/** Who listens in this program, and how to tell them. */
export type Listeners = Changes & {
  readonly tell: (bench: BenchId, change: Change) => void
  /** Everything may have changed, on every bench. */
  readonly tellAll: () => void
  readonly someone: () => boolean
}

/** Listeners by bench. `whenFirst` is called when the first one comes, `whenLast` when the last one has gone. */
export const makeListeners = (whenFirst: () => void = () => {}, whenLast: () => void = () => {}): Listeners => {
  const heard = new Set<{ readonly bench: BenchId; readonly listener: (change: Change) => void }>()
  return {
    subscribe: (bench, listener) => {
      const one = { bench, listener }
      heard.add(one)
      if (heard.size === 1) whenFirst()
      return () => {
        if (heard.delete(one) && heard.size === 0) whenLast()
      }
    },
    tell: (bench, change) => [...heard].forEach((one) => one.bench === bench && one.listener(change)),
    tellAll: () => [...heard].forEach(({ listener }) => listener({ kind: 'everything' })),
    someone: () => heard.size > 0,
  }
}
