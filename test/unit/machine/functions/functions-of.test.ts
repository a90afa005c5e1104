import { describe, expect, it } from 'vitest'
import { blueprints } from '../../../../src/blueprint/library.ts'
import { blueprintSchema } from '../../../../src/blueprint/schema.ts'
import { functionKinds } from '../../../../src/facts/function-kinds.ts'
import { functionsOf } from '../../../../src/machine/functions/functions-of.ts'
import { runsMachine } from '../../../../src/machine/running.ts'
import { tinyBlueprint } from '../../../support/tiny-blueprint.ts'

const functionsById = (id: string) =>
  new Map(functionsOf(blueprints.find((one) => one.id === id)!).functions.map((each) => [each.id, each]))

describe.each(blueprints.map((blueprint) => [blueprint.id, blueprint] as const))('%s', (_, blueprint) => {
  const { functions, notCovered } = functionsOf(blueprint)
  const sum = (row: Readonly<Record<string, number | undefined>>): number =>
    Object.values(row).reduce<number>((total, p) => total + (p ?? 0), 0)

  it('has a function for every control', () => {
    const worked = functions.flatMap(({ controls }) => controls)
    for (const { id } of blueprint.controls) expect(worked, id).toContain(id)
  })

  it('has one that touches every part of works, controls and air that can fail, or says why not', () => {
    const touched = new Set(functions.flatMap(({ parts, touches }) => [...parts.map(({ id }) => id), ...touches]))
    const failing = blueprint.parts.filter(
      ({ id, group }) => group !== 'electrical' && blueprint.faults.some(({ part }) => part === id),
    )
    for (const { id } of failing) {
      const named = notCovered.find(({ part }) => part.id === id)
      expect(touched.has(id) || (named?.why ?? '') !== '', id).toBe(true)
    }
  })

  it('says with each how it is done, what good looks like, and what to beware of', () => {
    expect(functions.length).toBeGreaterThan(10)
    expect(new Set(functions.map(({ id }) => id)).size).toBe(functions.length)
    for (const one of functions) {
      expect(one.how.length, one.id).toBeGreaterThan(4)
      expect(one.good, one.id).not.toBe('')
      expect(`${one.cautions.join(' ')} ${one.how}`.trim(), one.id).toMatch(
        runsMachine(one.check)
          ? /Covers on, (RCD socket of 30 mA or less|GFCI socket).*hands clear of all that turns/
          : /Plug out/,
      )
    }
  })

  it('never asks for a meter or a probe on anything', () => {
    for (const { check, how, id } of functions) {
      expect(check.kind, id).not.toBe('meter')
      expect(how, id).not.toMatch(/\bohm|\bvolt|meter lead/i)
    }
  })

  it('goes from what is opened by way of what is closed to what runs, the whole machine last', () => {
    const order = functions.map(({ group }) => ['opened', 'by-hand', 'run'].indexOf(group))
    expect(order).toEqual(order.toSorted((a, b) => a - b))
    expect(functions.at(-1)?.check.provesWorking).toBe(true)
    const covers = functions.filter(({ group }) => group === 'opened').map(({ check }) => check.coversOff.join())
    expect(covers).toEqual(covers.toSorted())
  })

  it('has sound tables: every row adds up to one, and a fault is found bad at least as often as a sound function', () => {
    for (const { check, isReading, id } of functions) {
      if (isReading) continue
      expect(sum(check.sound)).toBeCloseTo(1, 12)
      for (const row of Object.values(check.under)) {
        expect(sum(row), id).toBeCloseTo(1, 12)
        expect(row['bad'], id).toBeGreaterThanOrEqual(check.sound['bad']!)
      }
    }
  })
})

describe('where a blueprint has the check', () => {
  it('the function is that check, in its own words', () => {
    const height = functionsById('bagged-upright-two-motors').get('height-drive')!
    expect(height).toMatchObject({ isReading: true, good: 'Rises, falls, settles' })
    expect(height.check.id).toBe('run-height')
    expect(height.how).toMatch(/from hard floor to carpet/)
  })

  it('each stands for one function only', () => {
    for (const blueprint of blueprints) {
      const ids = functionsOf(blueprint).functions.map(({ check }) => check.id)
      expect(new Set(ids).size, blueprint.id).toBe(ids.length)
    }
  })

  it('every check that a kind names is there in some blueprint', () => {
    const known = new Set(blueprints.flatMap(({ checks }) => checks.map(({ id }) => id)))
    for (const kind of functionKinds) for (const id of kind.checks) expect(known, `${kind.id} ${id}`).toContain(id)
  })
})

describe('a function that the blueprint has no check for', () => {
  it('shows the faults of its parts as often as the blueprint says that they show', () => {
    const upright = blueprints.find(({ id }) => id === 'bagged-upright-one-motor')!
    const lifter = upright.faults.find(({ id }) => id === 'belt-lifter-stuck')!
    const run = upright.checks.find(({ id }) => id === 'run-full')!
    if (run.kind === 'meter') throw new Error('the full run is graded')
    const inUse = 1 - (run.under[lifter.id]['works'] ?? 0)
    const row = functionsById(upright.id).get('brush-stops')!.check.under[lifter.id]
    expect(row['bad']).toBe(Math.max(inUse, ...Object.values(lifter.complaints)))
  })

  it('takes the positions and the motor of the run that it is like', () => {
    const head = functionsById('electric-head-cylinder').get('head-switch')!
    expect(head.check.controls).toEqual({ 'mains-switch': 'on', 'head-switch': 'on' })
    expect(head.check.driven).toEqual({ element: 'brush-motor', otherwise: 'bad' })
    const stops = functionsById('bagged-upright-one-motor').get('brush-stops')!
    expect(stops.check.driven).toEqual({ element: 'suction-motor', otherwise: 'dead' })
  })

  it('is made for a control that belongs to no kind', () => {
    const odd = blueprintSchema.parse({
      ...tinyBlueprint,
      controls: [...tinyBlueprint.controls, { id: 'lid-catch', name: 'Lid catch', positions: ['shut', 'open'] }],
    })
    const one = functionsOf(odd).functions.find(({ id }) => id === 'control.lid-catch')
    expect(one).toMatchObject({ name: 'Lid catch', controls: ['lid-catch'], isReading: false, group: 'run' })
  })

  it('is not there for a part that nothing is known of: that is said instead', () => {
    const odd = blueprintSchema.parse({
      ...tinyBlueprint,
      parts: [
        ...tinyBlueprint.parts,
        { id: 'scent-puffer', name: 'Scent puffer', does: 'Scents', group: 'control', behind: 'motor-cover' },
      ],
      faults: [
        ...tinyBlueprint.faults,
        {
          id: 'puffer-off',
          part: 'scent-puffer',
          name: 'Puffer off',
          how: 'Fell off',
          rate: tinyBlueprint.faults[0].rate,
        },
      ],
    })
    expect(functionsOf(odd).notCovered).toEqual([
      {
        part: { id: 'scent-puffer', name: 'Scent puffer' },
        why: 'it is behind the motor cover and does nothing that can be tried from outside; the run of the whole machine has to show it',
      },
    ])
  })
})

describe('words', () => {
  it('are those of the mains that a machine was made for', () => {
    expect(functionsById('tub-by-pass').get('cord')!.name).toBe('Flex, end to end')
    expect(functionsById('tub-by-pass-120-v').get('cord')!.name).toBe('Cord, end to end')
  })
})
