import type { BlueprintFragment } from '../../fragment.ts'

/** A flap or float behind a window that shows a full bag or a blocked way; no electrics. Behind the bag door. */
export const fillIndicator: BlueprintFragment = {
  parts: [
    {
      id: 'fill-indicator',
      name: 'Fill indicator',
      does: 'Shows red when the bag is full or the way is blocked',
      group: 'air',
      behind: 'bag-door',
    },
  ],
  faults: [
    {
      id: 'fill-indicator-stuck',
      part: 'fill-indicator',
      name: 'Fill indicator stuck',
      how: 'Dust in its tube: red all the time, or never.',
      rate: { rows: [['I01', 1]] },
      complaints: { 'lamp-wrong': 0.7 },
      saleShareIfLeft: 0.92,
    },
  ],
  checks: [
    {
      kind: 'air',
      id: 'air-blockage-lamp',
      name: 'Fill indicator: block and clear',
      how: 'Covers on, RCD socket of 30 mA or less, hands clear of all that turns. Palm over the hose end at full speed: red. Let go: clear. Plug out before touching.',
      minutes: 1,
      controls: { 'mains-switch': 'on' },
      outcomes: [
        { id: 'right', name: 'Red when blocked, clear when free' },
        { id: 'stays-lit', name: 'Red all the time' },
        { id: 'stays-dark', name: 'Never red' },
        { id: 'dead', name: 'Nothing runs' },
      ],
      sound: { right: 0.96, 'stays-lit': 0.02, 'stays-dark': 0.02 },
      under: { 'fill-indicator-stuck': { 'stays-dark': 0.55, 'stays-lit': 0.42, right: 0.03 } },
      driven: { element: 'suction-motor', otherwise: 'dead' },
    },
  ],
  repairs: [
    {
      id: 'fill-indicator-clean',
      name: 'Clean the fill indicator',
      part: 'fill-indicator',
      removes: ['fill-indicator-stuck'],
      coversOff: ['bag-door'],
      options: [
        {
          id: 'clean',
          name: 'Tube blown out, float moves',
          minutes: 12,
          costMinor: { low: 0, high: 0 },
          success: 0.85,
          breakRisk: 0.02,
        },
      ],
    },
  ],
  addsTo: { 'run-full': { 'fill-indicator-stuck': { lamp: 0.85, works: 0.15 } } },
}
