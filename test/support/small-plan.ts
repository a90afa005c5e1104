import type { PlanProblemInput } from '../../src/engines/plan/index.ts'

/** Two faults behind two covers, a safety check and a run check that prove a repair, and a meter check that tells the faults apart. */
export const smallPlan = (): Required<PlanProblemInput> =>
  ({
    format: 'thrum-plan-1',
    off: [],
    marks: [],
    hourMinor: 600,
    faults: ['f1', 'f2'],
    suspects: [
      { id: 'sound', faults: [], probability: 0.1 },
      { id: 'f1', faults: ['f1'], probability: 0.4 },
      { id: 'f2', faults: ['f2'], probability: 0.4 },
      { id: 'both', faults: ['f1', 'f2'], probability: 0.1 },
    ],
    covers: [
      { id: 'lid', openMin: 1, closeMin: 2 },
      { id: 'case', openMin: 4, closeMin: 8, after: ['lid'] },
    ],
    checks: [
      {
        id: 'meter',
        minutes: 3,
        coversOff: ['case'],
        outcomes: [{ id: 'low' }, { id: 'high' }],
        likelihood: [
          [1, 0],
          [1, 0],
          [0, 1],
          [0, 1],
        ],
      },
      {
        id: 'safety',
        minutes: 2,
        outcomes: [{ id: 'good', gives: ['safe'] }, { id: 'bad' }],
        likelihood: [
          [1, 0],
          [1, 0],
          [1, 0],
          [1, 0],
        ],
      },
      {
        id: 'run',
        minutes: 5,
        allCoversOn: true,
        needs: ['safe'],
        outcomes: [{ id: 'runs', gives: ['runs'] }, { id: 'does-not' }],
        likelihood: [
          [1, 0],
          [0, 1],
          [0, 1],
          [0, 1],
        ],
      },
    ],
    repairs: [
      { id: 'mend-f1', minutes: 10, costMinor: 100, removes: ['f1'], success: 1, takes: ['safe', 'runs'] },
      {
        id: 'mend-f2',
        minutes: 10,
        costMinor: 300,
        coversOff: ['case'],
        removes: ['f2'],
        success: 0.9,
        takes: ['safe', 'runs'],
      },
    ],
    exits: [
      { id: 'working', needs: ['runs'], payoffMinor: [3000, 2500, 2500, 2500] },
      { id: 'spares', payoffMinor: [800, 800, 800, 800] },
    ],
  }) satisfies PlanProblemInput
