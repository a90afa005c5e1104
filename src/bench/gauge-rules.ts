import { problem, type Problem } from '../base/problem.ts'
import { gauges } from '../facts/gauges.ts'
import { strongestSuction } from '../facts/suction-classes.ts'
import {
  airMachineOf,
  runningBarred,
  suctionText,
  tapsOf,
  usualInstruments,
  type AirMachine,
  type GaugeReading,
} from '../machine/index.ts'
import type { Job } from '../machine/job.ts'
import { coverName } from './cover-rules.ts'
import { unknownId } from './unknown.ts'
import { listText } from './words.ts'

/** What is wrong with a gauge reading as it is entered: names that are not there, a gauge at its end, a machine that must not run. */
export const gaugeProblems = (reading: GaugeReading, job: Job): readonly Problem[] => {
  const machine = airMachineOf(job.blueprint, job.plate)
  if (machine.kind === 'refused') return machine.problems
  return [
    ...wayProblems(machine.value, reading),
    ...instrumentProblems(reading),
    ...valueProblems(reading),
    ...runningProblems(job),
  ]
}

const wayProblems = ({ paths, comesOut }: AirMachine, { way, tapBefore, out }: GaugeReading): readonly Problem[] => {
  const found = paths.ways.find((one) => one.way.id === way)
  if (found === undefined) {
    const known = paths.ways.map((one) => one.way.id)
    return [unknownId('way in', 'reading.way', way, known)]
  }
  const taps = tapsOf(found, paths).map(({ part }) => part)
  const outs = comesOut.filter((part) => found.parts.includes(part))
  return [
    ...(tapBefore === undefined || taps.includes(tapBefore)
      ? []
      : [unknownId('place to tap', 'reading.tapBefore', tapBefore, taps)]),
    ...out.flatMap((part, i) =>
      outs.includes(part) ? [] : [unknownId('part that comes out', `reading.out.${i}`, part, outs)],
    ),
  ]
}

const measures = { suction: 'suction', airflow: 'airflow', tone: 'speed' } as const

const instrumentProblems = ({ instrument, read }: GaugeReading): readonly Problem[] => {
  const fitting = usualInstruments.filter((one) => one.measures === measures[read.measure]).map(({ id }) => id)
  return fitting.includes(instrument) ? [] : [unknownId('gauge for this', 'reading.instrument', instrument, fitting)]
}

const valueProblems = ({ read, instrument, opening, tapBefore }: GaugeReading): readonly Problem[] => {
  switch (read.measure) {
    case 'suction':
      return [
        ...suctionProblems(read.suctionPa, instrument),
        ...(opening.kind === 'open' && tapBefore === undefined ? [openEnd] : []),
      ]
    case 'airflow':
      return opening.kind === 'sealed' ? [sealedFlow] : read.airflowM3PerS === 0 ? [nothingDrawn] : []
    case 'tone': {
      const ratio = read.toneHz / read.soundHz
      return ratio < 0.4 || ratio > 1.6 ? [notTheSameTone] : []
    }
  }
}

const suctionProblems = (suctionPa: number, instrument: string): readonly Problem[] => {
  if (suctionPa === 0) return [nothingDrawn]
  if (suctionPa > strongestSuction.pressurePa) {
    const what = `${suctionText(suctionPa)} is more than the fan of any vacuum cleaner gives (${suctionText(strongestSuction.pressurePa)})`
    return [problem('too-strong', 'reading.read', what, 'Check the unit and the point')]
  }
  const gauge = gauges.find(({ id }) => id === instrument)
  const end = gauge?.fullScalePa ?? Infinity
  if (gauge !== undefined && suctionPa < gauge.stepPa / 2) return [lessThanItShows(suctionPa, gauge.stepPa)]
  if (suctionPa < end) return []
  const what = `The gauge is at its end (${suctionText(end)}), so the true suction may be any beyond it`
  return [problem('end-of-scale', 'reading.read', what, 'Read it with a gauge that goes further, or use a larger hole')]
}

const lessThanItShows = (suctionPa: number, stepPa: number): Problem =>
  problem(
    'less-than-it-shows',
    'reading.read',
    `${Number(suctionPa.toPrecision(2))} Pa is less than this gauge can show: it reads to about ${stepPa} Pa`,
    'Check the unit: kPa was probably meant',
  )

const nothingDrawn = problem(
  'nothing-drawn',
  'reading.read',
  'A reading of 0 says that nothing is drawn at all',
  'Check that the machine runs and the rig sits tight; if it does not run, enter that as a run check',
)
const openEnd = problem(
  'open-end',
  'reading.opening',
  'At an open end there is no suction to read',
  'Put a plate on the rig, or say where in the machine the gauge taps',
)
const sealedFlow = problem(
  'sealed-flow',
  'reading.opening',
  'Nothing flows where the rig is sealed',
  'Say through what hole the air went',
)
const notTheSameTone = problem(
  'not-the-same-tone',
  'reading.read',
  'The two pitches are too far apart for one motor: one is probably that of its blades or of a half of it',
  'Compare the same tone of both, an octave up or down',
)

const runningProblems = (job: Job): readonly Problem[] => {
  const off = job.off.map((id) => coverName(job.blueprint, id))
  const barred = runningBarred(job)
  return [
    ...(off.length === 0
      ? []
      : [
          problem(
            'covers-off',
            'reading',
            `A gauge reads the running machine, and the ${listText(off)} ${off.length === 1 ? 'is' : 'are'} off`,
            'Close all covers first: nothing is run with a cover off',
          ),
        ]),
    ...(barred.length === 0
      ? []
      : [
          problem(
            'running-barred',
            'reading',
            `A gauge reads the running machine, and it must not be run yet: ${barred.join('; ')}`,
            'With the plug out, mend what was not passed and make the checks named',
          ),
        ]),
  ]
}
