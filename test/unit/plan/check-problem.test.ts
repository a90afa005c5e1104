import { describe, expect, it } from 'vitest'
import { checkPlanProblem, type PlanProblemInput } from '../../../src/engines/plan/index.ts'
import { smallPlan } from '../../support/small-plan.ts'

const codes = (change: (problem: ReturnType<typeof smallPlan>) => unknown): readonly string[] => {
  const result = checkPlanProblem(change(smallPlan()))
  return result.kind === 'refused' ? result.problems.map(({ code, where }) => `${code} ${where}`) : []
}

const without = <T>(list: readonly T[], at: number): T[] => list.filter((_, i) => i !== at)

describe('checkPlanProblem', () => {
  it('passes a sound problem and fills in what was left out', () => {
    const result = checkPlanProblem(smallPlan())
    expect(result).toMatchObject({ kind: 'ok', value: { off: [], checks: [{ costMinor: 0 }, {}, {}] } })
  })

  it('refuses what is not of the form, naming the place', () => {
    expect(codes((p) => ({ ...p, hourMinor: 'ten' }))).toEqual(['not-of-the-form hourMinor'])
    expect(codes((p) => ({ ...p, exits: [] }))).toEqual(['not-of-the-form exits'])
  })

  it('refuses payoffs that are not finite', () => {
    const broken = (p: PlanProblemInput) => p.exits.map((exit) => ({ ...exit, payoffMinor: [1, Infinity, 2, 3] }))
    expect(codes((p) => ({ ...p, exits: broken(p) }))[0]).toMatch(/^not-of-the-form exits\[0\]\.payoffMinor/)
  })

  it.each([
    [
      'sum-not-1 suspects',
      (p: PlanProblemInput) => ({ ...p, suspects: p.suspects.map((s) => ({ ...s, probability: 0.3 })) }),
    ],
    [
      'wrong-shape exits.working.payoffMinor',
      (p: PlanProblemInput) => ({
        ...p,
        exits: p.exits.map((e) => (e.id === 'working' ? { ...e, payoffMinor: [1] } : e)),
      }),
    ],
    ['no-exit exits', (p: PlanProblemInput) => ({ ...p, exits: [p.exits[0]] })],
    ['negative hourMinor', (p: PlanProblemInput) => ({ ...p, hourMinor: -1 })],
    [
      'mark-nothing-gives exits.spares.needs',
      (p: PlanProblemInput) => ({
        ...p,
        exits: [...p.exits, { ...p.exits[1], id: 'other' }].map((e) =>
          e.id === 'spares' ? { ...e, needs: ['magic'] } : e,
        ),
      }),
    ],
    [
      'cover-cycle covers.lid.after',
      (p: PlanProblemInput) => ({
        ...p,
        covers: [
          { id: 'lid', openMin: 1, closeMin: 1, after: ['case'] },
          { id: 'case', openMin: 1, closeMin: 1, after: ['lid'] },
        ],
      }),
    ],
    ['unknown-cover off', (p: PlanProblemInput) => ({ ...p, off: ['hatch'] })],
    [
      'unknown-cover covers.lid.after',
      (p: PlanProblemInput) => ({
        ...p,
        covers: (p.covers ?? []).map((c) => (c.id === 'lid' ? { ...c, after: ['hatch'] } : c)),
      }),
    ],
    [
      'unknown-cover repairs.mend-f2.coversOff',
      (p: PlanProblemInput) => ({
        ...p,
        repairs: (p.repairs ?? []).map((r) => (r.id === 'mend-f2' ? { ...r, coversOff: ['hatch'] } : r)),
      }),
    ],
    [
      'unknown-fault repairs.mend-f1.removes',
      (p: PlanProblemInput) => ({
        ...p,
        repairs: (p.repairs ?? []).map((r) => (r.id === 'mend-f1' ? { ...r, removes: ['f9'] } : r)),
      }),
    ],
    [
      'unknown-fault suspects.f2.faults',
      (p: PlanProblemInput) => ({
        ...p,
        faults: ['f1'],
        repairs: [],
        suspects: p.suspects.filter((s) => s.id !== 'both'),
      }),
    ],
    [
      'duplicate-id repairs.mend-f1',
      (p: PlanProblemInput) => ({ ...p, repairs: [...(p.repairs ?? []), ...(p.repairs ?? []).slice(0, 1)] }),
    ],
    [
      'duplicate-suspect suspects',
      (p: PlanProblemInput) => ({
        ...p,
        suspects: [...p.suspects, { id: 'again', faults: ['f2', 'f1'], probability: 0 }],
      }),
    ],
    [
      'covers-on-and-off checks.run.coversOff',
      (p: PlanProblemInput) => ({
        ...p,
        checks: (p.checks ?? []).map((c) => (c.id === 'run' ? { ...c, coversOff: ['lid'] } : c)),
      }),
    ],
  ] as const)('refuses: %s', (expected, change) => {
    expect(codes(change)).toContain(expected)
  })

  it('refuses likelihood rows of the wrong shape or sum, naming the suspect', () => {
    const rows = (row: number[]) => (p: PlanProblemInput) => ({
      ...p,
      checks: (p.checks ?? []).map((c) => ({ ...c, likelihood: c.likelihood.map((r, i) => (i === 2 ? row : r)) })),
    })
    expect(codes(rows([0.5, 0.4]))).toContain('sum-not-1 checks.run.likelihood.f2')
    expect(codes(rows([1]))).toContain('wrong-shape checks.run.likelihood.f2')
  })

  it('allows sums that are off by rounding only', () => {
    const by = (much: number) => (p: PlanProblemInput) => ({
      ...p,
      suspects: p.suspects.map((s, i) => (i === 0 ? { ...s, probability: s.probability + much } : s)),
    })
    expect(codes(by(9e-7))).toEqual([])
    expect(codes(by(2e-6))).toEqual(['sum-not-1 suspects'])
  })

  it('names the suspect, the repair and the set of faults that is missing after it', () => {
    const result = checkPlanProblem({
      ...smallPlan(),
      suspects: without(smallPlan().suspects, 1).map((s, i) => ({ ...s, probability: i === 0 ? 0.5 : s.probability })),
      checks: smallPlan().checks.map((c) => ({ ...c, likelihood: without(c.likelihood, 1) })),
      exits: smallPlan().exits.map((e) => ({ ...e, payoffMinor: without(e.payoffMinor, 1) })),
    })
    expect(result).toMatchObject({
      kind: 'refused',
      problems: [
        { code: 'not-closed', where: 'suspects.both', what: expect.stringMatching(/mend-f2.*both.*\{f1\}/) as string },
      ],
    })
  })
})
