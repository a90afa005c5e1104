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
