import fc from 'fast-check'
import { planProblemSchema, type PlanProblem } from '../../src/engines/plan/index.ts'

/** A fault as the generator draws it: how likely, what mending it takes, whether the first safety check sees it. */
const randomFault = fc.record({
  weight: fc.integer({ min: 1, max: 20 }),
  minutes: fc.integer({ min: 0, max: 12 }),
  costMinor: fc.integer({ min: 0, max: 80 }),
  success: fc.constantFrom(1, 0.9, 0.6),
  behind: fc.nat(2),
  unsafe: fc.boolean(),
})

/**
 * Problems with the structure of a repair job: single faults and some pairs behind covers, two safety checks that a run check
 * needs, an exit that needs the run check's mark, and repairs that take that mark away again. Payoffs are uneven, so that
 * exits do not tie.
 */
export const benchLikePlan = (mostFaults: number): fc.Arbitrary<PlanProblem> =>
  fc
    .record({
      faults: fc.array(randomFault, { minLength: 1, maxLength: mostFaults }),
      pairWeight: fc.integer({ min: 0, max: 10 }),
      soundWeight: fc.integer({ min: 0, max: 10 }),
      falsePass: fc.constantFrom(0, 0.05),
      falseFail: fc.constantFrom(0, 0.1),
      looks: fc.constantFrom(1, 1, 2),
      covers: fc.array(fc.nat(6), { minLength: 4, maxLength: 4 }),
      off: fc.subarray(['lid', 'case']),
      marks: fc.subarray(['safe1', 'safe2']),
      takesSafety: fc.boolean(),
      working: fc.integer({ min: 100, max: 900 }),
    })
    .map((raw) => {
      const names = raw.faults.map((_, i) => `f${String(i)}`)
      const sets = [[], ...names.map((name) => [name]), ...(names.length > 1 ? [[names[0], names[1]]] : [])]
      const weights = [raw.soundWeight, ...raw.faults.map((fault) => fault.weight), raw.pairWeight].slice(
        0,
        sets.length,
      )
      const total = weights.reduce((sum, weight) => sum + weight, 0)
      const unsafe = (set: readonly string[]): boolean => set.some((name) => raw.faults[names.indexOf(name)].unsafe)
      const rows = (good: (set: readonly string[]) => boolean): number[][] =>
        sets.map((set) => (good(set) ? [1 - raw.falseFail, raw.falseFail] : [raw.falsePass, 1 - raw.falsePass]))
      const [openLid, closeLid, openCase, closeCase] = raw.covers
      return planProblemSchema.parse({
        format: 'thrum-plan-1',
        hourMinor: 120,
        faults: names,
        suspects: sets.map((set, s) => ({ id: `s:${set.join('+')}`, faults: set, probability: weights[s] / total })),
        covers: [
          { id: 'lid', openMin: openLid, closeMin: closeLid },
          { id: 'case', openMin: openCase, closeMin: closeCase, after: ['lid'] },
        ],
        off: raw.off,
        marks: raw.marks,
        checks: [
          safety(
            'safe1',
            raw.looks,
            rows((set) => !unsafe(set)),
          ),
          safety(
            'safe2',
            raw.looks,
            rows(() => true),
          ),
          {
            id: 'run',
            minutes: 3,
            allCoversOn: true,
            needs: ['safe1', 'safe2'],
            outcomes: [{ id: 'runs', gives: ['runs'] }, { id: 'does-not' }],
            likelihood: rows((set) => set.length === 0),
          },
        ],
        repairs: raw.faults.map((fault, i) => ({
          id: `mend${String(i)}`,
          minutes: fault.minutes,
          costMinor: fault.costMinor,
          success: fault.success,
          removes: [names[i]],
          coversOff: [[], ['lid'], ['case']][fault.behind],
          takes: raw.takesSafety ? ['runs', 'safe1', 'safe2'] : ['runs'],
        })),
        exits: [
          { id: 'working', needs: ['runs'], payoffMinor: sets.map((set) => raw.working - 100 * set.length) },
          { id: 'spares', payoffMinor: sets.map((set) => 90.37 - 19.31 * set.length) },
          { id: 'scrap', payoffMinor: sets.map(() => 60), allCoversOn: false },
        ],
      })
    })

const safety = (mark: string, times: number, likelihood: number[][]) => ({
  id: `check-${mark}`,
  minutes: 1,
  times,
  outcomes: [{ id: 'good', gives: [mark] }, { id: 'bad' }],
  likelihood,
})
