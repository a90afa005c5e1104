import { airflowText, suctionText } from '../machine/index.ts'
import type { AirSetView, AirView } from '../machine/air/air-view.ts'

const percent = (probability: number): string => `${Math.round(100 * probability)} %`

/** A machine's air as lines of text. */
export const airLines = (name: string, view: AirView): readonly string[] => [
  `${name}: ${view.kind.name}`,
  ...view.kind.decided.map((one) => `  ${one}`),
  ...(view.sets.length === 0 ? ['No gauge reading yet. Three already answer: sealed, and at two holes.'] : []),
  ...view.sets.flatMap(setLines),
  ...(view.beforeAfter === null ? [] : ['Before and after:', `  ${view.beforeAfter.text}`]),
  'Next reading:',
  ...(view.next.length === 0 ? ['  None with this rig would tell more.'] : view.next.flatMap(nextLines)),
  'Ways in:',
  ...view.ways.map(({ id, name: way, how }) => `  ${id}: ${way}. ${how}`),
]

const setLines = (set: AirSetView): readonly string[] => [
  `As it breathes ${set.name}:`,
  ...set.explanations.map(({ name, probability, figure }) =>
    `  ${percent(probability).padStart(5)}  ${name}. ${figure ?? ''}`.trimEnd(),
  ),
  ...set.open.map((one) => `  ${one}`),
  ...set.contradictions.map((one) => `  ${one}`),
  `  Most air power: ${peakText(set)}`,
  '  Readings, and what the likeliest machine would show:',
  ...set.readings.map(
    ({ setUp, read, expected, sigma }) =>
      `    ${setUp}: ${read}; ${expected} expected, off by ${sigma.toFixed(1)} sigma`,
  ),
  `  Suction along the path, ${set.path.opening}, now and on a sound one:`,
  ...set.path.steps.map(
    ({ name, suctionPa, soundPa, suspected }) =>
      `    before the ${name}: ${suctionText(suctionPa)}, ${suctionText(soundPa)}${suspected >= 0.01 ? `, suspected ${percent(suspected)}` : ''}`,
  ),
]

const peakText = ({ curve: { peak } }: AirSetView): string =>
  peak.kind === 'peak'
    ? `${peak.airPowerW.toFixed(0)} W at ${airflowText(peak.airflowM3PerS)} and ${suctionText(peak.suctionPa)}`
    : `${peak.reason}. ${peak.mend}.`

const nextLines = ({ name, minutes, bits, tells, expected }: AirView['next'][number]): readonly string[] => [
  `  ${name}, ${minutes} min${bits === null ? '' : `, ${bits.toFixed(2)} bits`}. ${tells}`,
  ...expected.map(({ under, text }) => `    if ${under}: ${text}`),
]
