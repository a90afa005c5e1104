/** ln Σ exp(a[i] + b[i]) without overflow or underflow; −Infinity when every term vanishes. */
export const logSumOfSums = (a: Float64Array, b: Float64Array): number => {
  let most = -Infinity
  for (let i = 0; i < a.length; i++) most = Math.max(most, a[i] + b[i])
  if (most === -Infinity) return most
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += Math.exp(a[i] + b[i] - most)
  return most + Math.log(sum)
}

/** ln Σ exp(a[i]). */
export const logSum = (a: Float64Array): number => {
  let most = -Infinity
  for (let i = 0; i < a.length; i++) most = Math.max(most, a[i])
  if (most === -Infinity) return most
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += Math.exp(a[i] - most)
  return most + Math.log(sum)
}

/** ln(exp(a) + exp(b)). */
export const logAdd = (a: number, b: number): number => {
  const most = Math.max(a, b)
  if (most === -Infinity) return most
  return most + Math.log1p(Math.exp(Math.min(a, b) - most))
}
