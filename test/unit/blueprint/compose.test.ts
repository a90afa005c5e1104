import { describe, expect, it } from 'vitest'
import { compose } from '../../../src/blueprint/compose.ts'
import type { BlueprintBase, BlueprintFragment } from '../../../src/blueprint/fragment.ts'
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
  family: 'cylinder',
  places: { l: [0, 1], n: [0, 13] },
  worth: {
    workingMinor: { low: 5000, high: 7000 },
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

const fault = (id: string, more: object = {}): BlueprintFragment => ({
  faults: [{ id, part: 'p', name: id, how: 'Invented', rate: { rows: [['P09', 0.5]] }, ...more }],
})
const threeFaults = [fault('first'), fault('second'), fault('third')]

const shows = (checkId: string, faultId: string): BlueprintFragment => ({
  addsTo: { [checkId]: { [faultId]: { bad: 0.5, good: 0.5 } } },
})

describe('compose', () => {
  it('keeps the base and joins the lists in the order given', () => {
    const { family: _family, places: _places, ...rest } = base
    const made = compose(base, part('b'), part('a'))
    expect(made).toMatchObject(rest)
    expect(made.parts.map(({ id }) => id)).toEqual(['b', 'a'])
    expect(made.faults).toEqual([])
  })

  it('merges what several fragments add to one check, wherever that check stands', () => {
    const { checks } = compose(
      base,
      ...threeFaults,
      shows('look-it-over', 'second'),
      look,
      shows('look-it-over', 'third'),
    )
    expect(checks).toMatchObject([
      { under: { first: { bad: 1 }, second: { bad: 0.5, good: 0.5 }, third: { bad: 0.5, good: 0.5 } } },
    ])
  })

  it('leaves the fragments as they were, so that the next architecture can use them', () => {
    const before = structuredClone(look)
    compose(base, ...threeFaults, look, shows('look-it-over', 'second'))
    expect(look).toEqual(before)
  })

  it('takes the rate from the catalogue’s column for the family, and says the row', () => {
    const [made] = compose(base, fault('first')).faults
    expect(made?.rate).toMatchObject({
      perHundred: 4.5,
      source: { clause: expect.stringContaining('row P09, its part') as string },
    })
    expect(() => compose({ ...base, family: 'upright-one-motor' }, fault('first'))).toThrow('do not occur')
  })

  it('prices a spare as a share of the working machine', () => {
    const { parts } = compose(base, {
      parts: [{ id: 'p', name: 'p', does: 'Nothing', group: 'air', spareShare: { low: 0.1, high: 0.2 } }],
    })
    expect(parts[0]?.spareMinor).toEqual({ low: 600, high: 1200 })
  })

  it('makes exclusion mutual, and drops what the architecture goes without', () => {
    const { faults, checks, repairs } = compose(
      base,
      fault('first', { excludes: ['second', 'elsewhere'] }),
      fault('second'),
      look,
      shows('look-it-over', 'elsewhere'),
      shows('no-such-look', 'first'),
      { repairs: [{ id: 'swap', name: 'Swap', part: 'p', removes: ['first', 'elsewhere'], options: [] }] },
      { repairs: [{ id: 'other', name: 'Other', part: 'p', removes: ['elsewhere'], options: [] }] },
    )
    expect(faults.map(({ excludes }) => excludes)).toEqual([['second'], ['first']])
    expect(checks).toMatchObject([{ under: { first: { bad: 1 } } }])
    expect(repairs).toMatchObject([{ id: 'swap', removes: ['first'] }])
  })

  it('drops an outcome that nothing shows, and a look at what is not there', () => {
    const shown: BlueprintFragment = { addsTo: { 'look-it-over': { third: { good: 1 } } } }
    expect(compose(base, fault('third'), look, shown).checks).toMatchObject([{ outcomes: [{ id: 'good' }] }])
    expect(compose(base, fault('third'), look).checks).toEqual([])
  })

  it('refuses an id that comes twice, a point without a place, and a second word on the same fault', () => {
    expect(() => compose(base, part('a'), part('a'))).toThrow('“a” comes from two fragments')
    expect(() => compose(base, { points: [{ id: 'far', name: 'Far' }] })).toThrow('“far” has no place')
    expect(() => compose(base, ...threeFaults, look, shows('look-it-over', 'first'))).toThrow('“first”')
  })

  it('refuses to add to a meter check, whose readings follow from the circuit', () => {
    const meter: BlueprintFragment = {
      checks: [{ kind: 'meter', id: 'pins', name: 'Pins', how: 'Plug out.', minutes: 1, red: 'l', black: 'n' }],
    }
    expect(() => compose(base, meter, shows('pins', 'first'))).toThrow('meter check')
  })
})

describe('the shared fragments', () => {
  const told = { entry: 'the tail', entryCover: 'shell', lengthM: 7, areaMm2: 0.75, earthed: false }

  it('name the entry and the covers they are told', () => {
    const words = JSON.stringify(lead({ ...told, fuseA: 13 }))
    expect(words).toContain('Brown core at the tail')
    expect(words).toContain('7 m')
    expect(words).not.toContain('handle')
    const { repairs = [] } = suctionMotor({
      feed: 'motor.feed',
      shareOfPlate: 1,
      makesSuction: true,
      motorCover: 'shell',
      motorEnd: 'end-bell',
      fanCover: 'lid',
    })
    expect(new Set(repairs.flatMap(({ coversOff = [] }) => coversOff))).toEqual(new Set(['shell', 'end-bell']))
  })

  it('know no fuse in a moulded plug', () => {
    const moulded = lead({ ...told, fuseA: null })
    expect(
      [...(moulded.points ?? []), ...(moulded.circuit ?? []), ...(moulded.faults ?? [])].map(({ id }) => id),
    ).not.toEqual(expect.arrayContaining([expect.stringContaining('fuse') as string]))
  })
})
