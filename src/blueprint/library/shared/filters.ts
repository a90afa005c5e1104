import type { BlueprintFragment } from '../../fragment.ts'

const parts: NonNullable<BlueprintFragment['parts']> = [
  {
    id: 'pre-motor-filter',
    name: 'Pre-motor filter',
    does: 'Keeps dust out of the motor',
    group: 'air',
    behind: 'filter-cover',
    air: { kind: 'passage', like: 'foam-filter' },
  },
  {
    id: 'exhaust-filter',
    name: 'Exhaust filter',
    does: 'Cleans the air that leaves',
    group: 'air',
    behind: 'exhaust-cover',
    air: { kind: 'passage', like: 'pleated-filter' },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'pre-motor-filter-clogged',
    part: 'pre-motor-filter',
    name: 'Pre-motor filter clogged or damp',
    how: 'Never changed, or put back wet.',
    rate: { rows: [['A06', 1]], component: { id: 'filters', share: 0.6 } },
    complaints: { 'weak-suction': 0.85, 'cuts-out': 0.35, smell: 0.25 },
    saleShareIfLeft: 1,
    air: { does: 'blocks', part: 'pre-motor-filter' },
  },
  {
    id: 'exhaust-filter-clogged',
    part: 'exhaust-filter',
    name: 'Exhaust filter clogged',
    how: 'Grey right through.',
    rate: { rows: [['A07', 1]], component: { id: 'filters', share: 0.35 } },
    complaints: { 'weak-suction': 0.6, 'cuts-out': 0.3, smell: 0.3 },
    saleShareIfLeft: 1,
    air: { does: 'blocks', part: 'exhaust-filter' },
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'look-pre-motor-filter',
    name: 'Pre-motor filter',
    how: 'Plug out, filter out. Hold it to the light; feel for damp.',
    minutes: 1,
    coversOff: ['filter-cover'],
    outcomes: [
      { id: 'clean', name: 'Light comes through' },
      { id: 'clogged', name: 'Grey, packed or damp' },
    ],
    sound: { clean: 0.93, clogged: 0.07 },
    under: { 'pre-motor-filter-clogged': { clogged: 0.96, clean: 0.04 } },
  },
  {
    kind: 'look',
    id: 'look-exhaust-filter',
    name: 'Exhaust filter',
    how: 'Plug out, filter out. Grey right through? Sniff it.',
    minutes: 1,
    coversOff: ['exhaust-cover'],
    outcomes: [
      { id: 'clean', name: 'Pale' },
      { id: 'clogged', name: 'Grey through and through' },
    ],
    sound: { clean: 0.9, clogged: 0.1 },
    under: { 'exhaust-filter-clogged': { clogged: 0.95, clean: 0.05 } },
  },
  {
    kind: 'air',
    id: 'air-pre-filter-out',
    name: 'Suction without the pre-motor filter',
    how: 'Plug out, filter out, closed up again. Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Ten seconds at most, palm over the hose end. Plug out before touching; filter back.',
    minutes: 2.5,
    caution: 'Ten seconds only: dust goes to the motor.',
    outcomes: [
      { id: 'same', name: 'Pulls as before' },
      { id: 'better', name: 'Pulls much harder' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { same: 0.96, better: 0.04 },
    under: { 'pre-motor-filter-clogged': { better: 0.93, same: 0.07 } },
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
  {
    kind: 'air',
    id: 'air-exhaust-filter-out',
    name: 'Suction without the exhaust filter',
    how: 'Plug out, filter out, its cover back. Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Ten seconds, palm over the hose end. Plug out before touching; filter back.',
    minutes: 2.5,
    outcomes: [
      { id: 'same', name: 'Pulls as before' },
      { id: 'better', name: 'Pulls harder' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { same: 0.96, better: 0.04 },
    under: { 'exhaust-filter-clogged': { better: 0.85, same: 0.15 } },
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

const repairs: NonNullable<BlueprintFragment['repairs']> = [
  {
    id: 'pre-motor-filter-new',
    name: 'New pre-motor filter',
    part: 'pre-motor-filter',
    removes: ['pre-motor-filter-clogged'],
    coversOff: ['filter-cover'],
    options: [
      { id: 'new', name: 'New filter', minutes: 3, costMinor: { low: 300, high: 800 }, success: 0.99, breakRisk: 0.01 },
      {
        id: 'clean',
        name: 'Wash, 24 h dry, if marked washable',
        minutes: 6,
        costMinor: { low: 0, high: 0 },
        success: 0.75,
        breakRisk: 0.01,
      },
    ],
    forbidden: 'Running without it: the dust ruins the motor.',
  },
  {
    id: 'exhaust-filter-new',
    name: 'New exhaust filter',
    part: 'exhaust-filter',
    removes: ['exhaust-filter-clogged'],
    coversOff: ['exhaust-cover'],
    options: [
      {
        id: 'new',
        name: 'New filter',
        minutes: 3,
        costMinor: { low: 600, high: 1400 },
        success: 0.99,
        breakRisk: 0.01,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-listen': {
    'pre-motor-filter-clogged': { high: 0.6, even: 0.4 },
    'exhaust-filter-clogged': { high: 0.35, even: 0.65 },
  },
  'run-smell': {
    'pre-motor-filter-clogged': { dusty: 0.7, clean: 0.3 },
    'exhaust-filter-clogged': { dusty: 0.65, clean: 0.35 },
  },
  'run-lamps': { 'pre-motor-filter-clogged': { warning: 0.4, right: 0.6 } },
  'air-hose-end': {
    'pre-motor-filter-clogged': { weak: 0.5, fair: 0.45, strong: 0.05 },
    'exhaust-filter-clogged': { fair: 0.45, strong: 0.5, weak: 0.05 },
  },
  'air-head': {
    'pre-motor-filter-clogged': { weak: 0.5, fair: 0.45, strong: 0.05 },
    'exhaust-filter-clogged': { fair: 0.45, strong: 0.5, weak: 0.05 },
  },
  'air-blockage-lamp': { 'pre-motor-filter-clogged': { 'stays-lit': 0.35, right: 0.65 } },
  'run-soak': {
    'pre-motor-filter-clogged': { 'cuts-out': 0.55, cool: 0.35, smells: 0.1 },
    'exhaust-filter-clogged': { 'cuts-out': 0.4, smells: 0.2, cool: 0.4 },
  },
}

/** The filter before the motor and the one after it, behind the covers `filter-cover` and `exhaust-cover`. */
export const filters: BlueprintFragment = { parts, faults, checks, repairs, addsTo }
