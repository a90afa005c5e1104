import type { Source } from '../../base/source.ts'
import type { LeadChoice, ListedCable } from '../../engines/limits/index.ts'
import { conductorSizes } from '../../engines/limits/index.ts'
import { partKinds } from '../../facts/part-kinds.ts'
import { earthedLead } from '../../facts/spares.ts'
import { wiring, type Wiring } from '../../facts/wiring.ts'
import { leadChoice } from '../proof/lead-choice.ts'
import { figureText } from './figure-text.ts'
import { partNeed } from './need.ts'
import type { FitFinding, Spare, SpareWanted, Spec } from './spare.ts'

/**
 * Whether a flex from the shelf may become this machine's lead: size, type, cores, condition and colours by the rules of
 * leads, each refusal with the clause behind it, and the length by what the machine has.
 */
export const flexFindings = (wanted: SpareWanted, part: string, spare: Spare): readonly FitFinding[] => {
  const lengthM = partNeed(wanted, part).find(({ field }) => field.id === 'lengthM')?.value
  if (typeof lengthM !== 'number') return [{ unknown: 'How long a lead the machine had' }]
  const aspects = aspectsOf(spare, wiring[wanted.region])
  const { size, type, cores, condition, colours } = aspects
  const known = { ...size, ...type, ...cores, ...condition, ...colours }
  const whole: ListedCable = { ...blank, ...known, id: 'whole', lengthM }
  const asked = [whole, ...Object.entries(aspects).map(([id, aspect]) => ({ ...blank, ...aspect, id }))]
  const choice = leadChoice(wanted.plate, wanted.region, lengthM, asked)
  if (choice.kind === 'refused') return choice.problems.map(({ what }) => ({ unknown: what }))
  return [
    ...cableFindings(choice.value),
    ...(typeof spare.spec['colours'] === 'string' && coloursOf(spare.spec, wiring[wanted.region]) !== 'not-known'
      ? []
      : [{ unknown: 'The colours of its cores' }]),
    lengthFinding(spare.spec, lengthM),
  ]
}

const blank: ListedCable = {
  id: '',
  type: null,
  size: null,
  cores: null,
  lengthM: null,
  condition: 'not-looked-at',
  hasOldColours: false,
}

type Aspect = 'size' | 'type' | 'cores' | 'condition' | 'colours'

/** What is known of a flex, each thing on its own, so that a refusal can be told apart from the others. */
const aspectsOf = ({ spec, condition }: Spare, colours: Wiring): Readonly<Record<Aspect, Partial<ListedCable>>> => {
  const { type, areaMm2, cores } = spec
  return {
    size: { size: typeof areaMm2 === 'number' ? sizeOf(areaMm2) : null },
    type: { type: typeof type === 'string' ? type : null },
    cores: { cores: typeof cores === 'number' ? cores : null },
    condition: { condition: condition === 'untested' ? 'not-looked-at' : 'sound' },
    colours: { hasOldColours: coloursOf(spec, colours) === 'old' },
  }
}

/** Areas of the gauges are not round; so far from the table's one is still meant by it. A judgement. */
const gaugeShare = 0.02

const sizeOf = (areaMm2: number): string => {
  const near = conductorSizes.find((size) => Math.abs(size.areaMm2 - areaMm2) <= gaugeShare * size.areaMm2)
  return near?.id ?? `${areaMm2} mm2`
}

/** Whether the cores have colours of this region, colours that may no longer be sold, or colours that say neither. */
const coloursOf = ({ colours }: Spec, { line, neutral, earth, old }: Wiring): 'now' | 'old' | 'not-known' => {
  if (typeof colours !== 'string') return 'not-known'
  const text = colours.toLowerCase()
  const words: readonly string[] = text.match(/[a-z]+/g) ?? []
  // Green beside yellow is the earth of today, and so is green alone where the earth is green.
  const isEarthNow = text.includes('yellow') || earth.colour === 'green'
  const said = words.filter((word) => word !== 'green' || !isEarthNow)
  const first = (colour: string): string => colour.split(/[ ,]/)[0] ?? colour
  if (old.split(/, | and /).some((word) => said.includes(word))) return 'old'
  return said.includes(first(line.colour)) && said.includes(first(neutral.colour)) ? 'now' : 'not-known'
}

const cableFindings = (choice: LeadChoice): readonly FitFinding[] => {
  const whole = choice.cables.find(({ id }) => id === 'whole')
  const clauses: Readonly<Record<Aspect, Source | undefined>> = {
    size: choice.conductor.sources[0],
    type: choice.cords.source,
    cores: earthedLead,
    condition: undefined,
    colours: choice.conductorSources[0],
  }
  const reasons = choice.cables
    .filter(({ id }) => id !== 'whole')
    .flatMap(({ id, reasons: own }) => own.map((reason) => ({ reason: withClause(reason, clauses[id as Aspect]) })))
  return [
    ...reasons,
    ...(whole?.unknown ?? []).map((unknown) => ({ unknown })),
    ...(whole?.care ?? []).map((care) => ({ care })),
    ...(whole?.kind === 'would-do' ? [{ agrees: 'Size, type and cores' }] : []),
  ]
}

const withClause = (reason: string, source: Source | undefined): string =>
  source === undefined ? reason : `${reason} (${[source.title, source.clause].filter(Boolean).join(', ')})`

/** A lead may be somewhat shorter than the one the machine had: who sells it says so. It is never lengthened. */
const lengthFinding = ({ lengthM }: Spec, wantedM: number): FitFinding => {
  if (typeof lengthM !== 'number') return { unknown: 'Its length' }
  const { tolerance } = partKinds.flex.fields[0]
  const leastM = wantedM * (1 - tolerance)
  const [has, had] = [figureText(lengthM, 'm'), figureText(wantedM, 'm')]
  if (lengthM < leastM - 1e-9) {
    return {
      reason: `${has}, and at least ${figureText(leastM, 'm')} of the ${had} it had are wanted; a lead is not joined`,
    }
  }
  if (lengthM < wantedM) return { agrees: 'Length', care: `It is shorter than the ${had} the machine had` }
  return lengthM > wantedM ? { agrees: 'Length', care: `Cut it to ${had}` } : { agrees: 'Length' }
}
