const rootTwoPi = Math.sqrt(2 * Math.PI)

/** Density of the standard normal distribution. */
export const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / rootTwoPi

// Coefficients of Hart's rational approximation 5666, highest power first.
const above = [
  3.52624965998911e-2, 0.700383064443688, 6.37396220353165, 33.912866078383, 112.079291497871, 221.213596169931,
  220.206867912376,
]
const below = [
  8.83883476483184e-2, 1.75566716318264, 16.064177579207, 86.7807322029461, 296.564248779674, 637.333633378831,
  793.826512519948, 440.413735824752,
]
const polynomialUpTo = 7.07106781186547
const hopelessBeyond = 38

/**
 * Probability that a standard normal variable is above z. Absolute error below 1e-15; relative error in the upper tail below 1e-7.
 * Method: Hart et al., Computer Approximations (1968), 5666, in the form of West, Better approximations to cumulative
 * normal functions (2005); coefficients from memory, checked against tabled values.
 */
export const normalAbove = (z: number): number => {
  const size = Math.abs(z)
  const tail = size > hopelessBeyond ? 0 : tailBeyond(size)
  return z > 0 ? tail : 1 - tail
}

const tailBeyond = (size: number): number => {
  const bell = Math.exp(-0.5 * size * size)
  if (size < polynomialUpTo) return (bell * polynomial(above, size)) / polynomial(below, size)
  let fraction = size + 0.65
  for (let k = 4; k >= 1; k--) fraction = size + k / fraction
  return bell / (fraction * rootTwoPi)
}

const polynomial = (coefficients: readonly number[], x: number): number => {
  let sum = 0
  for (const coefficient of coefficients) sum = sum * x + coefficient
  return sum
}

/** Probability that a standard normal variable lies between `from` and `to`, without cancellation in either tail. */
export const normalBetween = (from: number, to: number): number =>
  from > 0 ? normalAbove(from) - normalAbove(to) : normalAbove(-to) - normalAbove(-from)
