import type { BlueprintFragment } from '../../fragment.ts'

const checks: NonNullable<BlueprintFragment['checks']> = [
  {
    kind: 'air',
    id: 'air-head',
    name: 'Paper under the head',
    how: 'Covers on, RCD socket of 30 mA or less. Hose stowed, handle up so the brush stands still. Slide paper under the head; hands clear of brush and impeller. Plug out before touching.',
    minutes: 1.5,
    outcomes: [
      { id: 'strong', name: 'Sticks fast' },
      { id: 'fair', name: 'Sticks loosely' },
      { id: 'weak', name: 'Does not stick' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { strong: 0.95, fair: 0.05 },
    under: {},
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

/** Suction at the floor head, judged by paper. */
export const suctionAtHead: BlueprintFragment = { checks }
