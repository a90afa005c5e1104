import { describe, expect, it } from 'vitest'
import { checkBlueprint } from '../../../src/blueprint/check.ts'
import { wattsChecks } from '../../../src/blueprint/library/shared/watts-checks.ts'
import { gradedCheckSchema, type Blueprint, type GradedCheck } from '../../../src/blueprint/schema.ts'
import { readingProblems } from '../../../src/bench/reading-rules.ts'
import { resultText } from '../../../src/bench/words.ts'
import { machineModel, machineView, resultText as expectedText, resultUnder } from '../../../src/machine/index.ts'
import type { Job } from '../../../src/machine/job.ts'
import { outcomeOfWatts, resultOfWatts, wattBands, wattBandText } from '../../../src/machine/scale.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const checks = (
  wattsChecks({
    hose: true,
    suctionMotor: 'motor-coil',
    runControls: { handle: 'on' },
  }).checks ?? []
).map((check) => gradedCheckSchema.parse({ ...check, under: {} }))
const [open, blocked] = checks as [GradedCheck, GradedCheck]
const scaleOf = (check: GradedCheck) => check.scale!

describe('watts on a published machine and on worked motors', () => {
  /** 1300 W label, 1100 W open, 900 W blocked: hydraraptor.blogspot.com, "Lenz's law" (2007). */
  it('a cleaner of 1300 W that took 1100 W open and 900 W blocked is sound in both', () => {
    expect(outcomeOfWatts(scaleOf(open), 1300, 1100)).toBe('sound')
    expect(outcomeOfWatts(scaleOf(blocked), 1300, 1100 - 900)).toBe('falls')
  })

  /**
   * Two worked examples of a lecture on universal motors (EEC 302, "universal motor", slides on scribd.com 508167811):
   * A 120 V, 17.58 A, power factor 0.912, R = 0.65 + 1.36 Ω, X = 1.2 + 1.6 Ω; B 240 V, 6.5 A, 0.94, R = 6.15 + 4.55, X = 9.4 + 3.2.
   */
  it.each([
    {
      motor: 'A',
      voltageV: 120,
      currentA: 17.58,
      factor: 0.912,
      ohm: 0.65 + 1.36,
      reactanceOhm: 1.2 + 1.6,
      times: 1.27,
    },
    { motor: 'B', voltageV: 240, currentA: 6.5, factor: 0.94, ohm: 6.15 + 4.55, reactanceOhm: 9.4 + 3.2, times: 1.54 },
  ])(
    'motor $motor is sound at its plate and above it with the rotor locked',
    ({ voltageV, currentA, factor, ohm, reactanceOhm, times }) => {
      const runningW = voltageV * currentA * factor
      const lockedA = voltageV / Math.hypot(ohm, reactanceOhm)
      const lockedW = lockedA * lockedA * ohm
      expect(lockedW / runningW).toBeCloseTo(times, 1)
      expect(outcomeOfWatts(scaleOf(open), runningW, runningW)).toBe('sound')
      expect(outcomeOfWatts(scaleOf(open), runningW, lockedW)).toBe('high')
    },
  )

  /** 0.22 µF before an open switch carries 15.9 mA at 230 V and takes next to no power. */
  it('nothing running is dead, whatever a capacitor carries', () => {
    expect(outcomeOfWatts(scaleOf(open), 1200, 0)).toBe('dead')
    expect(outcomeOfWatts(scaleOf(open), 1200, 1)).toBe('dead')
  })
})

describe('the bands of a plate', () => {
  it('lie side by side and each number falls in its own', () => {
    const bands = wattBands(scaleOf(open), 1200)
    expect(bands.map(wattBandText)).toEqual(['under 24 W', '24 to 840 W', '840 to 1,380 W', '1,380 W or more'])
    for (const { outcome, fromW, toW } of bands) {
      expect(outcomeOfWatts(scaleOf(open), 1200, fromW)).toBe(outcome)
      expect(outcomeOfWatts(scaleOf(open), 1200, (toW ?? 5000) - 0.001)).toBe(outcome)
    }
  })
})

