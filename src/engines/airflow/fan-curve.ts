import type { FanCurve } from './schema.ts'

/** Flow of a fan at reference speed and density by the suction it has to give, and the slope of that. Falls strictly. */
export type FanLaw = {
  readonly airflow: (suctionPa: number) => number
  readonly slope: (suctionPa: number) => number
}

/** The law behind a curve. Suctions beyond the sealed one give a flow backwards, so that the law is defined everywhere. */
export const fanLaw = (curve: FanCurve): FanLaw => {
  switch (curve.kind) {
    case 'power':
      return powerLaw(curve.sealedPa, curve.openM3PerS, curve.exponent)
    case 'points':
      return pointsLaw(curve.points)
  }
}

/** Smooths the corner where the flow ends; 1e-8 of the sealed suction. */
const corner = 1e-16

/** flow = open · u^(1/n) with u = 1 − suction/sealed. */
const powerLaw = (sealedPa: number, openM3PerS: number, exponent: number): FanLaw => {
  const e = 1 / exponent - 1
  return {
    airflow: (suctionPa) => {
      const u = 1 - suctionPa / sealedPa
      return openM3PerS * u * (u * u + corner) ** (e / 2)
    },
    slope: (suctionPa) => {
      const u = 1 - suctionPa / sealedPa
      const w = u * u + corner
      return (-openM3PerS / sealedPa) * w ** (e / 2) * (1 + (e * u * u) / w)
    },
  }
}

type Point = { readonly airflowM3PerS: number; readonly suctionPa: number }

/** Slopes at the ends are kept off zero, so that the curve goes on falling beyond its points. */
const leastEndSlope = 0.1

/** A monotone cubic through points (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980, in the form with harmonic means). */
const pointsLaw = (given: readonly Point[]): FanLaw => {
  const points = [...given].sort((a, b) => a.suctionPa - b.suctionPa)
  const h = points.map(({ suctionPa }) => suctionPa)
  const q = points.map(({ airflowM3PerS }) => airflowM3PerS)
  const secant = h.slice(1).map((next, i) => (q[i + 1] - q[i]) / (next - h[i]))
  const last = h.length - 1
  const slopes = h.map((_, i) => {
    if (i === 0) return endSlope(secant[0], secant[1] ?? secant[0])
    if (i === last) return endSlope(secant[last - 1], secant[last - 2] ?? secant[last - 1])
    return (2 * secant[i - 1] * secant[i]) / (secant[i - 1] + secant[i])
  })
  const pieceOf = (suctionPa: number): number => {
    let i = 0
    while (i < last - 1 && suctionPa > h[i + 1]) i++
    return i
  }
  return {
    airflow: (suctionPa) => {
      if (suctionPa <= h[0]) return q[0] + slopes[0] * (suctionPa - h[0])
      if (suctionPa >= h[last]) return q[last] + slopes[last] * (suctionPa - h[last])
      const i = pieceOf(suctionPa)
      const width = h[i + 1] - h[i]
      const t = (suctionPa - h[i]) / width
      const a = q[i] * (1 + 2 * t) * (1 - t) ** 2 + q[i + 1] * t * t * (3 - 2 * t)
      return a + width * t * (1 - t) * (slopes[i] * (1 - t) - slopes[i + 1] * t)
    },
    slope: (suctionPa) => {
      if (suctionPa <= h[0]) return slopes[0]
      if (suctionPa >= h[last]) return slopes[last]
      const i = pieceOf(suctionPa)
      const t = (suctionPa - h[i]) / (h[i + 1] - h[i])
      return 6 * t * (1 - t) * secant[i] + slopes[i] * (1 - t) * (1 - 3 * t) + slopes[i + 1] * t * (3 * t - 2)
    },
  }
}

/** Half as far again from the next secant as from the own one, within a tenth and three times the own one. */
const endSlope = (own: number, next: number): number =>
  Math.min(leastEndSlope * own, Math.max(3 * own, 1.5 * own - 0.5 * next))
