import type { BlueprintInput } from '../../schema.ts'
import { catalogue } from './sources.ts'

const heats = 'A loose plug terminal heats until it burns'
const crushed = 'A crushed flex can show bare copper or short at any moment'

/** Where the flex goes in, as “the handle”, and what wears it there. */
export interface LeadEntry {
  readonly entry: string
  readonly wear: string
}

const plug: BlueprintInput['faults'] = [
  {
    id: 'plug-line-terminal-loose',
    part: 'plug',
    name: 'Plug, line terminal loose or burnt',
    how: 'Screw never tight, or worked loose; the terminal browns and the fuse clip with it.',
    rate: {
      component: { id: 'plug', share: 0.18 },
      perHundred: 1.2,
      source: { ...catalogue, clause: 'row P01, its part' },
    },
    electrical: [{ element: 'plug-line-terminal', becomes: 'open' }],
    comesAndGoes: { badShare: 0.4 },
    complaints: { intermittent: 0.7, dead: 0.4, smell: 0.25, sparks: 0.1 },
    danger: heats,
  },
  {
    id: 'plug-neutral-terminal-loose',
    part: 'plug',
    name: 'Plug, neutral terminal loose or burnt',
    how: 'Screw never tight, or worked loose; the terminal browns.',
    rate: {
      component: { id: 'plug', share: 0.12 },
      perHundred: 0.8,
      source: { ...catalogue, clause: 'row P01, its part' },
    },
    electrical: [{ element: 'plug-neutral-terminal', becomes: 'open' }],
    comesAndGoes: { badShare: 0.4 },
    complaints: { intermittent: 0.7, dead: 0.4, smell: 0.25, sparks: 0.1 },
    danger: heats,
  },
  {
    id: 'plug-damaged',
    part: 'plug',
    name: 'Plug cracked, pins unsleeved or cord grip gone',
    how: 'Trodden on, pulled by the flex, or very old.',
    rate: {
      component: { id: 'plug', share: 0.08 },
      perHundred: 1,
      source: { ...catalogue, clause: 'row P01, its part' },
    },
    complaints: { smell: 0.03 },
    danger: 'Fingers can reach live pins, or the flex can pull out',
  },
  {
    id: 'plug-fuse-open',
    part: 'plug-fuse',
    name: 'Plug fuse blown',
    how: 'Blew on a surge or on a short elsewhere: find out why before a new one goes in.',
    rate: { component: { id: 'fuse', share: 0.9 }, perHundred: 4, source: { ...catalogue, clause: 'row P02' } },
    electrical: [{ element: 'plug-fuse', becomes: 'open' }],
    complaints: { dead: 0.98, 'trips-supply': 0.15 },
    excludes: ['plug-fuse-wrong'],
  },
  {
    id: 'plug-fuse-wrong',
    part: 'plug-fuse',
    name: 'Wrong fuse, foil or nail in the plug',
    how: 'Someone got it going without finding the cause.',
    rate: { component: { id: 'fuse', share: 0.1 }, perHundred: 2, source: { ...catalogue, clause: 'row P03' } },
    danger: 'Nothing would blow if the flex shorts',
    excludes: ['plug-fuse-open'],
  },
]

