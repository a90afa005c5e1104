import { chamberPipes, drills, sheets, tapPlace } from '../../facts/air-rig.ts'
import { standardAir } from '../../facts/air.ts'
import { thickHole, weakHole } from '../../facts/orifice.ts'
import {
  plainPlate,
  plateAreaM2,
  plateDischarge,
  plateFlow,
  roomAirOf,
  solveAir,
  type AirBranch,
  type FanCurve,
  type Plate,
  type PlateFlow,
} from '../../engines/airflow/index.ts'

const { pressurePa, densityKgPerM3 } = standardAir
const standard = { kind: 'given', pressurePa, densityKgPerM3 } as const
const air = roomAirOf(standard)
const perMm = 1e-3

/** A machine as the rig sees it: its fan, and the loss of the hose before it (0 for none). */
export type RigMachine = { readonly curve: FanCurve; readonly hosePaS2PerM6: number }

/** What a hole is expected to show. */
export type RigPoint = {
  readonly diameterMm: number
  readonly suctionPa: number
  readonly airflowM3PerS: number
  readonly airPowerW: number
  /** Relative standard uncertainty of the airflow for how the hole was made. */
  readonly airflowUncertainty: number
  readonly remarks: readonly string[]
}

/** Airflow with nothing before the hose, m³/s. */
export const openAirflow = (machine: RigMachine): number =>
  // The room's air goes straight into the hose: a machine without a hose moves what its fan does against nothing.
  machine.hosePaS2PerM6 === 0 && machine.curve.kind === 'power'
    ? machine.curve.openM3PerS
    : solved(machine, [], 'room').airflowM3PerS['fan']

/** What a machine of this kind shows at a hole, in standard air. */
export const pointAt = (machine: RigMachine, diameterMm: number, thicknessMm: number): RigPoint => {
  const plate = plainPlate(`${diameterMm} mm`, diameterMm * perMm, { thicknessM: thicknessMm * perMm })
  const suctionPa = -solved(machine, [holeOf(plate)], 'rig').pressurePa['rig']
  const flow: PlateFlow = plateFlow(plate, suctionPa, air)
  const { airflowM3PerS, airPowerW, airflowUncertainty, remarks } = flow
  return { diameterMm, suctionPa, airflowM3PerS, airPowerW, airflowUncertainty, remarks }
}

const holeOf = (plate: Plate): AirBranch => ({
  kind: 'hole',
  id: 'hole',
  from: 'room',
  to: 'rig',
  areaM2: plateAreaM2(plate),
  discharge: plateDischarge(plate),
})

const solved = ({ curve, hosePaS2PerM6 }: RigMachine, before: readonly AirBranch[], mouth: string) => {
  const inlet = hosePaS2PerM6 > 0 ? 'inlet' : mouth
  const hose: readonly AirBranch[] =
    inlet === mouth
      ? []
      : [{ kind: 'loss', id: 'hose', from: mouth, to: inlet, linearPaSPerM3: 0, quadraticPaS2PerM6: hosePaS2PerM6 }]
  const fan: AirBranch = {
    kind: 'fan',
    id: 'fan',
    from: inlet,
    to: 'room',
    curve,
    densityKgPerM3,
    airflowAs: 'room',
    speed: 1,
    pressure: 1,
  }
  const answer = solveAir({
    air: standard,
    losses: 'local-density',
    branches: [...before, ...hose, fan],
  })
  if (answer.kind !== 'solved') throw new Error(`the air of a rig is ${answer.kind}`)
  return answer
}

/** Width of the sharp hole that passes this airflow at this suction, mm. */
export const widthFor = (airflowM3PerS: number, suctionPa: number): number => {
  const tryMm = 20
  const flow = plateFlow(plainPlate('try', tryMm * perMm), suctionPa, air)
  return tryMm * Math.sqrt(airflowM3PerS / flow.airflowM3PerS)
}

