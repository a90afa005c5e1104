import type { BlueprintFragment } from '../../fragment.ts'

export interface HeadlampOptions {
  readonly line: string
  readonly neutral: string
  /** Cold resistance of its filament, or of what feeds its diodes. */
  readonly coldOhm: number
  readonly cover: string
}

/** A lamp at the front of the head, across the mains behind the switch. A meter sees its cold filament beside the motor. */
export const headlamp = ({ line, neutral, coldOhm, cover }: HeadlampOptions): BlueprintFragment => ({
  points: [{ id: 'lamp.line', name: 'Lamp holder, line side', behind: cover }],
  parts: [{ id: 'headlamp', name: 'Headlamp', does: 'Lights the floor', group: 'control', behind: cover }],
  circuit: [
    { kind: 'wire', id: 'lamp-feed', part: 'headlamp', from: line, to: 'lamp.line', lengthM: 0.8, areaMm2: 0.5 },
    {
      kind: 'resistor',
      id: 'headlamp',
      part: 'headlamp',
      from: 'lamp.line',
      to: neutral,
      resistanceOhm: coldOhm,
      spread: 0.3,
    },
  ],
  faults: [
    {
      id: 'headlamp-dead',
      part: 'headlamp',
      name: 'Headlamp dead',
      how: 'Lamp burnt out or shaken loose.',
      rate: { rows: [['I02', 1]] },
      electrical: [{ element: 'headlamp', becomes: 'open' }],
      complaints: { 'lamp-wrong': 0.6 },
      saleShareIfLeft: 0.95,
    },
  ],
  checks: [
    {
      kind: 'meter',
      id: 'headlamp-through',
      name: 'Headlamp, cold',
      how: 'Plug out. Lamp out of its holder. Its two contacts: tens of ohms cold, many times less than hot.',
      minutes: 1,
      red: 'lamp.line',
      black: neutral,
      unplug: ['lamp-feed'],
    },
    {
      kind: 'run',
      id: 'run-headlamp',
      name: 'Headlamp while it runs',
      how: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Switch on and look. Plug out before touching.',
      minutes: 0.5,
      outcomes: [
        { id: 'lit', name: 'Lit' },
        { id: 'power-dark', name: 'Dark, motor runs' },
        { id: 'dead', name: 'Nothing runs' },
      ],
      sound: { lit: 0.98, 'power-dark': 0.02 },
      under: { 'headlamp-dead': { 'power-dark': 0.98, lit: 0.02 } },
      controls: { 'mains-switch': 'on' },
      driven: { element: 'suction-motor', otherwise: 'dead' },
    },
  ],
  repairs: [
    {
      id: 'headlamp-new',
      name: 'New headlamp',
      part: 'headlamp',
      removes: ['headlamp-dead'],
      coversOff: [cover],
      options: [
        {
          id: 'new',
          name: 'Same volts, watts and cap',
          minutes: 4,
          costMinor: { low: 100, high: 400 },
          success: 0.97,
          breakRisk: 0.01,
        },
      ],
      note: 'More watts than stated melt the lens.',
    },
  ],
  addsTo: { 'run-full': { 'headlamp-dead': { lamp: 0.98, works: 0.02 } } },
})