const blueprint: Blueprint = { ...tinyBlueprint, checks: [...tinyBlueprint.checks, open, blocked] }
const job: Job = {
  blueprint,
  plate: { ...blueprint.plate, powerW: 1200 },
  complaints: ['weak-suction'],
  missing: [],
  events: [],
  off: [],
  hourMinor: 800,
}

const problemsOf = (check: string, outcome: string, watts?: number) =>
  readingProblems(
    {
      kind: 'reading',
      check,
      result: { kind: 'grade', outcome, ...(watts === undefined ? {} : { watts }) },
      instrument: 'plug-in-power-meter',
      minutes: 1,
    },
    { ...job, events: passed },
  )
const passed: Job['events'] = [
  { kind: 'reading', note: '1', check: 'insulation', result: { kind: 'open' }, instrument: 'budget-multimeter' },
  {
    kind: 'reading',
    note: '2',
    check: 'look-flex',
    result: { kind: 'grade', outcome: 'good' },
    instrument: 'budget-multimeter',
  },
]

describe('at the door', () => {
  it('watts and outcome that agree pass, with or without the number', () => {
    expect(problemsOf('run-watts-open', 'sound', 1100)).toEqual([])
    expect(problemsOf('run-watts-open', 'low')).toEqual([])
  })

  it('watts that contradict the outcome are refused with what is right', () => {
    const [problem] = problemsOf('run-watts-open', 'sound', 700)
    expect(problem).toMatchObject({ code: 'watts-contradict', mend: 'Enter “low”, or the watts that were read' })
    expect(problem?.what).toMatch(/700 W on a plate of 1,200 W/)
  })

  it('watts on a check that is not read in watts are refused', () => {
    expect(problemsOf('run', 'runs', 700)[0]?.code).toBe('no-watts')
    expect(resultOfWatts({ id: 'run', name: 'Run', scale: undefined }, 1200, 700).kind).toBe('refused')
  })

  it('reads as number and outcome in the log', () => {
    expect(resultText({ kind: 'grade', outcome: 'sound', watts: 1100 }, open)).toBe('1,100 W, as the plate says')
  })
})

describe('on the card and on a virtual machine', () => {
  it('says the band in watts for this plate', () => {
    const model = machineModel(blueprint, job.plate)
    expect(expectedText(model, open, 0)).toBe('As the plate says: 840 to 1,380 W on this plate')
    const { next, others } = machineView({ ...job, events: passed })
    const move = [next, ...others].find(({ id }) => id === 'run-watts-open')
    expect(move?.kind === 'check' ? move.setUp : []).toContain('Plug-in power meter between plug and socket')
  })

  it('a virtual reading has watts that stand for its outcome', () => {
    const model = machineModel(blueprint, job.plate)
    for (let seed = 0; seed < 200; seed++) {
      const result = resultUnder(model, seed % model.sets.length, seed, 'run-watts-open', 0)
      if (result.kind !== 'grade' || result.watts === undefined) throw new Error('no watts')
      expect(outcomeOfWatts(scaleOf(open), 1200, result.watts)).toBe(result.outcome)
    }
  })
})

describe('the checker', () => {
  const codes = (scale: object) => {
    const answer = checkBlueprint({
      ...blueprint,
      checks: [...tinyBlueprint.checks, { ...open, scale: { ...open.scale, ...scale } }, blocked],
    })
    return answer.kind === 'refused'
      ? answer.problems.filter(({ where }) => where.includes('scale')).map(({ code }) => code)
      : []
  }

  it('passes a scale that is whole', () => expect(codes({})).toEqual([]))
  it('wants one edge fewer than outcomes', () => expect(codes({ edges: [0.1, 0.7] })).toContain('edges-miscounted'))
  it('wants edges that ascend', () => expect(codes({ edges: [0.1, 1.2, 0.7] })).toContain('edges-not-ascending'))
  it('wants every outcome once', () => {
    expect(codes({ order: ['dead', 'low', 'sound', 'sound'] })).toContain('scale-not-whole')
    expect(codes({ order: ['dead', 'low', 'sound', 'loud'] })).toContain('unknown-outcome')
  })
})
