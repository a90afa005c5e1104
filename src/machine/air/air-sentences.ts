import { inSentence } from '../../base/in-sentence.ts'
import type { AirExplanation, Explained } from '../../engines/airflow/index.ts'
import type { AirExplanationKind } from './air-explanations.ts'
import type { AirMachine } from './air-machine.ts'
import type { GaugeReading } from './gauge-reading.ts'

const two = (value: number): string => (value >= 10 ? value.toFixed(0) : value.toPrecision(2))

/** What the figure of an explanation comes to, with its 95 % limits, as a sentence; null where it has none. */
export const figureText = (machine: AirMachine, known: AirExplanationKind, explained: Explained): string | null => {
  const figure = explained.figures.find(({ id }) => id === known.figure)
  if (figure === undefined) return null
  const { value, low, high } = figure
  const limits = `${two(low)} to ${two(high)}`
  switch (known.kind) {
    case 'blockage':
      return `It loses ${two(value)} times what a clean one does (${limits}).`
    case 'leak':
    case 'bleed-open': {
      const between = machine.places.find(({ id }) => id === known.id)?.between
      return `Like a hole of ${two(value)} mm² (${limits}), ${between ?? 'somewhere'}.`
    }
    case 'tired-motor':
      return `It turns at ${two(value)} times the speed of a sound one (${limits}).`
    case 'worn-fan':
      return `At its speed it gives ${two(value)} times the pressure of a sound one (${limits}).`
    case 'low-mains':
      return `The mains are at ${two(value)} times their nominal voltage (${limits}).`
    case 'sound':
    case 'several':
      return null
  }
}

/** What the readings leave open, as sentences; only of what is likely enough to matter. */
export const openText = ({ notToldApart, tied, explanations }: AirExplanation): readonly string[] => {
  const nameOf = (id: string): string => explanations.find((one) => one.id === id)?.name ?? id
  const groups = grouped(notToldApart.map((pair) => pair.explanations))
  return [
    ...groups.map((ids) => `These readings do not tell apart: ${ids.map(nameOf).join('; ')}.`),
    ...tied.map(({ text }) => `${text}: they show only together.`),
  ]
}

/** A reading that no machine shows together with the others, as a sentence with what may have gone wrong. */
export const contradictionText = (
  { sigma, othersAgree }: Pick<AirExplanation['unexplained'][number], 'sigma' | 'othersAgree'>,
  name: string,
): string =>
  `“${name}” is off by ${sigma.toFixed(0)} times its uncertainty from any machine${othersAgree ? ' that shows the others' : ''}. A slip of the keys, the hole, the seal of the plate, or the range of the gauge may be wrong.`

/** Pairs joined to groups, where one leads to the next. */
const grouped = (pairs: readonly (readonly [string, string])[]): readonly (readonly string[])[] => {
  const groups: string[][] = []
  for (const pair of pairs) {
    const touched = groups.filter((group) => pair.some((id) => group.includes(id)))
    const joined = [...new Set([...touched.flat(), ...pair])]
    for (const group of touched) groups.splice(groups.indexOf(group), 1)
    groups.push(joined)
  }
  return groups
}

/** What a reading would tell apart. */
export const tellsText = (leading: readonly Explained[], bits: number): string => {
  const [first, second] = leading
  if (first === undefined || second === undefined) return 'It would confirm what is found already.'
  const how = bits >= 0.5 ? 'Tells' : 'Helps to tell'
  return `${how} “${first.name}” from “${second.name}” and the others.`
}

/** What to do besides fitting the rig at its way in. */
export const howText = (
  { out, tapBefore }: Pick<GaugeReading, 'out' | 'tapBefore'>,
  machine: AirMachine,
): readonly string[] => {
  const nameOf = (id: string): string => inSentence(machine.paths.sections.find(({ part }) => part === id)?.name ?? id)
  return [
    ...(out.length === 0
      ? []
      : [
          `Plug out, take the ${out.map(nameOf).join(' and the ')} out and close up again. Run it for ten seconds at most, away from dust, and put it back at once: without it dirt goes into the motor.`,
        ]),
    ...(tapBefore === undefined
      ? []
      : [
          `Plug out, a hole of 3 mm through the wall before the ${nameOf(tapBefore)}, the gauge’s tube pressed into it tightly; tape it shut afterwards.`,
        ]),
  ]
}
