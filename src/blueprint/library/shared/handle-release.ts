import type { BlueprintFragment } from '../../fragment.ts'

export interface HandleReleaseOptions {
  readonly cover: string
}

/** The pedal that lets an upright's handle down. */
export const handleRelease = ({ cover }: HandleReleaseOptions): BlueprintFragment => ({
  parts: [
    {
      id: 'release-pedal',
      name: 'Handle release pedal',
      does: 'Lets the handle down',
      group: 'mechanical',
      behind: cover,
    },
  ],
  faults: [
    {
      id: 'release-pedal-stuck',
      part: 'release-pedal',
      name: 'Handle release pedal broken or its spring off',
      how: 'The handle will not come down, or falls by itself.',
      rate: { rows: [['X02', 1]] },
      complaints: { 'will-not-park': 0.8, 'hard-to-push': 0.4 },
      saleShareIfLeft: 0.45,
    },
  ],
  checks: [
    {
      kind: 'look',
      id: 'work-release-pedal',
      name: 'Handle down and up, five times',
      how: 'Plug out. Foot on the pedal: down, up, locked, five times.',
      minutes: 0.7,
      outcomes: [
        { id: 'works', name: 'Lets go and locks' },
        { id: 'stuck', name: 'Sticks, or does not hold' },
      ],
      sound: { works: 0.98, stuck: 0.02 },
      under: { 'release-pedal-stuck': { stuck: 0.95, works: 0.05 } },
    },
  ],
  repairs: [
    {
      id: 'release-pedal-mend',
      name: 'Mend the release pedal',
      part: 'release-pedal',
      removes: ['release-pedal-stuck'],
      coversOff: [cover],
      options: [
        {
          id: 'refit',
          name: 'Spring back on its peg',
          minutes: 15,
          costMinor: { low: 0, high: 30 },
          success: 0.75,
          breakRisk: 0.04,
        },
        {
          id: 'salvaged',
          name: 'Pedal from a donor',
          minutes: 20,
          costMinor: { low: 100, high: 500 },
          success: 0.94,
          breakRisk: 0.04,
        },
      ],
      note: 'Cover it with a cloth: the spring flies.',
    },
  ],
  addsTo: { 'run-full': { 'release-pedal-stuck': { park: 0.93, works: 0.07 } } },
})
