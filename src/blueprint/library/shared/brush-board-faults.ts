import type { BlueprintFragment } from '../../fragment.ts'

export const brushBoardFaults: NonNullable<BlueprintFragment['faults']> = [
  {
    id: 'board-dead',
    part: 'board',
    name: 'Control board dead',
    how: 'Its own supply burnt out: no brush, no height, no lamps. Suction runs.',
    rate: {
      rows: [
        ['P21', 0.643],
        ['H16', 0.643],
      ],
      component: { id: 'speed-control', share: 0.5 },
    },
    electrical: [
      { element: 'board-supply', becomes: 'open' },
      { element: 'triac', becomes: 'open' },
    ],
    complaints: { 'brush-not-turning': 0.95, 'hard-to-push': 0.3, 'lamp-wrong': 0.4, smell: 0.1 },
    excludes: ['triac-open', 'triac-shorted'],
  },
  {
    id: 'triac-open',
    part: 'board',
    name: 'Brush drive triac open',
    how: 'Blown by a jam or by touching neck wires. A meter does not show it.',
    rate: {
      rows: [
        ['P21', 0.357],
        ['H16', 0.357],
      ],
      component: { id: 'speed-control', share: 0.25 },
    },
    electrical: [{ element: 'triac', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.97 },
    excludes: ['board-dead', 'triac-shorted'],
  },
  {
    id: 'triac-shorted',
    part: 'board',
    name: 'Brush drive triac shorted',
    how: 'Brush goes as soon as the handle is back; a jam does not stop it.',
    rate: { rows: [['P20', 1]], component: { id: 'speed-control', share: 0.15 } },
    electrical: [{ element: 'triac', becomes: 'short' }],
    complaints: { smell: 0.15, 'lamp-wrong': 0.2 },
    excludes: ['board-dead', 'triac-open'],
    saleShareIfLeft: 0.3,
  },
  {
    id: 'park-switch-open',
    part: 'park-switch',
    name: 'Park switch stuck open',
    how: 'No click when the handle goes back; the lever is bent or the switch worn.',
    rate: { rows: [['P15', 0.6]], component: { id: 'brush-roll', share: 0.03 } },
    electrical: [{ element: 'park-switch', becomes: 'open' }],
    complaints: { 'brush-not-turning': 0.97 },
    excludes: ['park-switch-closed'],
  },
  {
    id: 'park-switch-closed',
    part: 'park-switch',
    name: 'Park switch stuck closed',
    how: 'The brush keeps turning with the handle up.',
    rate: { rows: [['P15', 0.4]], component: { id: 'brush-roll', share: 0.02 } },
    electrical: [{ element: 'park-switch', becomes: 'short' }],
    complaints: { 'will-not-park': 0.9 },
    excludes: ['park-switch-open'],
    saleShareIfLeft: 0.4,
  },
  {
    id: 'drag-sensor-dead',
    part: 'drag-sensor',
    name: 'Drag sensor dirty, dead or its magnet lost',
    how: 'The board thinks the roll is jammed: brush starts, then stops after two seconds.',
    rate: { rows: [['H13', 1]], component: { id: 'brush-roll', share: 0.05 } },
    complaints: { 'brush-not-turning': 0.9, 'lamp-wrong': 0.4 },
  },
]