const atThePlug: BlueprintInput['faults'] = [
  {
    id: 'flex-plug-line-flickers',
    part: 'flex-plug-end',
    name: 'Flex at the plug, line core comes and goes',
    how: 'Strands broken inside the sheath within 30 cm of the plug; they touch when bent one way.',
    rate: {
      component: { id: 'plug', share: 0.2 },
      perHundred: 1.8,
      source: { ...catalogue, clause: 'row P04, its part' },
    },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.85, dead: 0.5, sparks: 0.05, smell: 0.05 },
    excludes: ['flex-plug-line-open', 'flex-entry-line-flickers', 'flex-entry-line-open', 'flex-mid-line-open'],
  },
  {
    id: 'flex-plug-line-open',
    part: 'flex-plug-end',
    name: 'Flex at the plug, line core broken',
    how: 'Bent and pulled at the plug until the last strand went.',
    rate: {
      component: { id: 'plug', share: 0.13 },
      perHundred: 1.1,
      source: { ...catalogue, clause: 'row P04, its part' },
    },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.25 },
    excludes: ['flex-plug-line-flickers', 'flex-entry-line-flickers', 'flex-entry-line-open', 'flex-mid-line-open'],
  },
  {
    id: 'flex-plug-neutral-flickers',
    part: 'flex-plug-end',
    name: 'Flex at the plug, neutral core comes and goes',
    how: 'Strands broken inside the sheath within 30 cm of the plug; they touch when bent one way.',
    rate: {
      component: { id: 'plug', share: 0.15 },
      perHundred: 1.3,
      source: { ...catalogue, clause: 'row P04, its part' },
    },
    electrical: [{ element: 'flex-neutral', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.85, dead: 0.5, sparks: 0.05, smell: 0.05 },
    excludes: ['flex-plug-neutral-open', 'flex-entry-neutral-flickers', 'flex-entry-neutral-open'],
  },
  {
    id: 'flex-plug-neutral-open',
    part: 'flex-plug-end',
    name: 'Flex at the plug, neutral core broken',
    how: 'Bent and pulled at the plug until the last strand went.',
    rate: {
      component: { id: 'plug', share: 0.09 },
      perHundred: 0.8,
      source: { ...catalogue, clause: 'row P04, its part' },
    },
    electrical: [{ element: 'flex-neutral', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.25 },
    excludes: ['flex-plug-neutral-flickers', 'flex-entry-neutral-flickers', 'flex-entry-neutral-open'],
  },
]

const atTheEntry = ({ entry, wear }: LeadEntry): BlueprintInput['faults'] => [
  {
    id: 'flex-entry-line-flickers',
    part: 'flex-entry',
    name: `Flex at ${entry}, line core comes and goes`,
    how: `${wear}; strands part inside the sheath.`,
    rate: {
      component: { id: 'flex-entry', share: 0.36 },
      perHundred: 3.6,
      source: { ...catalogue, clause: 'row P05, its part' },
    },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.88, dead: 0.5, sparks: 0.08, smell: 0.06 },
    excludes: ['flex-plug-line-flickers', 'flex-plug-line-open', 'flex-entry-line-open', 'flex-mid-line-open'],
  },
  {
    id: 'flex-entry-line-open',
    part: 'flex-entry',
    name: `Flex at ${entry}, line core broken`,
    how: 'Worn through at the cord grip, often after weeks of coming and going.',
    rate: {
      component: { id: 'flex-entry', share: 0.22 },
      perHundred: 2.2,
      source: { ...catalogue, clause: 'row P05, its part' },
    },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.3 },
    excludes: ['flex-plug-line-flickers', 'flex-plug-line-open', 'flex-entry-line-flickers', 'flex-mid-line-open'],
  },
  {
    id: 'flex-entry-neutral-flickers',
    part: 'flex-entry',
    name: `Flex at ${entry}, neutral core comes and goes`,
    how: `${wear}; strands part inside the sheath.`,
    rate: {
      component: { id: 'flex-entry', share: 0.26 },
      perHundred: 2.6,
      source: { ...catalogue, clause: 'row P05, its part' },
    },
    electrical: [{ element: 'flex-neutral', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.88, dead: 0.5, sparks: 0.08, smell: 0.06 },
    excludes: ['flex-plug-neutral-flickers', 'flex-plug-neutral-open', 'flex-entry-neutral-open'],
  },
  {
    id: 'flex-entry-neutral-open',
    part: 'flex-entry',
    name: `Flex at ${entry}, neutral core broken`,
    how: 'Worn through at the cord grip, often after weeks of coming and going.',
    rate: {
      component: { id: 'flex-entry', share: 0.16 },
      perHundred: 1.6,
      source: { ...catalogue, clause: 'row P05, its part' },
    },
    electrical: [{ element: 'flex-neutral', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.3 },
    excludes: ['flex-plug-neutral-flickers', 'flex-plug-neutral-open', 'flex-entry-neutral-flickers'],
  },
]

const midLength: BlueprintInput['faults'] = [
  {
    id: 'flex-mid-line-open',
    part: 'flex',
    name: 'Flex crushed or cut mid length, core broken',
    how: 'Run over, shut in a door or trapped under furniture.',
    rate: {
      component: { id: 'flex-middle', share: 0.4 },
      perHundred: 2.4,
      source: { ...catalogue, clause: 'row P06, its part' },
    },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    complaints: { dead: 0.9, intermittent: 0.3, sparks: 0.1 },
    danger: crushed,
    excludes: ['flex-plug-line-flickers', 'flex-plug-line-open', 'flex-entry-line-flickers', 'flex-entry-line-open'],
  },
  {
    id: 'flex-short',
    part: 'flex',
    name: 'Flex shorted, line to neutral',
    how: 'Cores crushed together, or melted at a kink.',
    rate: {
      component: { id: 'flex-middle', share: 0.25 },
      perHundred: 1.2,
      source: { ...catalogue, clause: 'row P06, its part' },
    },
    electrical: [{ element: 'flex-bridge', becomes: { ohm: 0.05, spread: 0.7 } }],
    complaints: { 'trips-supply': 0.95, dead: 0.5, sparks: 0.25, smell: 0.15 },
    danger: 'A dead short: flash, burns, fire',
  },
  {
    id: 'flex-sheath-damaged',
    part: 'flex',
    name: 'Flex cut, taped or perished, still conducting',
    how: 'Roll caught it, pets chewed it, a joint under tape, or the sheath is sticky and cracked.',
    rate: {
      component: { id: 'flex-middle', share: 0.35 },
      perHundred: 3.4,
      source: { ...catalogue, clause: 'rows P06 (its part) and P07' },
    },
    complaints: { sparks: 0.03 },
    danger: 'Live copper can be touched through the damage',
  },
]

export const leadFaults = (at: LeadEntry): BlueprintInput['faults'] => [
  ...plug,
  ...atThePlug,
  ...atTheEntry(at),
  ...midLength,
]
