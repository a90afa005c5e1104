/** How slips are counted: `free` of them cost nothing, then each doubles the wait, from the first to the longest. */
export type ThrottleRules = {
  readonly free: number
  readonly firstWaitSeconds: number
  readonly longestWaitSeconds: number
  readonly forgottenAfterSeconds: number
}

export type Throttle = {
  /** Seconds until another try is let in; 0 when it is now. */
  readonly waitSeconds: (key: string) => number
  readonly slipped: (key: string) => void
  readonly succeeded: (key: string) => void
}

type Slips = { readonly count: number; readonly lastMs: number; readonly notBeforeMs: number }

/** More addresses than a home or a shop has; the one that slipped longest ago is forgotten first, so memory stays bounded. */
const mostKeys = 5000

/** Slows guessing down by key, such as an address. `nowMs`: a clock in milliseconds. */
export const makeThrottle = (rules: ThrottleRules, nowMs: () => number): Throttle => {
  const slips = new Map<string, Slips>()
  const known = (key: string): Slips | undefined => {
    const found = slips.get(key)
    if (found === undefined || nowMs() - found.lastMs <= rules.forgottenAfterSeconds * 1000) return found
    slips.delete(key)
    return undefined
  }
  return {
    waitSeconds: (key) => Math.max(0, Math.ceil(((known(key)?.notBeforeMs ?? 0) - nowMs()) / 1000)),
    slipped: (key) => {
      const count = (known(key)?.count ?? 0) + 1
      const doublings = Math.min(count - rules.free - 1, 30)
      const wait = doublings < 0 ? 0 : Math.min(rules.firstWaitSeconds * 2 ** doublings, rules.longestWaitSeconds)
      slips.delete(key)
      slips.set(key, { count, lastMs: nowMs(), notBeforeMs: nowMs() + wait * 1000 })
      const [oldest] = slips.keys()
      if (slips.size > mostKeys && oldest !== undefined) slips.delete(oldest)
    },
    succeeded: (key) => void slips.delete(key),
  }
}

/** A bucket of requests by key that fills again: lets in `burst` at once and `perSecond` for good. */
export const makeBucket = ({ burst, perSecond }: { burst: number; perSecond: number }, nowMs: () => number) => {
  const buckets = new Map<string, { readonly left: number; readonly atMs: number }>()
  /** Seconds to wait; 0 when it is let in. */
  return (key: string): number => {
    const { left, atMs } = buckets.get(key) ?? { left: burst, atMs: nowMs() }
    const now = Math.min(burst, left + ((nowMs() - atMs) / 1000) * perSecond)
    buckets.delete(key)
    buckets.set(key, { left: now >= 1 ? now - 1 : now, atMs: nowMs() })
    const [oldest] = buckets.keys()
    if (buckets.size > mostKeys && oldest !== undefined) buckets.delete(oldest)
    return now >= 1 ? 0 : Math.ceil((1 - now) / perSecond)
  }
}
