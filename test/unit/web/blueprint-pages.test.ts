import { describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import { faultSchema, type Fault } from '../../../src/blueprint/schema.ts'
import {
  complaintsOf,
  costText,
  groupedParts,
  perHundredText,
  rateText,
  repairsThatRemove,
  replacementsOf,
  repairsOf,
  wholeMinutes,
} from '../../../src/web/blueprints/of-part.ts'
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
  },
)

describe('repairs of a fault', () => {
  it('are those that remove it', () => {
    expect(repairsThatRemove(smallBlueprint, 'fuse-blown').map(({ id }) => id)).toEqual(['new-fuse'])
    expect(repairsThatRemove(smallBlueprint, 'other')).toEqual([])
  })
  it('take the minutes of the covers on the way, off and on again', () => {
    const [repair] = smallBlueprint.repairs
    expect(wholeMinutes(smallBlueprint, repair, 2)).toBe(2)
    // Shell 3 + 4, motor cover 5 + 6, and 10 of its own.
    expect(wholeMinutes(smallBlueprint, { ...repair, coversOff: ['motor-cover'] }, 10)).toBe(28)
  })
  it('that replace a part say what another costs; cleaning it is none', () => {
    const [repair] = smallBlueprint.repairs
    const [option] = repair.options
    const cleaned = { ...repair, options: [...repair.options, { ...option, id: 'clean' as const }] }
    const found = replacementsOf({ ...smallBlueprint, repairs: [cleaned] }, 'fuse')
    expect(found.map((one) => [one.option.name, one.isNew])).toEqual([['New fuse', true]])
    expect(replacementsOf(smallBlueprint, 'switch')).toEqual([])
  })
  it('cost a range, one price, or nothing', () =>
    expect([costText({ low: 20, high: 40 }), costText({ low: 20, high: 20 }), costText({ low: 0, high: 0 })]).toEqual([
      '£0.20 to £0.40',
      '£0.20',
      'costs nothing',
    ]))
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
