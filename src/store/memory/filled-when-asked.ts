import type { BenchStores } from '../../bench/ports.ts'

/**
 * Stores that are filled at the first question, once; whoever asks meanwhile waits for it too. Where the filling throws, so does every
 * question. `fill` writes to the stores themselves, not through these.
 */
export const filledWhenAsked = ({ notes, logs, books }: BenchStores, fill: () => Promise<void>): BenchStores => {
  let filling: Promise<void> | undefined
  const filled = (): Promise<void> => (filling ??= fill())
  return { notes: afterwards(notes, filled), logs: afterwards(logs, filled), books: afterwards(books, filled) }
}

type Ask = (...asked: readonly unknown[]) => Promise<unknown>

/** The same port, each of whose questions waits first. */
const afterwards = <Port extends object>(port: Port, first: () => Promise<void>): Port =>
  Object.fromEntries(
    Object.entries(port as Record<string, Ask>).map(([name, ask]) => [
      name,
      async (...asked: readonly unknown[]) => {
        await first()
        return ask(...asked)
      },
    ]),
  ) as Port
