import { describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import { lintBlueprint } from '../../../src/blueprint/lint.ts'
import { blueprintSchema, type Blueprint } from '../../../src/blueprint/schema.ts'
import { lookAlikes } from '../../../src/machine/index.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

type Fault = Blueprint['faults'][number]
const fault = (id: string, over: Partial<Fault>): Fault => ({
  ...structuredClone(tinyBlueprint.faults.find((one) => one.id === 'switch-open')!),
  id,
  ...over,
})

/** The tiny blueprint with more faults, each mended by the repair named. */
const withFaults = (faults: readonly Fault[], mendedBy: readonly string[]): Blueprint => {
  const copy = structuredClone(tinyBlueprint)
  copy.faults.push(...faults)
  faults.forEach(({ id }, at) => copy.repairs.find((one) => one.id === mendedBy[at])?.removes.push(id))
  return blueprintSchema.parse(copy)
}

const groupWith = (blueprint: Blueprint, id: string) => lookAlikes(blueprint).find(({ faults }) => faults.includes(id))

describe('faults that look alike', () => {
  it('are found when one is a copy of the other, and the repair that serves both is named', () => {
    const leak = tinyBlueprint.faults.find(({ id }) => id === 'motor-leaks')!
    const damp = fault('motor-damp', { part: 'motor', name: 'Motor damp', electrical: leak.electrical })
    expect(groupWith(withFaults([damp], ['change-motor']), 'motor-damp')).toEqual({
      faults: ['motor-leaks', 'motor-damp'],
      sameRepairs: ['change-motor'],
      toldBy: [],
      untold: [],
      names: 'Motor insulation broken down; Motor damp',
      mend: 'The repair is the same: Motor changed.',
      text: 'These look alike from outside: Motor insulation broken down; Motor damp. The repair is the same: Motor changed.',
    })
  })

  it('are told to be so when no repair serves both and no check tells them', () => {
    const twin = withFaults([fault('linkage', { name: 'Linkage broken' })], ['refit-flex'])
    const group = groupWith(twin, 'linkage')
    expect(group?.untold).toEqual([{ faults: ['switch-open', 'linkage'], repairs: [] }])
    expect(group?.text).toContain(
      'No check tells these apart: Handle switch does not close; Linkage broken; no one repair removes them all.',
    )
  })

  it('say what to open and which check tells them where one does', () => {
    // From the pins both read open; across the motor's own leads only the worn motor does. The flex is told apart outside.
    const group = groupWith(tinyBlueprint, 'motor-worn')
    expect(group?.faults).toEqual(['switch-open', 'motor-worn'])
    expect(group?.toldBy).toEqual([{ check: 'motor-winding', covers: ['motor-cover'] }])
    expect(group?.text).toBe(
      'These look alike from outside: Handle switch does not close; Motor brushes worn out. To tell, open the motor cover: Motor, lead to lead.',
    )
  })

  it('are told apart by a reading as far as a budget meter and the spread of sound parts allow', () => {
    // The flex line conductor (8 m of 0.75 mm²) reads 0.2 Ω. A meter of ±(0.8 % + 5 digits of 0.1 Ω) does not tell 0.3 Ω more
    // from 0.5 Ω more; it does tell 20 Ω more from 60 Ω more.
    const flex = (plusOhm: number, id: string) =>
      fault(id, {
        part: 'flex',
        name: id,
        electrical: [{ element: 'flex-l', becomes: { plusOhm, spread: 0.1 } }],
      })
    const near = withFaults([flex(0.3, 'less'), flex(0.5, 'more')], ['refit-flex', 'refit-flex'])
    expect(groupWith(near, 'less')?.faults).toEqual(['less', 'more'])
    const far = withFaults([flex(20, 'less'), flex(60, 'more')], ['refit-flex', 'refit-flex'])
    expect(groupWith(far, 'less')).toBeUndefined()
  })

  it('come with a sentence that says the repair, the check, or that nothing tells, for every blueprint', () => {
    for (const blueprint of blueprints) {
      for (const group of lookAlikes(blueprint)) {
        expect(group.faults.length).toBeGreaterThan(1)
        expect(group.text).toMatch(
          /^These look alike from outside: .+\. (The repair is the same: |To tell, open the |No check tells these apart: )/,
        )
        // Each fault is accounted for: mended alike, told by a check, or named as not told.
        const isSettled = group.sameRepairs.length > 0 || group.toldBy.length > 0
        const untold = group.untold.flatMap(({ faults }) => faults)
        expect(isSettled || group.faults.every((id) => untold.includes(id))).toBe(true)
      }
    }
  })
})

describe('a second look', () => {
  it('finds nothing in the blueprints that come with the program', () => {
    expect(
      blueprints.flatMap((blueprint) => lintBlueprint(blueprint).map(({ where }) => `${blueprint.id} ${where}`)),
    ).toEqual([])
  })

  it.each<readonly [string, (blueprint: Blueprint) => void, string, string]>([
    [
      'a check with all covers on whose probes are behind one',
      (b) =>
        Object.assign(
          b.checks.find(({ id }) => id === 'motor-winding')!,
          { coversOn: true },
        ),
      'check-out-of-reach',
      'checks.motor-winding',
    ],
    [
      'a cover with nothing behind it',
      (b) => b.covers.push({ id: 'lid', name: 'Lid', openMin: 1, closeMin: 1, after: [], fixings: [] }),
      'cover-over-nothing',
      'covers.lid',
    ],
    [
      'a fault that nothing mends',
      (b) => (b.repairs = b.repairs.filter(({ id }) => id !== 'change-switch')),
      'fault-without-repair',
      'faults.switch-open',
    ],
  ])('finds %s', (_name, mistake, code, where) => {
    const copy = structuredClone(tinyBlueprint)
    mistake(copy)
    expect(lintBlueprint(copy)).toContainEqual(expect.objectContaining({ code, where }))
  })
})
