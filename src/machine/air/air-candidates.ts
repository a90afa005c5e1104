import { gaugeMinutes, holesBeforeSealed, middleHole } from '../../facts/air-rig.ts'
import { usualGauge } from '../../facts/gauges.ts'
import { tapsOf, type GaugeCandidate } from './air-fit.ts'
import type { AirMachine } from './air-machine.ts'
import { capital, setUpText } from './air-text.ts'
import type { GaugeOpening, GaugeReading } from './gauge-reading.ts'

type SetUp = Omit<GaugeReading, 'read'>

const hole = (diameterM: number): GaugeOpening => ({
  kind: 'hole',
  diameterM,
  thicknessM: 0.001,
  edgeRadiusM: 0,
  make: 'drilled-sheet',
})

/**
 * Readings that could be made next: every hole of the rig at each way in, sealed too, the path tapped further in, and a part left out.
 * Those that were made already are left out.
 * @param holesM holes of the rig, m
 * @param last the set-up read last: its way needs no refitting, and its gauge is in hand
 */
export const gaugeCandidates = (
  machine: AirMachine,
  holesM: readonly number[],
  made: readonly SetUp[],
): readonly GaugeCandidate[] => {
  const last = made.at(-1)
  const instrument = last?.instrument ?? usualGauge
  const known = new Set(made.map(keyOf))
  // Sealed heats the motor, and heat moves what is read after it: it comes after the first holes.
  const isWarmedUp = made.length >= holesBeforeSealed.count
  const openings: readonly GaugeOpening[] = [...(isWarmedUp ? [{ kind: 'sealed' } as const] : []), ...holesM.map(hole)]
  const middle = hole(nearest(holesM, middleHole.diameterM))
  const setUps = machine.paths.ways.flatMap((one): SetUp[] => {
    const plain = { way: one.way.id, out: [], instrument }
    const outs = machine.comesOut.filter((part) => one.parts.includes(part))
    const isMain = one === machine.paths.ways[0]
    return [
      ...openings.map((opening) => ({ ...plain, opening })),
      ...(isMain ? tapsOf(one, machine.paths).map(({ part }) => ({ ...plain, opening: middle, tapBefore: part })) : []),
      ...(isMain ? outs.map((part) => ({ ...plain, opening: middle, out: [part] })) : []),
    ]
  })
  return setUps
    .filter((setUp) => !known.has(keyOf(setUp)))
    .map((reading) => ({
      id: keyOf(reading),
      name: capital(setUpText(reading, machine.blueprint)),
      minutes: minutesOf(reading, last?.way ?? machine.paths.ways[0].way.id),
      reading,
    }))
}

const nearest = (all: readonly number[], wanted: number): number =>
  all.reduce((best, one) => (Math.abs(one - wanted) < Math.abs(best - wanted) ? one : best), all[0] ?? wanted)

/** Readings of one key are the same set-up, whatever the gauge. */
const keyOf = ({ way, opening, tapBefore, out }: SetUp): string =>
  [way, opening.kind === 'hole' ? opening.diameterM : opening.kind, tapBefore ?? '', [...out].sort().join('+')].join(
    ' ',
  )

const minutesOf = ({ way, tapBefore, out }: SetUp, lastWay: string): number =>
  gaugeMinutes.value +
  (way === lastWay ? 0 : gaugeMinutes.otherWay) +
  (tapBefore === undefined ? 0 : gaugeMinutes.tapped) +
  out.length * gaugeMinutes.partOut
