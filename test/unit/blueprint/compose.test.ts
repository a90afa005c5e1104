import { describe, expect, it } from 'vitest'
import { compose, type BlueprintBase, type BlueprintFragment } from '../../../src/blueprint/compose.ts'
import { bagAndFilters } from '../../../src/blueprint/library/shared/bag-and-filters.ts'
import { lead } from '../../../src/blueprint/library/shared/lead.ts'
import { suctionMotor } from '../../../src/blueprint/library/shared/suction-motor.ts'

const base: BlueprintBase = {
  format: 'thrum-blueprint-1',
  id: 'two-wires',
  name: 'Two wires',
  summary: 'For trying how pieces go together',
  recognise: ['Invented'],
  plate: { voltageV: 230, frequencyHz: 50, powerW: 1000, protectionClass: 'II' },
  supply: { line: 'l', neutral: 'n' },
  worth: {
    workingMinor: { low: 1, high: 2 },
    sparesMinor: { low: 1, high: 2 },
    source: { title: 'Invented', evidence: 'judgement' },
  },
}

const part = (id: string): BlueprintFragment => ({ parts: [{ id, name: id, does: 'Nothing', group: 'air' }] })

const look: BlueprintFragment = {
  checks: [
    {
      kind: 'look',
      id: 'look-it-over',
      name: 'Look',
      how: 'Plug out. Look.',
      minutes: 1,
      outcomes: [
        { id: 'good', name: 'Good' },
        { id: 'bad', name: 'Bad' },
      ],
      sound: { good: 1 },
      under: { first: { bad: 1 } },
    },
  ],
}

const shows = (checkId: string, faultId: string): BlueprintFragment => ({
  addsTo: { [checkId]: { [faultId]: { bad: 0.5, good: 0.5 } } },
})

describe('compose', () => {
  it('keeps the base and joins the lists in the order given', () => {
    const made = compose(base, part('b'), part('a'))
    expect(made).toMatchObject(base)
    expect(made.parts.map(({ id }) => id)).toEqual(['b', 'a'])
    expect(made.faults).toEqual([])
  })

  it('merges what several fragments add to one check, wherever that check stands', () => {
    const { checks } = compose(base, shows('look-it-over', 'second'), look, shows('look-it-over', 'third'))
    expect(checks).toMatchObject([
      { under: { first: { bad: 1 }, second: { bad: 0.5, good: 0.5 }, third: { bad: 0.5, good: 0.5 } } },
    ])
  })

  it('leaves the fragments as they were, so that the next architecture can use them', () => {
    const before = structuredClone(look)
    compose(base, look, shows('look-it-over', 'second'))
    expect(look).toEqual(before)
  })

  it('refuses an id that comes twice, an addition to no check, and a second word on the same fault', () => {
    expect(() => compose(base, part('a'), part('a'))).toThrow('“a” comes from two fragments')
    expect(() => compose(base, look, shows('look-elsewhere', 'second'))).toThrow('“look-elsewhere”')
    expect(() => compose(base, look, shows('look-it-over', 'first'))).toThrow('“first”')
  })

  it('refuses to add to a meter check, whose readings follow from the circuit', () => {
    const meter: BlueprintFragment = {
      checks: [{ kind: 'meter', id: 'pins', name: 'Pins', how: 'Plug out.', minutes: 1, red: 'l', black: 'n' }],
    }
    expect(() => compose(base, meter, shows('pins', 'first'))).toThrow('meter check')
  })
})

describe('the shared fragments', () => {
  it('name the entry and the covers they are told', () => {
    const told = lead({ entry: 'the tail', wear: 'Kinks', lengthM: 7, spareMinor: { low: 100, high: 200 } })
    const words = JSON.stringify(told)
    expect(words).toContain('Flex at the tail, line core broken')
    expect(words).toContain('7 m')
    expect(words).not.toContain('handle')
    const { repairs = [] } = suctionMotor({ motorCover: 'shell', motorEnd: 'end-bell' })
    expect(new Set(repairs.flatMap(({ coversOff = [] }) => coversOff))).toEqual(new Set(['shell', 'end-bell']))
  })

  it.each([
    ['lead', lead({ entry: 'the tail', wear: 'Kinks', lengthM: 7, spareMinor: { low: 100, high: 200 } })],
    ['bag and filters', bagAndFilters],
    ['suction motor', suctionMotor({ motorCover: 'shell', motorEnd: 'end-bell' })],
  ])('%s: speaks only of faults it has itself', (_, { faults = [], checks = [], repairs = [], addsTo = {} }) => {
    const own = faults.map(({ id }) => id)
    const spokenOf = [
      ...faults.flatMap(({ excludes = [] }) => excludes),
      ...repairs.flatMap(({ removes }) => removes),
      ...checks.flatMap((check) => (check.kind === 'meter' ? [] : Object.keys(check.under))),
      ...Object.values(addsTo).flatMap((under) => Object.keys(under)),
    ]
    expect(own).toEqual(expect.arrayContaining(spokenOf))
  })
})
