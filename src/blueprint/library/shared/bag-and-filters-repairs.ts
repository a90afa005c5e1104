import type { BlueprintInput } from '../../schema.ts'

/** Minutes are those once the covers are off; costs, success and break risk from the trade catalogue (judgement). */
export const bagAndFilterRepairs: BlueprintInput['repairs'] = [
  {
    id: 'bag-new',
    name: 'New bag',
    part: 'bag',
    removes: ['bag-full'],
    coversOff: ['bag-door'],
    options: [
      {
        id: 'new',
        name: 'New bag, neck cleared',
        minutes: 3,
        costMinor: { low: 100, high: 200 },
        success: 0.99,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'bag-split-mend',
    name: 'New bag, chamber cleaned',
    part: 'bag',
    removes: ['bag-split', 'bag-full'],
    coversOff: ['filter-cover'],
    options: [
      {
        id: 'new',
        name: 'New bag, chamber and filter vacuumed',
        minutes: 20,
        costMinor: { low: 200, high: 800 },
        success: 0.96,
        breakRisk: 0.01,
      },
    ],
    note: 'Look at the motor for dust.',
  },
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
  {
    id: 'door-seal-mend',
    name: 'Mend the bag door seal',
    part: 'bag-door-seal',
    removes: ['bag-door-seal-perished'],
    coversOff: ['bag-door'],
    options: [
      {
        id: 'new',
        name: 'New seal or same section',
        minutes: 10,
        costMinor: { low: 100, high: 600 },
        success: 0.95,
        breakRisk: 0.01,
      },
      {
        id: 'clean',
        name: 'Wash and seat again',
        minutes: 8,
        costMinor: { low: 0, high: 20 },
        success: 0.6,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'door-latch-mend',
    name: 'Mend the bag door latch',
    part: 'bag-door-latch',
    removes: ['bag-door-latch-broken'],
    coversOff: ['bag-door'],
    options: [
      {
        id: 'salvaged',
        name: 'Latch or door from a donor',
        minutes: 12,
        costMinor: { low: 200, high: 900 },
        success: 0.95,
        breakRisk: 0.04,
      },
      {
        id: 'refit',
        name: 'Pin the old one',
        minutes: 15,
        costMinor: { low: 0, high: 50 },
        success: 0.7,
        breakRisk: 0.04,
      },
    ],
  },
]
