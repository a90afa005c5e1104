import { describe, expect, it } from 'vitest'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import { chargingSeen } from '../../../src/facts/charging.ts'
import {
  machineModel,
  machineView,
  planProblem,
  resultText,
  resultUnder,
  suspectBelief,
} from '../../../src/machine/index.ts'
import type { Job, JobEvent } from '../../../src/machine/job.ts'
import { meterRemarks } from '../../../src/machine/meter-remarks.ts'
import { tinyBlueprint, withCapacitors } from '../../support/tiny-blueprint.ts'

/** Adds a check at the plug pins with the switch off: what the capacitor before the switch is seen by. */
const withPinsOff = (blueprint: Blueprint): Blueprint => {
  const on = blueprint.checks[0]
  if (on.kind !== 'meter') throw new Error('the first check of the tiny machine is a meter check')
  return { ...blueprint, checks: [...blueprint.checks, { ...on, id: 'pins-off', controls: { handle: 'off' } }] }
}

const across = (capacitanceF: number) =>
  withPinsOff(withCapacitors([{ id: 'x', from: 'switch.in', to: 'plug.n', capacitanceF }]))
const blueprint = across(0.1e-6)
const model = machineModel(blueprint, blueprint.plate)
const check = blueprint.checks.at(-1)!

const jobOf = (of: Blueprint, events: readonly JobEvent[]): Job => ({
  blueprint: of,
  plate: of.plate,
  complaints: ['dead'],
  missing: [],
  events,
  off: [],
  hourMinor: 800,
})

const read = (kind: 'charging' | 'open'): JobEvent => ({
  kind: 'reading',
  note: 'n',
  check: 'pins-off',
  result: { kind },
  instrument: 'budget-multimeter',
})

const suspectOf = (of: Blueprint, ...faults: string[]): number =>
  machineModel(of, of.plate).sets.findIndex(
    (set) => set.length === faults.length && set.every((f) => faults.includes(of.faults[f].id)),
  )

const chanceOf = (of: Blueprint, fault: string, events: readonly JobEvent[]): number => {
  const made = machineModel(of, of.plate)
  const { probability } = suspectBelief(made, jobOf(of, events))
  return made.sets.reduce((sum, set, s) => sum + (set.some((f) => of.faults[f].id === fault) ? probability[s] : 0), 0)
}

