import type { BlueprintFragment } from '../../fragment.ts'
import { leadFaults } from './lead-faults.ts'
import { leadChecks } from './lead-checks.ts'
import { leadRepairs } from './lead-repairs.ts'
import type { LeadOptions } from './lead-options.ts'

type Part = NonNullable<BlueprintFragment['parts']>[number]
type Element = NonNullable<BlueprintFragment['circuit']>[number]

const plugFuse = (ratingA: number): Part => ({
  id: 'plug-fuse',
  name: 'Plug fuse',
  does: `Guards the flex: ${ratingA} A`,
  group: 'electrical',
  behind: 'plug-top',
})

const fuseElement = (ratingA: number): Element => ({
  kind: 'fuse',
  id: 'plug-fuse',
  part: 'plug-fuse',
  from: 'plug.line',
  to: 'plug.fuse-out',
  ratingA,
})

const points = (o: LeadOptions): NonNullable<BlueprintFragment['points']> => [
  { id: 'plug.line', name: 'Line pin of the plug' },
  ...(o.fuseA === null ? [] : [{ id: 'plug.fuse-out', name: 'Fuse clip on the flex side', behind: 'plug-top' }]),
  { id: 'plug.line-core', name: 'Brown core in the plug', behind: 'plug-top' },
  { id: 'plug.neutral', name: 'Neutral pin of the plug' },
  { id: 'plug.neutral-core', name: 'Blue core in the plug', behind: 'plug-top' },
  { id: 'flex.line', name: `Brown core at ${o.entry}`, behind: o.entryCover },
  { id: 'flex.neutral', name: `Blue core at ${o.entry}`, behind: o.entryCover },
]

const parts = (o: LeadOptions): NonNullable<BlueprintFragment['parts']> => [
  { id: 'plug', name: 'Plug', does: 'Joins the flex to the socket', group: 'electrical' },
  ...(o.fuseA === null ? [] : [plugFuse(o.fuseA)]),
  { id: 'flex-plug-end', name: 'Flex at the plug', does: 'The 30 cm that bend most at the plug', group: 'electrical' },
  {
    id: 'flex',
    name: 'Flex',
    does: `Mains lead, ${o.lengthM} m, ${o.earthed ? 'three' : 'two'} cores, ends at ${o.entry}`,
    group: 'electrical',
    spareShare: { low: 0.08, high: 0.15 },
  },
]

const circuit = (o: LeadOptions): NonNullable<BlueprintFragment['circuit']> => [
  ...(o.fuseA === null ? [] : [fuseElement(o.fuseA)]),
  {
    kind: 'resistor',
    id: 'plug-line-terminal',
    part: 'plug',
    from: o.fuseA === null ? 'plug.line' : 'plug.fuse-out',
    to: 'plug.line-core',
    resistanceOhm: 0.004,
    spread: 0.5,
  },
  {
    kind: 'resistor',
    id: 'plug-neutral-terminal',
    part: 'plug',
    from: 'plug.neutral',
    to: 'plug.neutral-core',
    resistanceOhm: 0.004,
    spread: 0.5,
  },
  {
    kind: 'wire',
    id: 'flex-line',
    part: 'flex',
    from: 'plug.line-core',
    to: 'flex.line',
    lengthM: o.lengthM,
    areaMm2: o.areaMm2,
  },
  {
    kind: 'wire',
    id: 'flex-neutral',
    part: 'flex',
    from: 'plug.neutral-core',
    to: 'flex.neutral',
    lengthM: o.lengthM,
    areaMm2: o.areaMm2,
  },
  { kind: 'stray', id: 'flex-bridge', part: 'flex', from: 'flex.line', to: 'flex.neutral' },
]

const covers = (o: LeadOptions): NonNullable<BlueprintFragment['covers']> => [
  o.fuseA === null
    ? {
        id: 'plug-top',
        name: 'Moulded plug, cut off',
        openMin: 0.5,
        closeMin: 6,
        hint: 'A moulded plug has no top. Cut off, it is thrown away, its pins bent; a new plug goes on.',
      }
    : {
        id: 'plug-top',
        name: 'Plug top',
        openMin: 0.5,
        closeMin: 0.5,
        fixings: [{ count: 1, kind: 'plug screw' }],
        hint: 'A moulded plug has no top: the fuse carrier prises out, the rest is cut off.',
      },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-move-flex': {
    'flex-plug-line-flickers': { flickers: 0.9, steady: 0.1 },
    'flex-plug-neutral-flickers': { flickers: 0.9, steady: 0.1 },
    'plug-line-terminal-loose': { flickers: 0.7, steady: 0.3 },
    'plug-neutral-terminal-loose': { flickers: 0.7, steady: 0.3 },
  },
  'run-soak': {
    'plug-line-terminal-loose': { 'hot-lead': 0.7, 'cuts-out': 0.2, cool: 0.1 },
    'plug-neutral-terminal-loose': { 'hot-lead': 0.7, 'cuts-out': 0.2, cool: 0.1 },
    'flex-plug-line-flickers': { 'cuts-out': 0.6, 'hot-lead': 0.15, cool: 0.25 },
    'flex-plug-neutral-flickers': { 'cuts-out': 0.6, 'hot-lead': 0.15, cool: 0.25 },
  },
  'run-full': {
    'plug-line-terminal-loose': { 'cuts-out': 0.75, works: 0.25 },
    'plug-neutral-terminal-loose': { 'cuts-out': 0.75, works: 0.25 },
    'flex-plug-line-flickers': { 'cuts-out': 0.9, works: 0.1 },
    'flex-plug-neutral-flickers': { 'cuts-out': 0.9, works: 0.1 },
  },
}

/** Plug and flex, whatever they end in: what goes wrong, how it is seen and read, how it is mended. */
export const lead = (o: LeadOptions): BlueprintFragment => ({
  points: points(o),
  parts: parts(o),
  circuit: circuit(o),
  covers: covers(o),
  faults: leadFaults(o),
  checks: leadChecks(o),
  repairs: leadRepairs(o),
  addsTo,
})
