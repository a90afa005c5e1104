import type { NoteContentInput } from './note.ts'

/** One machine of the demonstration: what is written about it and how many minutes after it came in. */
export type DemoMachine = {
  readonly id: string
  readonly cameInAt: string
  readonly notes: readonly (readonly [minutesLater: number, content: NoteContentInput])[]
}

const blueprint = 'bagged-upright-two-motors'
const plate = { voltageV: 230, frequencyHz: 50, powerW: 1200, protectionClass: 'II' as const, massKg: 9 }
const invented: NoteContentInput = {
  kind: 'said',
  text: 'Invented for the demonstration: no such machine, seller or sale.',
}

type Added = Extract<NoteContentInput, { kind: 'added' }>
const cameIn = (own: Pick<Added, 'name' | 'paidMinor' | 'complaints' | 'claim' | 'missing'>): NoteContentInput => ({
  kind: 'added',
  blueprint,
  plate,
  currency: 'GBP',
  ...own,
})
const grade = (check: string, outcome: string, minutes: number): NoteContentInput => ({
  kind: 'reading',
  check,
  result: { kind: 'grade', outcome },
  minutes,
})
const ohms = (check: string, resistanceOhm: number, minutes: number): NoteContentInput => ({
  kind: 'reading',
  check,
  result: { kind: 'ohms', resistanceOhm },
  minutes,
})
const open = (check: string, minutes: number): NoteContentInput => ({
  kind: 'reading',
  check,
  result: { kind: 'open' },
  minutes,
})
const jumps = (check: string, minutes: number): NoteContentInput => ({
  kind: 'reading',
  check,
  result: { kind: 'jumps' },
  minutes,
})
const opened = (cover: string, minutes: number): NoteContentInput => ({ kind: 'opened', cover, minutes })
const closed = (cover: string, minutes: number): NoteContentInput => ({ kind: 'closed', cover, minutes })

/** Suction in kPa at the end of the hose: sealed, then at holes of 13, 19 and 26 mm, a minute each. */
const gaugeReadings = (from: number, kPa: readonly number[]): DemoMachine['notes'] =>
  [null, 0.013, 0.019, 0.026].map((diameterM, i) => [
    from + i,
    {
      kind: 'gauge',
      minutes: 1,
      reading: {
        way: 'hose-end',
        opening: diameterM === null ? { kind: 'sealed' } : { kind: 'hole', diameterM },
        read: { measure: 'suction', suctionPa: 1000 * (kPa[i] ?? 0) },
        instrument: 'digital-manometer-5-psi',
        mainsV: 231,
      },
    },
  ])
const measured = (
  quantity: 'insulation' | 'touch-current',
  value: number,
  instrument: string,
  testVoltageV: number | null,
): NoteContentInput => ({
  kind: 'proof',
  minutes: 3,
  finding: { kind: 'reading', quantity, part: 'the machine', value, instrument, testVoltageV, checkedOn: '2026-01-10' },
})

const green: DemoMachine = {
  id: 'demo-green',
  cameInAt: '2026-03-16T18:05:00.000Z',
  notes: [
    [
      0,
      cameIn({
        name: 'Green upright, Dovecote Lane',
        paidMinor: 600,
        complaints: ['dead'],
        claim: 'Was fine on Sunday, Monday nothing. Not even the lamp.',
      }),
    ],
    [1, invented],
  ],
}

const silver: DemoMachine = {
  id: 'demo-silver',
  cameInAt: '2026-03-15T09:30:00.000Z',
  notes: [
    [
      0,
      cameIn({
        name: 'Silver upright, Mrs Abelthorpe',
        paidMinor: 1000,
        complaints: ['intermittent'],
        claim: 'Goes off when I reach under the bed, comes back by itself.',
      }),
    ],
    [1, invented],
    [4, grade('look-flex', 'whole', 2)],
    [6, ohms('pins-on', 6.8, 1)],
    [8, jumps('pins-bend-entry', 1)],
    [9, ohms('pins-bend-plug-end', 6.9, 1)],
    [15, opened('handle-cover', 6)],
    [17, ohms('line-pin-to-entry', 0.4, 1)],
    [18, { kind: 'struck', note: 'demo-silver.8', reason: 'Read with the lead of the meter loose' }],
    [20, ohms('line-pin-to-entry', 0.3, 1)],
  ],
}