type DrillKind = Exclude<keyof typeof drills, 'source'>
const drillKinds: readonly DrillKind[] = ['twist', 'step', 'saw']

/** The tool for a hole of this width: the first that makes it. */
export const drillFor = (diameterMm: number): string => {
  const kind = drillKinds.find((one) => sizesOf(one).includes(diameterMm))
  if (kind === undefined) throw new RangeError(`no drill of ${diameterMm} mm`)
  return drills[kind].name
}

const sizesOf = (kind: DrillKind): readonly number[] => {
  const { firstMm, lastMm, stepMm } = drills[kind]
  return Array.from({ length: Math.round((lastMm - firstMm) / stepMm) + 1 }, (_, i) => firstMm + i * stepMm)
}

const allWidthsMm: readonly number[] = [...new Set(drillKinds.flatMap(sizesOf))].sort((a, b) => a - b)

/** The thickest sheet that leaves a hole of this width as good as sharp, mm. */
export const thickestSheet = (diameterMm: number): number => {
  const fits = sheets.thicknessMm.filter((one) => one <= thickHole.thinUpTo * diameterMm)
  return Math.max(...fits, sheets.thicknessMm[0])
}

/**
 * Holes for a machine: the narrowest chamber in which two of them pass more air than the one of most air power, and in it those
 * whose airflows divide the curve, from sealed to open, into the most even steps.
 * @param count how many holes; fewer come back where drills or the machine allow no more
 */
export const chooseHoles = (machine: RigMachine, count: number) => {
  const openM3PerS = openAirflow(machine)
  const choices = chamberPipes.sizes.map((pipe) => {
    const widest = pipe.boreMm / (2 * tapPlace.offAxisDiameters)
    const usable = allWidthsMm
      .filter((mm) => mm >= weakHole.belowM / perMm && mm <= widest)
      .map((mm) => pointAt(machine, mm, 0))
      .filter((point) => point.suctionPa >= weakHole.belowPa)
    return { pipe, points: evenSteps(usable, Math.min(count, usable.length), openM3PerS) }
  })
  const chosen = choices.find(({ points }) => pastSummit(points) >= 2) ?? choices[choices.length - 1]
  return { ...chosen, openM3PerS }
}

const pastSummit = (points: readonly RigPoint[]): number => {
  const powers = points.map(({ airPowerW }) => airPowerW)
  return points.length - 1 - powers.indexOf(Math.max(...powers))
}

/** Points in order of airflow, and the squares of the steps so far. */
type Chain = { readonly cost: number; readonly points: readonly RigPoint[] }

/**
 * The points, in order of airflow, for which the squares of the steps from sealed to open sum to the least: the steps are then as
 * even as the drills allow. Shortest path, a point longer each round. Empty when there are fewer points than asked for.
 */
export const evenSteps = (usable: readonly RigPoint[], count: number, openM3PerS: number): readonly RigPoint[] => {
  const step = (from: number, to: number): number => ((to - from) / openM3PerS) ** 2
  let chains: readonly Chain[] = [{ cost: 0, points: [] }]
  for (let length = 1; length <= count; length++) {
    chains = usable.flatMap((point) => {
      const before = chains.filter((chain) => lastAirflow(chain) < point.airflowM3PerS)
      return cheapest(
        before.map((chain) => ({
          cost: chain.cost + step(lastAirflow(chain), point.airflowM3PerS),
          points: [...chain.points, point],
        })),
      )
    })
  }
  const whole = chains.map((chain) => ({ ...chain, cost: chain.cost + step(lastAirflow(chain), openM3PerS) }))
  return cheapest(whole)[0]?.points ?? []
}

/** Sealed, nothing flows. */
const lastAirflow = ({ points }: Chain): number => points.at(-1)?.airflowM3PerS ?? 0

/** The cheapest chain, or none of none. */
const cheapest = (chains: readonly Chain[]): readonly Chain[] =>
  chains.length === 0 ? [] : [chains.reduce((best, one) => (one.cost < best.cost ? one : best))]
