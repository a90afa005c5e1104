import type { BlueprintFragment } from '../../fragment.ts'

export interface SuctionAtHeadOptions {
  /** How the head is set for it, as “Hose stowed, handle up so the brush stands still”. */
  readonly set: string
}

const checks = (o: SuctionAtHeadOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'air',
    id: 'air-head',
    name: 'Paper under the head',
    how: `Covers on, RCD socket of 30 mA or less. ${o.set}. Slide paper under the head; hands clear of all that turns. Plug out before touching.`,
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
export const suctionAtHead = (o: SuctionAtHeadOptions): BlueprintFragment => ({ checks: checks(o) })
