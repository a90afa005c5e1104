import type { BlueprintInput } from '../../schema.ts'

/** Looking the lead over, before anything is run. */
export const leadLooks: BlueprintInput['checks'] = [
  {
    kind: 'look',
    id: 'look-flex',
    name: 'Flex, end to end',
    how: 'Plug out. Run the whole flex through your fingers. Cuts, crushed spots, tape, bare copper, sticky sheath?',
    minutes: 2,
    beforeRunning: true,
    outcomes: [
      { id: 'whole', name: 'Sheath whole, scuffs at most' },
      { id: 'crushed', name: 'Crushed or kinked spot', danger: true },
      { id: 'cut', name: 'Cut, taped, sticky or bare', danger: true },
    ],
    sound: { whole: 0.99, crushed: 0.01 },
    under: {
      'flex-sheath-damaged': { cut: 0.88, crushed: 0.08, whole: 0.04 },
      'flex-mid-line-open': { crushed: 0.6, cut: 0.28, whole: 0.12 },
      'flex-short': { crushed: 0.48, cut: 0.4, whole: 0.12 },
    },
  },
  {
    kind: 'look',
    id: 'look-plug',
    name: 'Plug and fuse',
    how: 'Plug out, top off. Tug each core. Browning, cracks, bare pins, cord grip on the sheath? Read the fuse: 13 A, standard mark.',
    minutes: 1.5,
    coversOff: ['plug-top'],
    beforeRunning: true,
    outcomes: [
      { id: 'good', name: 'Tight, whole, right fuse' },
      { id: 'hot', name: 'Loose or browned terminal', danger: true },
      { id: 'cracked', name: 'Cracked, unsleeved or no cord grip', danger: true },
      { id: 'wrong-fuse', name: 'Wrong or bridged fuse', danger: true },
    ],
    sound: { good: 0.99, hot: 0.01 },
    under: {
      'plug-line-terminal-loose': { hot: 0.92, good: 0.08 },
      'plug-neutral-terminal-loose': { hot: 0.92, good: 0.08 },
      'plug-damaged': { cracked: 0.96, good: 0.04 },
      'plug-fuse-wrong': { 'wrong-fuse': 0.97, good: 0.03 },
    },
  },
]
