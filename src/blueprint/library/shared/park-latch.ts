import type { BlueprintFragment } from '../../fragment.ts'

export interface ParkLatchOptions {
  readonly cover: string
}

const parts = (o: ParkLatchOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'park-latch',
    name: 'Park latch',
    does: 'Holds the handle upright',
    group: 'mechanical',
    behind: o.cover,
    spareShare: { low: 0.02, high: 0.05 },
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'park-latch-broken',
    part: 'park-latch',
    name: 'Park latch broken or its spring gone',
    how: 'Will not stay upright, or will not let go.',
    rate: { rows: [['X01', 1]] },
    complaints: { 'will-not-park': 0.9, 'hard-to-push': 0.1 },
    saleShareIfLeft: 0.5,
  },
]

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'look',
    id: 'work-park-latch',
    name: 'Lock the handle up, listen for the click',
    how: 'Plug out. Handle up and back five times. It must lock, let go, and the park switch must click.',
    minutes: 0.7,
    outcomes: [
      { id: 'clicks', name: 'Locks and clicks' },
      { id: 'no-click', name: 'Locks, no click' },
      { id: 'no-lock', name: 'Does not lock or let go' },
    ],
    sound: { clicks: 0.94, 'no-click': 0.05, 'no-lock': 0.01 },
    under: { 'park-latch-broken': { 'no-lock': 0.93, clicks: 0.05, 'no-click': 0.02 } },
  },
]

const repairs = (o: ParkLatchOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'park-latch-mend',
    name: 'Mend the park latch',
    part: 'park-latch',
    removes: ['park-latch-broken'],
    coversOff: [o.cover],
    options: [
      {
        id: 'salvaged',
        name: 'Latch and spring from a donor',
        minutes: 20,
        costMinor: { low: 200, high: 800 },
        success: 0.94,
        breakRisk: 0.04,
      },
      {
        id: 'refit',
        name: 'Own latch, new spring',
        minutes: 20,
        costMinor: { low: 0, high: 100 },
        success: 0.7,
        breakRisk: 0.04,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-brush-upright': { 'park-latch-broken': { 'goes-on': 0.4, stops: 0.6 } },
  'run-full': { 'park-latch-broken': { park: 0.95, works: 0.05 } },
}

/** What holds the handle upright. */
export const parkLatch = (o: ParkLatchOptions): BlueprintFragment => ({
  parts: parts(o),
  faults,
  checks,
  repairs: repairs(o),
  addsTo,
})
