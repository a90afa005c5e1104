/** The value within which so large a share of them lies. */
export const percentile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.max(0, Math.ceil(values.length * share) - 1)] ?? NaN

/**
 * What two ways of one thing take: the time within which nineteen of twenty runs end, and the one in the middle; and the processor time of
 * this program, in the middle, which tells more where much else runs on the computer.
 */
export type Taken = {
  readonly p95Ms: number
  readonly bareMs: number
  readonly medianMs: number
  readonly bareMedianMs: number
  readonly cpuMs: number
  readonly bareCpuMs: number
}

/** A question that takes long is asked no more often than so long allows, and so many times at the least. */
const patienceMs = 10_000
const fewestRuns = 20

/** The same for two ways of one thing, by turns, so that whatever else the computer does meanwhile holds up both alike. */
export const p95OfBoth = async (ours: () => unknown, theirs: () => unknown, runs: number): Promise<Taken> => {
  const taken: [number[], number[]] = [[], []]
  const cpu: [number[], number[]] = [[], []]
  const until = performance.now() + patienceMs
  for (let i = 0; i <= runs && (i <= fewestRuns || performance.now() < until); i++) {
    for (const [which, work] of [ours, theirs].entries()) {
      const [began, cpuBefore] = [performance.now(), cpuNowMs()]
      await work()
      // The first run of each is left out.
      if (i === 0) continue
      taken[which].push(performance.now() - began)
      cpu[which].push(cpuNowMs() - cpuBefore)
    }
  }
  const [p95Ms, bareMs] = taken.map((each) => percentile(each, 0.95))
  const [medianMs, bareMedianMs] = taken.map((each) => percentile(each, 0.5))
  const [cpuMs, bareCpuMs] = cpu.map((each) => percentile(each, 0.5))
  return { p95Ms, bareMs, medianMs, bareMedianMs, cpuMs, bareCpuMs }
}

const cpuNowMs = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}
