/** Reads the summary of a log; of one that is as it was when it was read last, gives back what was read then. */
export type KnownSummaries = (kind: string, rank: number, text: string) => unknown

type Known = { readonly text: string; readonly value: unknown }

/** Summaries that are kept: some megabytes. A list is often asked for again after one of its logs has changed. */
const mostSummaries = 1000

/** Keeps those that were read last. */
export const makeKnownSummaries = (most = mostSummaries): KnownSummaries => {
  const summaries = new Map<string, Known>()
  return (kind, rank, text) => {
    const key = `${kind} ${rank}`
    const before = summaries.get(key)
    if (before?.text === text) return before.value
    const value = JSON.parse(text) as unknown
    summaries.delete(key)
    summaries.set(key, { text, value })
    const [oldest] = summaries.keys()
    if (summaries.size > most && oldest !== undefined) summaries.delete(oldest)
    return value
  }
}
