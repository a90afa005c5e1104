import { airQuantityFromText, type AirQuantity } from '../base/air-units.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import { gaugeMinutes } from '../facts/air-rig.ts'
import { toneGauge, usualGauge, vaneGauge } from '../facts/gauges.ts'
import { holeMakes } from '../facts/orifice.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { jobOf } from '../bench/job.ts'
import type { NoteContentInput } from '../bench/note.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { virtualGauge, type GaugeReading } from '../machine/index.ts'
import { shareFromPercent } from './percent-option.ts'
import type { Options } from './with-bench.ts'

/** What `thrum gauge` takes besides the machine and the reading. */
export const gaugeOptions = {
  at: ['--at <way>', 'where the rig sits: a way in of the blueprint; left out, its first'],
  hole: ['--hole <diameter>', 'the hole the machine breathes through, such as 19mm; left out, sealed'],
  open: ['--open', 'nothing on the end of the hose'],
  tap: ['--tap <part>', 'the gauge taps the path before this part'],
  without: ['--without <parts...>', 'parts left out of the path, such as bag'],
  gauge: ['--gauge <id>', 'the gauge; left out, that for the unit'],
  thickness: ['--thickness <length>', 'thickness of the plate'],
  edge: ['--edge <length>', 'radius of the hole’s edge on the room’s side'],
  make: ['--make <how>', `how the hole was made: ${Object.keys(holeMakes).join(', ')}`],
  beside: ['--beside <Hz>', 'the same tone of a sound machine, where the reading is the pitch of the motor in Hz'],
  mains: ['--mains <voltage>', 'mains voltage meanwhile'],
  watts: ['--watts <power>', 'what the power meter showed meanwhile'],
  barometer: ['--barometer <pressure>', 'barometer at the bench, with --temperature'],
  temperature: ['--temperature <temperature>', 'temperature at the bench'],
  humidity: ['--humidity <percent>', 'relative humidity, such as 55'],
  minutes: ['--minutes <number>', 'minutes it took'],
} as const

/** The set-up of a reading as written on the command line. Refused where a quantity is none. */
const setUpFrom = (blueprint: Blueprint, options: Options): Result<Omit<GaugeReading, 'read' | 'instrument'>> => {
  const problems: Problem[] = []
  const text = (name: string): string | undefined => {
    const value = options[name]
    return typeof value === 'string' ? value : undefined
  }
  const take = <T>(read: Result<T>, otherwise: T): T => {
    if (read.kind === 'ok') return read.value
    problems.push(...read.problems)
    return otherwise
  }
  const air = (name: string, quantity: AirQuantity, otherwise: number): number => {
    const given = text(name)
    return given === undefined ? otherwise : take(airQuantityFromText(given, quantity, `--${name}`), otherwise)
  }
  const hole = text('hole')
  const watts = text('watts')
  const setUp = {
    way: text('at') ?? blueprint.airWays[0]?.id ?? '',
    opening:
      hole === undefined
        ? { kind: options['open'] === undefined ? ('sealed' as const) : ('open' as const) }
        : {
            kind: 'hole' as const,
            diameterM: air('hole', 'lengthM', 0),
            thicknessM: air('thickness', 'lengthM', 0.001),
            edgeRadiusM: air('edge', 'lengthM', 0),
            make: (text('make') ?? 'drilled-sheet') as 'drilled-sheet',
          },
    ...(text('tap') === undefined ? {} : { tapBefore: text('tap') }),
    out: Array.isArray(options['without']) ? options['without'] : [],
    ...(text('mains') === undefined ? {} : { mainsV: air('mains', 'voltageV', 0) }),
    ...(watts === undefined ? {} : { inputW: take(quantityFromText(watts, 'powerW', '--watts'), 0) }),
    ...roomOf(text('barometer') !== undefined || text('temperature') !== undefined, () => ({
      barometerPa: air('barometer', 'pressurePa', 101_325),
      temperatureC: air('temperature', 'temperatureC', 20),
      relativeHumidity: take(shareFromPercent(text('humidity') ?? '50', '--humidity'), 0.5),
    })),
  }
  return problems.length > 0 ? refused(...problems) : ok(setUp)
}

const roomOf = (given: boolean, room: () => NonNullable<GaugeReading['room']>) => (given ? { room: room() } : {})

/** A gauge reading as a note: what was shown with its unit, in the set-up of the options; on a virtual machine none takes it. */
export const gaugeNote = (
  { state, notes }: MachineDocument,
  blueprint: Blueprint | undefined,
  written: string | undefined,
  options: Options,
): Result<NoteContentInput> => {
  if (blueprint === undefined) return refused(noReading)
  const setUp = setUpFrom(blueprint, options)
  if (setUp.kind === 'refused') return setUp
  const own = options['gauge']
  if (written !== undefined) {
    const shown = shownBy(written, options)
    if (shown.kind === 'refused') return shown
    const { read, instrument } = shown.value
    return noteOf({ ...setUp.value, read, instrument: typeof own === 'string' ? own : instrument }, options)
  }
  if (state.practiceSeed === null) return refused(noReading)
  const instrument = typeof own === 'string' ? own : usualGauge
  const reading = virtualGauge(jobOf(state, notes, blueprint), state.practiceSeed, { ...setUp.value, instrument })
  return reading === null ? refused(doesNotTurn) : noteOf(reading, options)
}

const noReading = problem(
  'no-reading',
  'reading',
  'No reading was given',
  'Write what the gauge shows, such as 19.4kPa',
)
const doesNotTurn = problem(
  'does-not-turn',
  'reading',
  'The motor of this virtual machine does not turn, so nothing is drawn',
  'Find out first why it does not run',
)

const noteOf = (reading: GaugeReading, options: Options): Result<NoteContentInput> => {
  const given = options['minutes']
  const minutes =
    typeof given === 'string' ? quantityFromText(given, 'durationMin', '--minutes') : ok(gaugeMinutes.value)
  return minutes.kind === 'ok' ? ok({ kind: 'gauge', reading, minutes: minutes.value }) : minutes
}

type Shown = { readonly read: GaugeReading['read']; readonly instrument: string }

/** What was shown, by its unit: a suction, an airflow, or the pitch of the motor. */
const shownBy = (written: string, options: Options): Result<Shown> => {
  const tone = /^\s*(\d+(?:[.,]\d+)?)\s*Hz\s*$/i.exec(written)?.[1]
  if (tone !== undefined) return toneFrom(Number(tone.replace(',', '.')), options['beside'])
  const airflow = airQuantityFromText(written, 'airflowM3PerS', 'reading')
  if (airflow.kind === 'ok')
    return ok({ read: { measure: 'airflow', airflowM3PerS: airflow.value }, instrument: vaneGauge })
  const suction = airQuantityFromText(written, 'pressurePa', 'reading')
  if (suction.kind === 'refused') return suction
  return ok({ read: { measure: 'suction', suctionPa: suction.value }, instrument: usualGauge })
}

const toneFrom = (toneHz: number, beside: Options[string]): Result<Shown> => {
  const soundHz = typeof beside === 'string' ? Number(/^\s*(\d+(?:\.\d+)?)\s*(?:Hz)?\s*$/i.exec(beside)?.[1]) : NaN
  if (!(soundHz > 0)) {
    const what = 'A pitch says something only beside that of a sound machine'
    return refused(problem('no-sound-tone', '--beside', what, 'Add the same tone of a sound one, such as --beside 640'))
  }
  return ok({ read: { measure: 'tone', toneHz, soundHz }, instrument: toneGauge })
}
