import type { BlueprintFragment } from '../../fragment.ts'

const contacts: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'reel-line-contact-worn',
    part: 'reel-contacts',
    name: 'Reel, line contact dirty or worn',
    how: 'Black track, tired spring: comes and goes as the flex is pulled.',
    rate: { rows: [['P09', 0.42]], component: { id: 'reel-contacts', share: 0.4 } },
    electrical: [{ element: 'reel-line-contact', becomes: { plusOhm: 40, spread: 2 } }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.8, dead: 0.45, smell: 0.15, sparks: 0.1 },
    danger: 'A poor contact in the reel heats the plastic round it',
    excludes: ['reel-contact-burnt'],
  },
  {
    id: 'reel-neutral-contact-worn',
    part: 'reel-contacts',
    name: 'Reel, neutral contact dirty or worn',
    how: 'Black track, tired spring: comes and goes as the flex is pulled.',
    rate: { rows: [['P09', 0.33]], component: { id: 'reel-contacts', share: 0.3 } },
    electrical: [{ element: 'reel-neutral-contact', becomes: { plusOhm: 40, spread: 2 } }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.8, dead: 0.45, smell: 0.15, sparks: 0.1 },
    danger: 'A poor contact in the reel heats the plastic round it',
  },
  {
    id: 'reel-contact-burnt',
    part: 'reel-contacts',
    name: 'Reel contact burnt, plastic melted',
    how: 'Ran hot with the flex half wound; the ring has sunk into the drum.',
    rate: { rows: [['P09', 0.25]], component: { id: 'reel-contacts', share: 0.3 } },
    electrical: [{ element: 'reel-line-contact', becomes: 'open' }],
    comesAndGoes: { badShare: 0.85 },
    complaints: { dead: 0.85, smell: 0.5, intermittent: 0.3 },
    danger: 'Melted plastic no longer holds live metal apart',
    excludes: ['reel-line-contact-worn'],
  },
]

const atTheDrum: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'flex-drum-line-flickers',
    part: 'flex-reel',
    name: 'Flex at the drum, line core comes and goes',
    how: 'Pulled to its end again and again; strands part at the anchor.',
    rate: { rows: [['P10', 0.34]], component: { id: 'flex-reel', share: 0.32 } },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.85, dead: 0.5 },
    excludes: ['flex-drum-line-open', 'flex-plug-line-flickers', 'flex-plug-line-open', 'flex-mid-line-open'],
  },
  {
    id: 'flex-drum-line-open',
    part: 'flex-reel',
    name: 'Flex at the drum, line core broken',
    how: 'Torn off at the anchor, or broken inside the sheath.',
    rate: { rows: [['P10', 0.24]], component: { id: 'flex-reel', share: 0.25 } },
    electrical: [{ element: 'flex-line', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.25 },
    excludes: ['flex-drum-line-flickers', 'flex-plug-line-flickers', 'flex-plug-line-open', 'flex-mid-line-open'],
  },
  {
    id: 'flex-drum-neutral-flickers',
    part: 'flex-reel',
    name: 'Flex at the drum, neutral core comes and goes',
    how: 'Pulled to its end again and again; strands part at the anchor.',
    rate: { rows: [['P10', 0.25]], component: { id: 'flex-reel', share: 0.25 } },
    electrical: [{ element: 'flex-neutral', becomes: 'open' }],
    comesAndGoes: { badShare: 0.55 },
    complaints: { intermittent: 0.85, dead: 0.5 },
    excludes: ['flex-drum-neutral-open', 'flex-plug-neutral-flickers', 'flex-plug-neutral-open'],
  },
  {
    id: 'flex-drum-neutral-open',
    part: 'flex-reel',
    name: 'Flex at the drum, neutral core broken',
    how: 'Torn off at the anchor, or broken inside the sheath.',
    rate: { rows: [['P10', 0.17]], component: { id: 'flex-reel', share: 0.18 } },
    electrical: [{ element: 'flex-neutral', becomes: 'open' }],
    complaints: { dead: 0.97, intermittent: 0.25 },
    excludes: ['flex-drum-neutral-flickers', 'flex-plug-neutral-flickers', 'flex-plug-neutral-open'],
  },
]

const windingIn: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'reel-spring-weak',
    part: 'cord-reel',
    name: 'Reel spring tired, unhooked or broken',
    how: 'The last metres stay out, or nothing winds in. A sticky flex looks the same.',
    rate: { rows: [['P11', 1]], component: { id: 'reel-mechanism', share: 0.7 } },
    complaints: { 'cord-stuck': 0.95 },
    saleShareIfLeft: 0.55,
  },
  {
    id: 'reel-brake-slips',
    part: 'cord-reel',
    name: 'Reel brake worn, or its pedal loose',
    how: 'The flex creeps back in, or the pedal does nothing.',
    rate: { rows: [['P12', 1]], component: { id: 'reel-mechanism', share: 0.3 } },
    complaints: { 'cord-stuck': 0.9 },
    saleShareIfLeft: 0.6,
  },
]

export const cordReelFaults: NonNullable<BlueprintFragment['faults']> = [...contacts, ...atTheDrum, ...windingIn]
