import type { BlueprintFragment } from '../../fragment.ts'

export interface SuctionByHandOptions {
  /** Where the palm goes: the hose end, or the inlet of a machine without a hose. */
  readonly at: 'hose end' | 'inlet'
}

const checks = (o: SuctionByHandOptions): NonNullable<BlueprintFragment['checks']> => [
  {
    kind: 'air',
    id: 'air-hose-end',
    name: `Hand over the ${o.at}`,
    how: `Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Palm over the ${o.at}: how hard does it pull? Plug out before touching the machine.`,
    minutes: 1,
    outcomes: [
      { id: 'strong', name: 'Pulls hard' },
      { id: 'fair', name: 'Pulls, but not hard' },
      { id: 'weak', name: 'Hardly pulls' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { strong: 0.96, fair: 0.04 },
    under: {},
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
  {
    kind: 'air',
    id: 'air-sealed',
    name: 'Sealed at the inlet',
    how: `Covers on, RCD socket of 30 mA or less, hands clear of all that turns. ${o.at === 'hose end' ? 'Hose off; flat' : 'Flat'} blank over the inlet for three seconds. Plug out before touching. Misses blockages: it finds leaks and a tired motor.`,
    minutes: 1.5,
    outcomes: [
      { id: 'strong', name: 'Holds hard, pitch rises' },
      { id: 'fair', name: 'Holds, hiss somewhere' },
      { id: 'weak', name: 'Hardly holds' },
      { id: 'dead', name: 'Nothing runs' },
    ],
    sound: { strong: 0.96, fair: 0.04 },
    under: {},
    controls: { 'mains-switch': 'on' },
    driven: { element: 'suction-motor', otherwise: 'dead' },
  },
]

/** Suction judged by the hand, at the hose end and sealed at the inlet. */
export const suctionByHand = (o: SuctionByHandOptions): BlueprintFragment => ({ checks: checks(o) })
