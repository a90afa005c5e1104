import { inSentence } from '../../base/in-sentence.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { GaugeOpening, GaugeReading } from './gauge-reading.ts'

/** A suction in words: `19.4 kPa`, `0.84 kPa`. */
export const suctionText = (pressurePa: number): string => `${figureText(pressurePa / 1000)} kPa`

/** An airflow in words: `24.3 L/s`. */
export const airflowText = (airflowM3PerS: number): string => `${figureText(airflowM3PerS * 1000)} L/s`

/** Three figures that count. */
const figureText = (value: number): string => {
  if (Math.abs(value) >= 100) return value.toFixed(0)
  return Math.abs(value) >= 10 ? value.toFixed(1) : value.toFixed(2)
}

/** What the machine breathes through: `sealed`, `open`, `19 mm hole`. */
export const openingText = (opening: GaugeOpening): string =>
  opening.kind === 'hole' ? `${Number((opening.diameterM * 1000).toFixed(1))} mm hole` : opening.kind

/** What a gauge showed. */
export const readText = ({ read }: Pick<GaugeReading, 'read'>): string => {
  switch (read.measure) {
    case 'suction':
      return suctionText(read.suctionPa)
    case 'airflow':
      return airflowText(read.airflowM3PerS)
    case 'tone':
      return `${Math.round(read.toneHz)} Hz beside ${Math.round(read.soundHz)} Hz of a sound one`
  }
}

/** How the machine was set up: `19 mm hole at the end of the hose, without the bag`. Ids stand where the blueprint has no name. */
export const setUpText = (reading: Omit<GaugeReading, 'read'>, blueprint: Blueprint | null): string => {
  const partName = (id: string): string => inSentence(blueprint?.parts.find((part) => part.id === id)?.name ?? id)
  const way = blueprint?.airWays.find(({ id }) => id === reading.way)?.name ?? reading.way
  return [
    `${openingText(reading.opening)} at the ${inSentence(way)}`,
    reading.tapBefore === undefined ? '' : `tapped before the ${partName(reading.tapBefore)}`,
    reading.out.length === 0 ? '' : `without the ${reading.out.map(partName).join(' and the ')}`,
  ]
    .filter((one) => one !== '')
    .join(', ')
}

/** A whole reading in words. */
export const gaugeText = (reading: GaugeReading, blueprint: Blueprint | null): string =>
  [
    `${setUpText(reading, blueprint)}: ${readText(reading)}`,
    reading.mainsV === undefined ? '' : `mains ${reading.mainsV} V`,
    reading.inputW === undefined ? '' : `${reading.inputW} W in`,
  ]
    .filter((one) => one !== '')
    .join(', ')

/** A text as the beginning of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