describe('a capacitor before an open switch', () => {
  it('is in sight on a sound machine, and not with the flex broken before it', () => {
    expect(resultText(model, check, 0)).toBe('rises, then open')
    expect(resultText(model, check, suspectOf(blueprint, 'flex-open'))).toBe('open')
    expect(resultText(model, check, suspectOf(blueprint, 'switch-open'))).toBe('rises, then open')
  })

  it('seen charging clears fuse and flex; an open reading speaks only mildly against them', () => {
    const before = chanceOf(blueprint, 'flex-open', [])
    const seen = chanceOf(blueprint, 'flex-open', [read('charging')])
    const open = chanceOf(blueprint, 'flex-open', [read('open')])
    expect(seen).toBeLessThan(before / 10)
    expect(open).toBeGreaterThan(before)
    expect(open).toBeLessThan(1 - (1 - before) * 0.3)
  })

  it('too small to be seen, it reads open', () => {
    const small = across(0.01e-6)
    expect(resultText(machineModel(small, small.plate), check, 0)).toBe('open')
    expect(chanceOf(small, 'flex-open', [read('open')])).toBeCloseTo(chanceOf(small, 'flex-open', []), 6)
  })

  it('two in a row count as one of half the size: 0.03 µF is in sight alone and not with another of its kind', () => {
    const row = withPinsOff(
      withCapacitors([
        { id: 'x1', from: 'switch.in', to: 'metal', capacitanceF: 0.03e-6 },
        { id: 'x2', from: 'metal', to: 'plug.n', capacitanceF: 0.03e-6 },
      ]),
    )
    expect(resultText(machineModel(row, row.plate), check, 0)).toBe('open')
    const alone = across(0.03e-6)
    expect(resultText(machineModel(alone, alone.plate), check, 0)).toBe('rises, then open')
  })

  it('all results of a reading together make 1', () => {
    const { problem, bands } = planProblem(model, jobOf(blueprint, []), model.prior)
    for (const planned of problem.checks.filter(({ id }) => bands.has(id)))
      for (const row of planned.likelihood) expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9)
  })

  it('makes a result of its own in the plan only where it tells suspects apart', () => {
    const outcomes = (of: Blueprint) =>
      planProblem(machineModel(of, of.plate), jobOf(of, []), machineModel(of, of.plate).prior)
        .problem.checks.find(({ id }) => id === 'pins-off')!
        .outcomes.map(({ id }) => id)
    expect(outcomes(blueprint)).toContain('charging')
    expect(outcomes(across(0.01e-6))).not.toContain('charging')
  })

  it('the virtual meter shows it as often as it is noticed', () => {
    const seeds = Array.from({ length: 400 }, (_, seed) => seed)
    const seen = seeds.filter((seed) => resultUnder(model, 0, seed, 'pins-off', 0).kind === 'charging').length
    // Binomial of 400: within four standard deviations of the share.
    expect(Math.abs(seen / 400 - chargingSeen.whenVisible)).toBeLessThan(4 * Math.sqrt((0.6 * 0.4) / 400))
    const broken = suspectOf(blueprint, 'flex-open')
    expect(seeds.some((seed) => resultUnder(model, broken, seed, 'pins-off', 0).kind === 'charging')).toBe(false)
  })

  it('is told on the card', () => {
    const { next, others } = machineView(jobOf(blueprint, []))
    const move = [next, ...others].find(({ id }) => id === 'pins-off')
    expect(move?.kind === 'check' ? move.expected[0].text : '').toBe('rises, then open')
    expect(meterRemarks(model, meterCheck(blueprint, 'pins-off')).join(' ')).toMatch(/capacitor of about 0\.1 µF/)
  })
})

const meterCheck = (of: Blueprint, id: string) => {
  const found = of.checks.find((one) => one.id === id)
  if (found?.kind !== 'meter') throw new Error(`no meter check ${id}`)
  return found
}

describe('what the circuit says of a reading', () => {
  const control = (extra: Blueprint['circuit']): Blueprint => ({
    ...tinyBlueprint,
    circuit: [
      ...tinyBlueprint.circuit.map((element) =>
        element.id === 'motor-lead'
          ? {
              kind: 'triac' as const,
              id: 'triac',
              part: 'switch',
              from: 'switch.out',
              to: 'motor.a',
              onOhm: 0.3,
              offOhm: null,
              spread: 0.1,
            }
          : element,
      ),
      ...extra,
    ],
  })
  const said = (of: Blueprint, id: string) => meterRemarks(machineModel(of, of.plate), meterCheck(of, id)).join(' ')

  it('an electronic control on every way between the probes', () => {
    expect(said(control([]), 'pins-on')).toMatch(/reads open here even when sound\. Measure behind it/)
    expect(said(control([]), 'insulation')).toBe('')
    const itself = {
      ...control([]),
      checks: tinyBlueprint.checks.map((one) =>
        one.id === 'pins-on' && one.kind === 'meter' ? { ...one, red: 'switch.out', black: 'motor.a' } : one,
      ),
    }
    expect(said(itself, 'pins-on')).toBe('')
    expect(said(tinyBlueprint, 'pins-on')).not.toMatch(/lectronic/)
  })

  it('a bleed resistor or standby supply beside it', () => {
    const bled = control([
      {
        kind: 'resistor',
        id: 'bleed',
        part: 'switch',
        from: 'switch.out',
        to: 'plug.n',
        resistanceOhm: 470e3,
        spread: 0.1,
      },
    ])
    expect(said(bled, 'pins-on')).toMatch(/470 kΩ is a bleed resistor or a standby supply/)
    expect(said(bled, 'pins-on')).toMatch(/motor behind it does not show here/)
  })

  it('a winding: a normal resistance never clears a motor', () => {
    expect(said(tinyBlueprint, 'pins-on')).toBe('A normal resistance never clears a motor.')
    expect(said(tinyBlueprint, 'flex-line')).toBe('')
  })
})
