import { heatRatio, standardAir } from '../../facts/air.ts'
import { expansibility2003 } from '../../facts/orifice.ts'
import { fanLaw, type FanLaw } from './fan-curve.ts'
import type { AirBranch } from './schema.ts'

/** The air around the machine, as the laws need it. */
export type Surroundings = { readonly pressurePa: number; readonly densityKgPerM3: number }

/** A branch made ready: its constants in the surroundings at hand. */
export type BranchLaw =
  | { readonly kind: 'loss'; readonly linear: number; readonly quadratic: number; readonly thins: boolean }
  | { readonly kind: 'hole'; readonly perRootPa: number }
  | { readonly kind: 'fan'; readonly law: FanLaw; readonly density: number; readonly atInlet: boolean }

/** Flow of a branch and its derivatives: by the pressures at its ends, and by the logarithms of its scale and speed. */
export type BranchFlow = { q: number; byFrom: number; byTo: number; byScale: number; bySpeed: number }

export const emptyFlow = (): BranchFlow => ({ q: 0, byFrom: 0, byTo: 0, byScale: 0, bySpeed: 0 })

/**
 * Part of the root law that is straight, so that its slope is finite where nothing flows, as in a sealed hose: it takes a twenty-thousandth
 * of the flow at 1 Pa, and a millionth at 1 kPa. So slow a flow is laminar, and straight indeed.
 */
const straightShare = 1e-4
/** The same for a hole, in Pa. */
const straightPa = 1e-4

export const branchLaw = (branch: AirBranch, air: Surroundings, thins: boolean): BranchLaw => {
  switch (branch.kind) {
    case 'loss': {
      const quadratic = (branch.quadraticPaS2PerM6 * air.densityKgPerM3) / standardAir.densityKgPerM3
      return { kind: 'loss', linear: branch.linearPaSPerM3 + straightShare * Math.sqrt(quadratic), quadratic, thins }
    }
    case 'hole':
      return {
        kind: 'hole',
        perRootPa: branch.discharge * branch.areaM2 * Math.sqrt(2 / (air.pressurePa * air.densityKgPerM3)),
      }
    case 'fan':
      return {
        kind: 'fan',
        law: fanLaw(branch.curve),
        density: air.densityKgPerM3 / branch.densityKgPerM3,
        atInlet: branch.airflowAs === 'inlet',
      }
  }
}

/**
 * Writes the flow of a branch, counted as air of the room in m³/s, into `out`. Pressures absolute in Pa.
 * A scale multiplies the loss of a loss, the area of a hole, the pressure of a fan; speed counts for fans only.
 */
export const writeFlow = (
  branch: BranchLaw,
  air: Surroundings,
  scale: number,
  speed: number,
  fromPa: number,
  toPa: number,
  out: BranchFlow,
): void => {
  switch (branch.kind) {
    case 'loss':
      return writeLoss(branch, air, scale, fromPa, toPa, out)
    case 'hole':
      return writeHole(branch.perRootPa * scale, fromPa, toPa, out)
    case 'fan':
      return writeFan(branch, air, scale, speed, fromPa, toPa, out)
  }
}

/** Isothermal flow: (p1² − p2²)/2p0 = a q + b q², which is p1 − p2 at the density midway. */
const writeLoss = (
  { linear, quadratic, thins }: Extract<BranchLaw, { kind: 'loss' }>,
  { pressurePa }: Surroundings,
  scale: number,
  fromPa: number,
  toPa: number,
  out: BranchFlow,
): void => {
  const drop = thins ? ((fromPa - toPa) * (fromPa + toPa)) / (2 * pressurePa) : fromPa - toPa
  const a = linear * scale
  const steepness = Math.sqrt(a * a + 4 * quadratic * scale * Math.abs(drop))
  out.q = (2 * drop) / (a + steepness)
  out.byFrom = (thins ? fromPa / pressurePa : 1) / steepness
  out.byTo = -(thins ? toPa / pressurePa : 1) / steepness
  out.byScale = -drop / steepness
  out.bySpeed = 0
}

/** q = K ε √(p1 (p1 − p2)) with p1 the higher pressure; the root straightened below a ten-thousandth of a pascal. */
const writeHole = (perRootPa: number, fromPa: number, toPa: number, out: BranchFlow): void => {
  const inward = fromPa >= toPa
  const high = inward ? fromPa : toPa
  const low = inward ? toPa : fromPa
  const x = high - low
  const w = x * x + straightPa * straightPa
  const root = x / Math.sqrt(Math.sqrt(w))
  const rootSlope = (1 - (x * x) / (2 * w)) / Math.sqrt(Math.sqrt(w))
  const ratio = low / high
  const powered = ratio ** (1 / heatRatio.value)
  const epsilon = 1 - expansibility2003.a * (1 - powered)
  const byRatio = (expansibility2003.a * powered) / (heatRatio.value * ratio)
  const rootHigh = Math.sqrt(high)
  const byHigh = perRootPa * ((root * (epsilon / 2 - byRatio * ratio)) / rootHigh + epsilon * rootHigh * rootSlope)
  const byLow = perRootPa * ((root * byRatio) / rootHigh - epsilon * rootHigh * rootSlope)
  const size = perRootPa * epsilon * rootHigh * root
  out.q = inward ? size : -size
  out.byFrom = inward ? byHigh : -byLow
  out.byTo = inward ? byLow : -byHigh
  out.byScale = out.q
  out.bySpeed = 0
}

/** Fan laws: flow as speed, pressure as density times speed squared. */
const writeFan = (
  { law, density, atInlet }: Extract<BranchLaw, { kind: 'fan' }>,
  { pressurePa }: Surroundings,
  scale: number,
  speed: number,
  fromPa: number,
  toPa: number,
  out: BranchFlow,
): void => {
  const thinned = atInlet ? fromPa / pressurePa : 1
  const gain = speed * speed * density * scale * thinned
  const asked = (toPa - fromPa) / gain
  const flow = law.airflow(asked)
  const slope = law.slope(asked)
  const perPa = (thinned * speed * slope) / gain
  out.q = thinned * speed * flow
  out.byTo = perPa
  out.byFrom = -perPa + (atInlet ? (speed * (flow - slope * asked)) / pressurePa : 0)
  out.byScale = -thinned * speed * slope * asked
  out.bySpeed = out.q + 2 * out.byScale
}
