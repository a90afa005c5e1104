import { wayOf } from './air-fit.ts'
import type { AirMachine } from './air-machine.ts'
import { solveSetUp, type AirFigures } from './air-network.ts'
import { openingText } from './air-text.ts'
import type { AirExplanationView, AirPathView } from './air-view.ts'
import type { GaugeOpening } from './gauge-reading.ts'

/** Suction at each part of a way in, for a machine with the figures found and for a sound one of the kind. */
export const airPathOf = (
  machine: AirMachine,
  way: string,
  opening: GaugeOpening,
  { now, sound }: { readonly now: AirFigures; readonly sound: AirFigures },
  explanations: readonly AirExplanationView[],
): AirPathView => {
  const [nowPa, soundPa] = [now, sound].map((figures) => {
    const answer = solveSetUp(machine, { way, opening, out: [] }, figures)
    return answer.kind === 'solved' ? answer.pressurePa : {}
  })
  const steps = wayOf(machine, way).parts.flatMap((id) => {
    const section = machine.paths.sections.find(({ part }) => part === id)
    if (section === undefined) return []
    return [
      {
        part: id,
        name: section.name,
        isFan: section.section.kind === 'fan',
        suctionPa: -(nowPa[section.from] ?? 0),
        soundPa: -(soundPa[section.from] ?? 0),
        suspected: suspectedAt(id, explanations),
      },
    ]
  })
  return { opening: openingText(opening), steps }
}

const suspectedAt = (part: string, explanations: readonly AirExplanationView[]): number =>
  explanations.filter(({ parts }) => parts.includes(part)).reduce((sum, { probability }) => sum + probability, 0)
