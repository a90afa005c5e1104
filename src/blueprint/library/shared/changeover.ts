import type { BlueprintFragment } from '../../fragment.ts'

export interface ChangeoverOptions {
  readonly cover: string
}

const parts = (o: ChangeoverOptions): NonNullable<BlueprintFragment['parts']> => [
  {
    id: 'changeover-flap',
    name: 'Changeover flap',
    does: 'Turns suction to head or hose',
    group: 'air',
    behind: o.cover,
  },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'changeover-flap-stuck',
    part: 'changeover-flap',
    name: 'Changeover flap stuck',
    how: 'Jammed by grit, or its link is off: suction at one outlet whatever you do.',
    rate: { rows: [['A18', 1]], component: { id: 'blockage-unplaced', share: 0.1 } },
    complaints: { 'weak-suction': 0.65, 'poor-pickup': 0.45 },
    saleShareIfLeft: 0.3,
    air: { does: 'stands-open', part: 'changeover-flap', side: 'after' },
  },
]

const checks = (o: ChangeoverOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'work-changeover-flap',
    name: 'Changeover flap',
    how: 'Plug out. Pull the hose out and push it in; the flap must go over fully both ways.',
    minutes: 1,
    coversOff: [o.cover],
    outcomes: [
      { id: 'goes', name: 'Goes over fully' },
      { id: 'stuck', name: 'Sticks or hangs' },
    ],
    sound: { goes: 0.98, stuck: 0.02 },
    under: { 'changeover-flap-stuck': { stuck: 0.93, goes: 0.07 } },
  },
]

const repairs = (o: ChangeoverOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'flap-free',
    name: 'Free the changeover flap',
    part: 'changeover-flap',
    removes: ['changeover-flap-stuck'],
    coversOff: [o.cover],
    options: [
      {
        id: 'clean',
        name: 'Clean, hook the link on',
        minutes: 20,
        costMinor: { low: 0, high: 50 },
        success: 0.88,
        breakRisk: 0.04,
      },
      {
        id: 'salvaged',
        name: 'Flap from a donor',
        minutes: 22,
        costMinor: { low: 100, high: 500 },
        success: 0.95,
        breakRisk: 0.04,
      },
    ],
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'air-hose-end': { 'changeover-flap-stuck': { weak: 0.55, fair: 0.1, strong: 0.35 } },
  'air-head': { 'changeover-flap-stuck': { weak: 0.5, fair: 0.1, strong: 0.4 } },
  'air-sealed': { 'changeover-flap-stuck': { fair: 0.35, weak: 0.15, strong: 0.5 } },
  'run-full': { 'changeover-flap-stuck': { weak: 0.93, works: 0.07 } },
}

/** The flap that turns suction from the head to the hose. */
export const changeover = (o: ChangeoverOptions): BlueprintFragment => ({
  parts: parts(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
