/** The value within which so large a share of them lies. */
export const percentile = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.max(0, Math.ceil(values.length * share) - 1)] ?? NaN

/** The time in milliseconds within which nineteen of twenty runs end, the first one left out. */
export const p95 = async (work: () => unknown, runs: number): Promise<number> => {
  await work()
  const taken: number[] = []
  for (let i = 0; i < runs; i++) {
    const began = performance.now()
    await work()
    taken.push(performance.now() - began)
  }
  return percentile(taken, 0.95)
}

/** The same for two ways of one thing, by turns, so that whatever else the computer does meanwhile holds up both alike. */
export const p95OfBoth = async (
  ours: () => unknown,
  theirs: () => unknown,
  runs: number,
): Promise<{ readonly p95Ms: number; readonly bareMs: number }> => {
  const taken: [number[], number[]] = [[], []]
  for (let i = 0; i <= runs; i++) {
    for (const [which, work] of [ours, theirs].entries()) {
      const began = performance.now()
      await work()
      // The first run of each is left out.
      if (i > 0) taken[which].push(performance.now() - began)
    }
  }
  return { p95Ms: percentile(taken[0], 0.95), bareMs: percentile(taken[1], 0.95) }
}
