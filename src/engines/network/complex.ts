/** A complex number, in the unit that its place names. */
export type Complex = { readonly re: number; readonly im: number }

export const zero: Complex = { re: 0, im: 0 }
export const complex = (re: number, im = 0): Complex => ({ re, im })
export const polar = (size: number, phaseRad: number): Complex =>
  phaseRad === 0 ? complex(size) : complex(size * Math.cos(phaseRad), size * Math.sin(phaseRad))
export const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im })
export const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im })
export const size = (a: Complex): number => Math.hypot(a.re, a.im)
export const isZero = (a: Complex): boolean => a.re === 0 && a.im === 0

/** a / b by Smith's method, which neither overflows nor underflows on the way (Smith 1962, Algorithm 116). */
export const over = (a: Complex, b: Complex): Complex => {
  if (Math.abs(b.re) >= Math.abs(b.im)) {
    const ratio = b.im / b.re
    const scale = b.re + b.im * ratio
    return { re: (a.re + a.im * ratio) / scale, im: (a.im - a.re * ratio) / scale }
  }
  const ratio = b.re / b.im
  const scale = b.re * ratio + b.im
  return { re: (a.re * ratio + a.im) / scale, im: (a.im * ratio - a.re) / scale }
}
