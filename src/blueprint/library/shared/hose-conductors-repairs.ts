import type { BlueprintFragment } from '../../fragment.ts'
import type { HoseConductorsOptions } from './hose-conductors-options.ts'

const hoseSwap: NonNullable<BlueprintFragment['repairs']>[number] = {
  id: 'electric-hose-swap',
  name: 'Change the hose with its conductors',
  part: 'hose-conductors',
  removes: [
    'hose-line-flickers',
    'hose-line-open',
    'hose-neutral-flickers',
    'hose-neutral-open',
    'hose-conductors-touch',
    'head-switch-worn',
    'hose-split-cuff',
    'hose-split-middle',
    'hose-blocked',
  ],
  options: [
    {
      id: 'salvaged',
      name: 'Hose from a donor, tested bent at both cuffs',
      minutes: 5,
      costMinor: { low: 800, high: 3500 },
      success: 0.95,
      breakRisk: 0.01,
    },
    { id: 'new', name: 'New hose', minutes: 5, costMinor: { low: 2500, high: 6000 }, success: 0.98, breakRisk: 0.01 },
  ],
  note: 'The hose and the head switch on the handle come with it.',
}

export const hoseConductorsRepairs = (o: HoseConductorsOptions): NonNullable<BlueprintFragment['repairs']> => [
  hoseSwap,
  {
    id: 'socket-wire-mend',
    name: 'Put the socket wire back on',
    part: 'socket-wires',
    removes: ['socket-wire-off'],
    coversOff: [o.bodyCover],
    options: [
      {
        id: 'refit',
        name: 'New crimp terminal, pushed home',
        minutes: 8,
        costMinor: { low: 10, high: 30 },
        success: 0.97,
        breakRisk: 0.01,
      },
    ],
  },
  {
    id: 'hose-conductors-cut-back',
    name: 'Cut the hose back past the break',
    part: 'hose-conductors',
    removes: ['hose-line-flickers', 'hose-line-open', 'hose-neutral-flickers', 'hose-neutral-open'],
    coversOff: ['hose-handle'],
    options: [
      {
        id: 'refit',
        name: 'Cut back, conductors on the cuff’s own terminals',
        minutes: 25,
        costMinor: { low: 0, high: 100 },
        success: 0.8,
        breakRisk: 0.06,
      },
    ],
    note: 'State the shorter length.',
    forbidden: 'A joint or tape along the hose: mains runs there.',
  },
  {
    id: 'wand-contacts-mend',
    name: 'Mend the wand contacts',
    part: 'wand',
    removes: ['wand-contacts-burnt'],
    options: [
      {
        id: 'salvaged',
        name: 'Wand from a donor',
        minutes: 4,
        costMinor: { low: 600, high: 1800 },
        success: 0.95,
        breakRisk: 0.01,
      },
      {
        id: 'clean',
        name: 'Cleaned, spring bent back; only where nothing has melted',
        minutes: 15,
        costMinor: { low: 0, high: 20 },
        success: 0.5,
        breakRisk: 0.02,
      },
    ],
  },
  {
    id: 'head-switch-clean',
    name: 'Open and clean the head switch',
    part: 'head-switch',
    removes: ['head-switch-worn'],
    coversOff: ['hose-handle'],
    options: [
      {
        id: 'clean',
        name: 'Cleaned, slide back',
        minutes: 20,
        costMinor: { low: 0, high: 30 },
        success: 0.7,
        breakRisk: 0.06,
      },
    ],
  },
]
