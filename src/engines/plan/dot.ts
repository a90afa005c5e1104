/** Sum of products. Four sums side by side, because one chain of additions is what a plain loop waits for. */
export const dot = (a: Float64Array, b: Float64Array): number => {
  const whole = a.length - (a.length % 4)
  let s0 = 0
  let s1 = 0
  let s2 = 0
  let s3 = 0
  let i = 0
  for (; i < whole; i += 4) {
    s0 += a[i] * b[i]
    s1 += a[i + 1] * b[i + 1]
    s2 += a[i + 2] * b[i + 2]
    s3 += a[i + 3] * b[i + 3]
  }
  for (; i < a.length; i++) s0 += a[i] * b[i]
  return s0 + s1 + (s2 + s3)
}

/** Writes the products of `a` and `b` into `into`, which may be either; gives back their sum. */
export const multiply = (into: Float64Array, a: Float64Array, b: Float64Array): number => {
  const whole = a.length - (a.length % 4)
  let s0 = 0
  let s1 = 0
  let s2 = 0
  let s3 = 0
  let i = 0
  for (; i < whole; i += 4) {
    s0 += into[i] = a[i] * b[i]
    s1 += into[i + 1] = a[i + 1] * b[i + 1]
    s2 += into[i + 2] = a[i + 2] * b[i + 2]
    s3 += into[i + 3] = a[i + 3] * b[i + 3]
  }
  for (; i < a.length; i++) s0 += into[i] = a[i] * b[i]
  return s0 + s1 + (s2 + s3)
}
