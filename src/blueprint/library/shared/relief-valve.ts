import type { BlueprintFragment } from '../../fragment.ts'

export interface ReliefValveOptions {
  readonly cover: string
}

const parts = (o: ReliefValveOptions): NonNullable<BlueprintFragment['parts']> => [
  { id: 'relief-valve', name: 'Relief valve', does: 'Lets air in when all is blocked', group: 'air', behind: o.cover },
]

const faults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'relief-valve-stuck-open',
    part: 'relief-valve',
    name: 'Relief valve stuck open',
    how: 'Spring lost or grit under it; hisses all the time.',
    rate: { rows: [['A19', 1]] },
    complaints: { 'weak-suction': 0.75, noise: 0.35 },
    saleShareIfLeft: 0.4,
    air: { does: 'stands-open', part: 'pre-motor-filter', side: 'before' },
  },
]

const checks = (o: ReliefValveOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'look',
    id: 'press-relief-valve',
    name: 'Relief valve',
    how: 'Plug out. Press the valve: it must spring back and sit flat.',
    minutes: 0.7,
    coversOff: [o.cover],
    outcomes: [
      { id: 'springs', name: 'Springs back flat' },
      { id: 'stuck', name: 'Stays open or crooked' },
    ],
    sound: { springs: 0.98, stuck: 0.02 },
    under: { 'relief-valve-stuck-open': { stuck: 0.93, springs: 0.07 } },
  },
]

const repairs = (o: ReliefValveOptions): NonNullable<BlueprintFragment['repairs']> => [
  {
    id: 'relief-valve-clean',
    name: 'Clean the relief valve',
    part: 'relief-valve',
    removes: ['relief-valve-stuck-open'],
    coversOff: [o.cover],
    options: [
      {
        id: 'clean',
        name: 'Clean, seat again',
        minutes: 10,
        costMinor: { low: 0, high: 20 },
        success: 0.85,
        breakRisk: 0.01,
      },
      {
        id: 'new',
        name: 'New valve and spring',
        minutes: 10,
        costMinor: { low: 100, high: 400 },
        success: 0.97,
        breakRisk: 0.01,
      },
    ],
    forbidden: 'Taping it shut: the motor overheats on the next blockage.',
  },
]

const addsTo: NonNullable<BlueprintFragment['addsTo']> = {
  'run-listen': { 'relief-valve-stuck-open': { whistle: 0.8, even: 0.2 } },
  'air-hose-end': { 'relief-valve-stuck-open': { fair: 0.6, weak: 0.3, strong: 0.1 } },
  'air-head': { 'relief-valve-stuck-open': { fair: 0.6, weak: 0.3, strong: 0.1 } },
  'air-sealed': { 'relief-valve-stuck-open': { fair: 0.65, weak: 0.3, strong: 0.05 } },
  'air-blockage-lamp': { 'relief-valve-stuck-open': { 'stays-dark': 0.5, right: 0.5 } },
  'run-full': { 'relief-valve-stuck-open': { weak: 0.88, works: 0.12 } },
}

/** The valve that lets air in when all is blocked. */
export const reliefValve = (o: ReliefValveOptions): BlueprintFragment => ({
  parts: parts(o),
  faults,
  checks: checks(o),
  repairs: repairs(o),
  addsTo,
})
