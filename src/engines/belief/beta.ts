// Lanczos approximation, g = 7, nine terms (Godfrey's coefficients, from memory; checked against factorials).
const lanczos = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
]

/** ln Γ(x) for x > 0. */
export const logGamma = (x: number): number => {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x)
  const at = x - 1
  const base = at + 7.5
  const series = lanczos.reduce((sum, term, i) => (i === 0 ? term : sum + term / (at + i)), 0)
  return 0.5 * Math.log(2 * Math.PI) + (at + 0.5) * Math.log(base) - base + Math.log(series)
}

/**
 * Probability that a Beta(a, b) variable is at most x (the regularised incomplete beta function), for a, b > 0.
 * Continued fraction by Lentz's method (Abramowitz & Stegun 26.5.8).
 */
export const betaAtMost = (x: number, a: number, b: number): number => {
  if (x <= 0) return 0
  if (x >= 1) return 1
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x))
  const isLow = x < (a + 1) / (a + b + 2)
  return isLow ? (front * betaFraction(x, a, b)) / a : 1 - (front * betaFraction(1 - x, b, a)) / b
}

const tiny = 1e-300
const mostTerms = 1000

const betaFraction = (x: number, a: number, b: number): number => {
  const held = (value: number): number => (Math.abs(value) < tiny ? tiny : value)
  let c = 1
  let d = 1 / held(1 - ((a + b) * x) / (a + 1))
  let fraction = d
  const step = (numerator: number): number => {
    d = 1 / held(1 + numerator * d)
    c = held(1 + numerator / c)
    fraction *= d * c
    return d * c
  }
  for (let m = 1; m <= mostTerms; m++) {
    step((m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)))
    const change = step((-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)))
    if (Math.abs(change - 1) < 1e-15) return fraction
  }
  return fraction
}

const halvings = 80
const lowestLog = -700

/** The x below which a Beta(a, b) variable falls with probability p. Halves an interval of ln x, so small quantiles keep their figures. */
export const betaQuantile = (p: number, a: number, b: number): number => {
  let low = lowestLog
  let high = 0
  for (let i = 0; i < halvings; i++) {
    const middle = (low + high) / 2
    if (betaAtMost(Math.exp(middle), a, b) < p) low = middle
    else high = middle
  }
  return Math.exp((low + high) / 2)
}
