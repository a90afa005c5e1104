import { describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import { faultSchema, type Fault } from '../../../src/blueprint/schema.ts'
import {
  checksByKind,
  checksShowing,
  complaintsOf,
  groupedParts,
  perHundredText,
  rateText,
  repairsOf,
} from '../../../src/web/blueprints/of-part.ts'
import { sketchScale } from '../../../src/web/blueprints/sketch-scale.ts'
import { smallBlueprint } from './blueprint.ts'

const faultWith = (content: Partial<Fault>): Fault =>
  faultSchema.parse({
    id: 'made',
    part: 'motor',
    name: 'Made',
    how: 'Made',
    rate: { perHundred: 1, source: { title: 'Made for this test', evidence: 'judgement' } },
    ...content,
  })

describe.each(blueprints.map((blueprint) => [blueprint.id, blueprint] as const))(
  'the pages of %s',
  (_id, blueprint) => {
    it('show every part once', () => {
      const shown = groupedParts(blueprint).flatMap(({ parts }) => parts)
      expect(shown.map(({ id }) => id).toSorted()).toEqual(blueprint.parts.map(({ id }) => id).toSorted())
    })
    it('show every repair under some part, and under each part one of whose faults it removes', () => {
      const under = new Map(blueprint.parts.map(({ id }) => [id, repairsOf(blueprint, id).map((repair) => repair.id)]))
      for (const repair of blueprint.repairs) {
        const parts = repair.removes.map((fault) => blueprint.faults.find(({ id }) => id === fault)?.part ?? '')
        for (const part of [repair.part, ...parts]) expect(under.get(part)).toContain(repair.id)
      }
    })
    it('name every graded check that a fault is named in', () => {
      for (const check of blueprint.checks) {
        if (check.kind === 'meter') continue
        for (const id of Object.keys(check.under)) {
          const fault = blueprint.faults.find((one) => one.id === id)
          expect(fault && checksShowing(blueprint, fault)).toContain(check)
        }
      }
    })
  },
)

describe('checks that could show a fault', () => {
  const names = (fault: Fault): readonly string[] => checksShowing(smallBlueprint, fault).map(({ id }) => id)
  const open = (element: string): Fault['electrical'] => [{ element, becomes: 'open' }]
  it('are meter checks with a probe on the faulty part', () =>
    expect(names(faultWith({ electrical: open('motor') }))).toEqual(['motor-ohms']))
  it('are not meter checks when the circuit stays as it is', () => expect(names(faultWith({}))).toEqual([]))
  it('are not meter checks elsewhere', () =>
    expect(names(faultWith({ part: 'fuse', electrical: open('fuse') }))).toEqual([]))
  it('are meter checks on what the fault changes, though that is another part', () =>
    expect(names(faultWith({ part: 'fuse', electrical: open('capacitor') }))).toEqual(['motor-ohms']))
  it('are not meter checks on a path that only another fault of the part makes', () => {
    const fault = faultWith({ part: 'flex', electrical: open('neutral') })
    const bridged = {
      ...smallBlueprint,
      checks: smallBlueprint.checks.map((check) =>
        check.kind === 'meter' ? { ...check, red: 'pin.line', black: 'fuse.out' } : check,
      ),
    }
    expect(checksShowing(bridged, fault)).toEqual([])
    expect(checksShowing(bridged, { ...fault, electrical: open('bridge') })).toHaveLength(1)
  })
  it('are named under what is done', () =>
    expect(checksByKind(smallBlueprint.checks)).toEqual([
      { name: 'Meter', checks: ['Motor'] },
      { name: 'Run', checks: ['Run it'] },
    ]))
  it('are meter checks that move the part', () => {
    const moved = {
      ...smallBlueprint,
      checks: smallBlueprint.checks.map((check) => (check.kind === 'meter' ? { ...check, moving: ['fuse'] } : check)),
    }
    const fault = faultWith({ part: 'fuse', electrical: open('fuse') })
    expect(checksShowing(moved, fault).map(({ id }) => id)).toEqual(['motor-ohms'])
  })
})

describe('words of a blueprint', () => {
  it('puts the most usual complaint first and leaves out what is never said', () =>
    expect(
      complaintsOf(faultWith({ complaints: { smell: 0.2, dead: 0.9, noise: 0 } })).map(({ complaint }) => complaint),
    ).toEqual(['dead', 'smell']))
  it('gives a rate no more figures than it bears', () =>
    expect([0, 0.00004, 0.0004, 0.043, 0.0996, 0.123].map(perHundredText)).toEqual([
      '0',
      'under 0.01',
      '0.04',
      '4.3',
      '10',
      '12',
    ]))
  it('never gives a rate without its interval', () =>
    expect(rateText({ rate: 0.043, low: 0.012, high: 0.121 })).toBe(
      'About 4.3 in 100 machines bought as faulty, 90 % interval 1.2 to 12',
    ))
  it('leaves groups without a part out', () =>
    expect(groupedParts(smallBlueprint).map(({ name }) => name)).toEqual(['Electrical']))
})

describe('the sketch of a circuit', () => {
  const box = { low: { x: -2, y: 1 }, high: { x: 6, y: 9 } }
  it('stays within its box, corners opposite', () => {
    const at = sketchScale(box, 100, 60)
    const [start, end] = [at(box.low), at(box.high)]
    expect(start.x).toBeGreaterThan(0)
    expect(start.y).toBeGreaterThan(0)
    expect(start.x + end.x).toBeCloseTo(100)
    expect(start.y + end.y).toBeCloseTo(60)
    expect(at({ x: 2, y: 5 })).toEqual({ x: 50, y: 30 })
  })
  it('draws a circuit on one line through the middle', () =>
    expect(sketchScale({ low: { x: 0, y: 3 }, high: { x: 4, y: 3 } }, 100, 60)({ x: 1, y: 3 }).y).toBe(30))
})
