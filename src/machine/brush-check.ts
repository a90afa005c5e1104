import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { beltSlip, brushDrag, brushReading, brushSpeed } from '../facts/brush-roll.ts'

/** What was measured of a brush roll. Speeds in rpm, diameters where the belt lies in m, powers in W with the roll on and off its drive. */
export type BrushReading = {
  readonly rollRpm: number
  readonly drive?: { readonly motorRpm: number; readonly rollDiameterM: number; readonly motorDiameterM: number }
  readonly drag?: { readonly onW: number; readonly offW: number }
}

export type BrushAnswer = {
  readonly rollRpm: number
  readonly speed: 'usual' | 'slow' | 'fast'
  /** Share of the speed lost on the belt, with its expanded uncertainty (k = 2); null where the drive was not measured. */
  readonly slip: { readonly share: number; readonly uncertainty: number; readonly verdict: SlipVerdict } | null
  readonly drag: { readonly dragW: number; readonly verdict: 'free' | 'heavy' | 'not turning' } | null
  /** The whole as sentences. */
  readonly text: readonly string[]
}
export type SlipVerdict = 'as new' | 'stretched' | 'replace' | 'not told'

const coverage = 2

/**
 * Belt slip by the speed ratio, 1 − (n_roll · d_roll) / (n_motor · d_motor), and drag by the watts the roll adds. Refused where the
 * roll would turn faster than its belt drives it by more than the readings' uncertainty.
 */
export const brushCheck = (reading: BrushReading): Result<BrushAnswer> => {
  const problems = slips(reading)
  if (problems.length > 0) return refused(...problems)
  const { rollRpm, drive, drag } = reading
  const speed = rollRpm < brushSpeed.low ? 'slow' : rollRpm > brushSpeed.high ? 'fast' : 'usual'
  const slip = drive === undefined ? null : slipOf(rollRpm, drive)
  if (slip !== null && slip.share < -slip.uncertainty) return refused(fasterThanDriven(slip.share))
  const dragged = drag === undefined ? null : dragOf(drag)
  return ok({ rollRpm, speed, slip, drag: dragged, text: sentences(rollRpm, speed, slip, dragged) })
}

const slips = ({ rollRpm, drive, drag }: BrushReading): readonly Problem[] => [
  ...(rollRpm > 0 && rollRpm < 20_000 ? [] : [notARollSpeed(rollRpm)]),
  ...(drive === undefined || drive.motorRpm > rollRpm ? [] : [motorSlower]),
  ...(drag === undefined || drag.onW >= drag.offW ? [] : [lessWithRoll]),
]

const notARollSpeed = (rpm: number): Problem =>
  problem(
    'not-a-roll-speed',
    'roll',
    `${rpm} rpm is no speed of a brush roll`,
    'It turns at some thousand; count one mark on it, not the bristles',
  )
const motorSlower = problem(
  'motor-slower',
  'motor',
  'The motor turns no faster than the roll',
  'A brush roll is geared down; check that the two speeds are not swapped',
)
const lessWithRoll = problem(
  'less-with-roll',
  'on',
  'The machine takes less with the roll driven than without',
  'Check that the two powers are not swapped',
)
const fasterThanDriven = (share: number): Problem =>
  problem(
    'faster-than-driven',
    'roll',
    `The roll turns ${(-100 * share).toFixed(0)} % faster than its belt could drive it`,
    'Measure both diameters where the belt lies, and count one mark for each turn',
  )

const slipOf = (
  rollRpm: number,
  { motorRpm, rollDiameterM, motorDiameterM }: NonNullable<BrushReading['drive']>,
): NonNullable<BrushAnswer['slip']> => {
  const ratio = (rollRpm * rollDiameterM) / (motorRpm * motorDiameterM)
  const relative = Math.hypot(brushReading.speed, brushReading.speed, brushReading.diameter, brushReading.diameter)
  const uncertainty = coverage * ratio * relative
  const share = 1 - ratio
  return { share, uncertainty, verdict: slipVerdict(share, uncertainty) }
}

const slipVerdict = (share: number, uncertainty: number): SlipVerdict => {
  if (share - uncertainty > beltSlip.replaceFrom) return 'replace'
  if (share + uncertainty <= beltSlip.newUpTo) return 'as new'
  if (share - uncertainty > beltSlip.newUpTo && share + uncertainty <= beltSlip.replaceFrom) return 'stretched'
  return 'not told'
}

const dragOf = ({ onW, offW }: NonNullable<BrushReading['drag']>): NonNullable<BrushAnswer['drag']> => {
  const dragW = onW - offW
  if (dragW < brushDrag.lowW / 2) return { dragW, verdict: 'not turning' }
  return { dragW, verdict: dragW <= brushDrag.highW ? 'free' : 'heavy' }
}

const sentences = (
  rollRpm: number,
  speed: BrushAnswer['speed'],
  slip: BrushAnswer['slip'],
  drag: BrushAnswer['drag'],
): readonly string[] => [
  `The roll turns at ${Math.round(rollRpm)} rpm, ${speed === 'usual' ? 'as brush rolls do' : `${speed} for a brush roll (${brushSpeed.low} to ${brushSpeed.high})`}.`,
  ...(slip === null ? [] : [slipSentence(slip)]),
  ...(drag === null ? [] : [dragSentence(drag)]),
]

const slipSentence = ({ share, uncertainty, verdict }: NonNullable<BrushAnswer['slip']>): string => {
  const figure = `The belt slips by ${(100 * share).toFixed(1)} % (give or take ${(100 * uncertainty).toFixed(1)})`
  switch (verdict) {
    case 'as new':
      return `${figure}: as new.`
    case 'stretched':
      return `${figure}: stretched; it will do for a while.`
    case 'replace':
      return `${figure}: replace it, and look whether the roll turns freely.`
    case 'not told':
      return `${figure}: these readings do not tell on which side of the limits (${100 * beltSlip.newUpTo} and ${100 * beltSlip.replaceFrom} %) it lies.`
  }
}

const dragSentence = ({ dragW, verdict }: NonNullable<BrushAnswer['drag']>): string => {
  const figure = `Driving the roll takes ${Math.round(dragW)} W`
  switch (verdict) {
    case 'free':
      return `${figure}: it turns freely.`
    case 'heavy':
      return `${figure}, more than ${brushDrag.highW} W off the floor: hair in its bearings, or a bearing going.`
    case 'not turning':
      return `${figure}, next to nothing: the roll hardly turns.`
  }
}
