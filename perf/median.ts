/** Median of so many runs in milliseconds, the first one left out. */
export const medianMs = (work: () => unknown, times: number): number => {
  work()
  const taken = Array.from({ length: times }, () => {
    const began = performance.now()
    work()
    return performance.now() - began
  })
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)]
}