const blue: DemoMachine = {
  id: 'demo-blue',
  cameInAt: '2026-03-07T10:15:00.000Z',
  notes: [
    [
      0,
      cameIn({
        name: 'Blue upright, Ottilie from the choir',
        paidMinor: 1500,
        complaints: ['weak-suction', 'poor-pickup'],
        claim: 'Leaves half of it on the carpet. New bag did nothing, I think.',
      }),
    ],
    [1, invented],
    [4, grade('look-flex', 'whole', 2)],
    [6, grade('look-casing', 'closed', 2)],
    [8, opened('bag-door', 0.2)],
    [10, grade('look-wet', 'dry', 1)],
    [11, closed('bag-door', 0.3)],
    [12, opened('plug-top', 0.5)],
    [14, grade('look-plug', 'good', 1.5)],
    [15, closed('plug-top', 0.5)],
    [16, ohms('pins-on', 5.6, 1)],
    [17, open('line-pin-to-metal', 1)],
    [18, open('neutral-pin-to-metal', 1)],
    [20, grade('run-first', 'runs', 1)],
    ...gaugeReadings(24, [17.9, 9.22, 4.24, 1.7]),
    [30, grade('ball-through-hose', 'sticks', 1.5)],
    [31, opened('bag-door', 0.2)],
    [32, grade('look-bag', 'full', 1)],
    [33, opened('filter-cover', 0.5)],
    [34, grade('look-pre-motor-filter', 'clogged', 1)],
    [43, { kind: 'repaired', repair: 'hose-clear', option: 'clean', minutes: 9, costMinor: 0, text: 'A sock' }],
    [46, { kind: 'repaired', repair: 'pre-motor-filter-new', option: 'new', minutes: 3, costMinor: 450 }],
    [49, { kind: 'repaired', repair: 'bag-new', option: 'new', minutes: 3, costMinor: 150 }],
    [50, closed('filter-cover', 0.5)],
    [51, closed('bag-door', 0.3)],
    ...gaugeReadings(54, [18.0, 10.3, 5.7, 2.7]),
    [60, grade('air-hose-end', 'strong', 1)],
    [82, grade('run-soak', 'cool', 22)],
    [91, grade('run-full', 'works', 8)],
    [113, { kind: 'spent', costMinor: 80, minutes: 20, text: 'Cleaned, cloths and cleaner' }],
    [4340, { kind: 'rules', rules: { region: 'UK', profile: 'uk-cop-5.v1' }, lead: { size: '0.75 mm2', lengthM: 10 } }],
    [4342, { kind: 'proof', finding: { kind: 'look', step: 'visual', good: true }, minutes: 4 }],
    [4345, measured('insulation', 120e6, 'insulation-tester', 500)],
    [4348, measured('touch-current', 0.00008, 'leakage-tester', null)],
    [4350, { kind: 'proof', finding: { kind: 'look', step: 'polarity', good: true }, minutes: 2 }],
    [4353, { kind: 'proof', finding: { kind: 'look', step: 'run', good: true }, minutes: 3 }],
    [
      4380,
      {
        kind: 'left',
        exit: 'sell-working',
        receivedMinor: 8500,
        minutes: 25,
        safety: 'Tested at the repair evening in the invented village hall, record with the buyer',
      },
    ],
  ],
}

const red: DemoMachine = {
  id: 'demo-red',
  cameInAt: '2026-03-10T17:40:00.000Z',
  notes: [
    [
      0,
      cameIn({
        name: 'Wine-red upright, school store',
        paidMinor: 300,
        complaints: ['trips-supply', 'smell'],
        claim: 'Bang, then it tripped the whole corridor.',
        missing: ['hose'],
      }),
    ],
    [1, invented],
    [4, grade('look-flex', 'whole', 2)],
    [6, ohms('pins-on', 1.6, 1)],
    [8, opened('bag-door', 0.2)],
    [9, grade('look-wet', 'tide', 1)],
    [10, opened('filter-cover', 0.5)],
    [17, opened('back-cover', 7)],
    [25, opened('motor-cover', 7)],
    [27, grade('turn-motor-by-hand', 'locked', 1)],
    [29, ohms('motor-to-metal', 180_000, 1)],
    [30, { kind: 'confirmed', fault: 'water-in-motor', text: 'Rust on the shaft, wet dust packed in the fan' }],
    [
      31,
      {
        kind: 'said',
        text: 'A motor costs more than the machine would bring after a tide line. Board, brush motor and roll are sound.',
      },
    ],
    [80, { kind: 'left', exit: 'break-for-parts', receivedMinor: 3900, minutes: 48 }],
  ],
}

const cream: DemoMachine = {
  id: 'demo-cream',
  cameInAt: '2026-03-14T14:00:00.000Z',
  notes: [
    [
      0,
      cameIn({
        name: 'Cream upright, Barnaby’s garage',
        paidMinor: 800,
        complaints: ['brush-not-turning'],
        claim: 'Sucks well, brush stands still.',
      }),
    ],
    [1, invented],
    [3, grade('overload-button', 'in', 0.3)],
    [4, grade('spin-roll', 'free', 0.7)],
    [7, opened('sole-plate', 2.5)],
    [11, opened('belt-cover', 4)],
    [12, grade('look-belt', 'stripped', 1)],
    [13, { kind: 'confirmed', fault: 'belt-stripped' }],
    [14, { kind: 'said', text: 'Belt ordered, here on Thursday' }],
    [2900, { kind: 'repaired', repair: 'belt-new', option: 'new', minutes: 18, costMinor: 650 }],
    [2905, closed('belt-cover', 4)],
    [2908, closed('sole-plate', 2.5)],
  ],
}

/** Five invented machines at different stages; the one that came in first stands first. */
export const demoMachines: readonly DemoMachine[] = [blue, red, cream, silver, green]
