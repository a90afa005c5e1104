import { Matrix, solve } from 'ml-matrix'
import { peakPoints } from '../../facts/air-power.ts'

/** One point of a machine's curve: what passes, at what suction. */
export type AirPoint = { readonly airflowM3PerS: number; readonly suctionPa: number }

/**
 * - `peak`: the largest air power, its airflow and suction, and how many points the parabola went through.
 * - `no-peak`: why there is none, and what to measure.
 */
export type AirPowerPeak =
  | {
      readonly kind: 'peak'
      readonly airPowerW: number
      readonly airflowM3PerS: number
      readonly suctionPa: number
      readonly points: number
    }
  | { readonly kind: 'no-peak'; readonly reason: string; readonly mend: string }

/** Air power in W: suction times airflow. */
export const airPowerW = ({ airflowM3PerS, suctionPa }: AirPoint): number => airflowM3PerS * suctionPa

const fewest = 3

/**
 * The largest air power by a parabola of air power against airflow through the five points around the largest (fewer if there are
 * fewer, at least three). It must lie between those points. Based on the customary method, from memory.
 */
export const airPowerPeak = (given: readonly AirPoint[]): AirPowerPeak => {
  const points = [...given].sort((a, b) => a.airflowM3PerS - b.airflowM3PerS)
  if (new Set(points.map(({ airflowM3PerS }) => airflowM3PerS)).size < fewest) {
    return none('Fewer than three different airflows', 'Read the suction at three holes at least, from 10 to 30 mm')
  }
  const used = aroundLargest(points)
  const scale = used[used.length - 1].airflowM3PerS
  const [constant, slope, bend] = parabola(used, scale)
  const at = -slope / (2 * bend)
  const inside = bend < 0 && at >= used[0].airflowM3PerS / scale && at <= 1
  if (!inside) return outside(used, points)
  const airflowM3PerS = at * scale
  const peakW = constant + slope * at + bend * at * at
  return { kind: 'peak', airPowerW: peakW, airflowM3PerS, suctionPa: peakW / airflowM3PerS, points: used.length }
}

const none = (reason: string, mend: string): AirPowerPeak => ({ kind: 'no-peak', reason, mend })

/** The points around the largest air power, as many before it as behind it where there are such. */
const aroundLargest = (points: readonly AirPoint[]): readonly AirPoint[] => {
  const powers = points.map(airPowerW)
  const largest = powers.indexOf(Math.max(...powers))
  const count = Math.min(peakPoints.count, points.length)
  const first = Math.min(Math.max(0, largest - Math.floor(count / 2)), points.length - count)
  return points.slice(first, first + count)
}

/** Least squares; airflow in units of the largest so that the equations are well scaled. */
const parabola = (points: readonly AirPoint[], scale: number): readonly number[] => {
  const x = points.map(({ airflowM3PerS }) => airflowM3PerS / scale)
  const rows = new Matrix(x.map((value) => [1, value, value * value]))
  return solve(rows, Matrix.columnVector(points.map(airPowerW)), true).to1DArray()
}

const outside = (used: readonly AirPoint[], all: readonly AirPoint[]): AirPowerPeak => {
  const powers = used.map(airPowerW)
  const rising = powers[powers.length - 1] > powers[0]
  if (rising && used[used.length - 1] === all[all.length - 1]) {
    return none('Air power still rises at the largest hole', 'Add a larger hole')
  }
  if (!rising && used[0] === all[0]) return none('Air power still rises at the smallest hole', 'Add a smaller hole')
  return none('The points do not lie on a curve with one summit', 'Read them again, the largest hole first')
}
