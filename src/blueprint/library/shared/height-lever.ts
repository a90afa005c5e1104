import type { BlueprintFragment } from '../../fragment.ts'

/** Head height set by hand: a lever or knob turns a cam. Reached behind the sole plate. */
export const heightLever: BlueprintFragment = {
  parts: [
    {
      id: 'height-lever',
      name: 'Height lever and cam',
      does: 'Sets the head to the pile',
      group: 'mechanical',
      behind: 'sole-plate',
    },
  ],
  faults: [
    {
      id: 'height-cam-broken',
      part: 'height-lever',
      name: 'Height cam or lever broken',
      how: 'The lever turns, the head stays where it is.',
      rate: { rows: [['H17', 1]], component: { id: 'floor-head', share: 0.15 } },
      complaints: { 'hard-to-push': 0.75, 'poor-pickup': 0.4 },
      saleShareIfLeft: 0.6,
    },
  ],
  checks: [
    {
      kind: 'look',
      id: 'work-height-lever',
      name: 'Height lever, lowest to highest',
      how: 'Plug out. Machine on a flat board. Lowest to highest: does the lip rise with each step?',
      minutes: 0.7,
      outcomes: [
        { id: 'rises', name: 'Rises with each step' },
        { id: 'stays', name: 'Stays, or drops back' },
      ],
      sound: { rises: 0.97, stays: 0.03 },
      under: { 'height-cam-broken': { stays: 0.96, rises: 0.04 } },
    },
  ],
  repairs: [
    {
      id: 'height-cam-mend',
      name: 'Mend the height cam',
      part: 'height-lever',
      removes: ['height-cam-broken'],
      coversOff: ['sole-plate'],
      options: [
        {
          id: 'salvaged',
          name: 'Cam or lever from a donor',
          minutes: 15,
          costMinor: { low: 100, high: 600 },
          success: 0.93,
          breakRisk: 0.04,
        },
        {
          id: 'refit',
          name: 'Re-pinned',
          minutes: 15,
          costMinor: { low: 0, high: 30 },
          success: 0.65,
          breakRisk: 0.04,
        },
      ],
    },
  ],
  addsTo: { 'run-full': { 'height-cam-broken': { height: 0.92, works: 0.08 } } },
}
