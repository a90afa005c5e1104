import { describe, expect, it } from 'vitest'
import { parseEdits } from '../../../src/blueprint/adapt.ts'
import { draftOf, editOf, optionNow, type EditDraft } from '../../../src/web/adapt/edit-draft.ts'
import { thingKinds, thingsOf, waysOf } from '../../../src/web/adapt/things.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const draft = (thing: EditDraft['thing'], id: string, way: EditDraft['way'], over: Partial<EditDraft> = {}) => ({
  ...draftOf(tinyBlueprint, thing, id, way),
  ...over,
})
const edit = (one: EditDraft) => {
  const made = editOf(one)
  return made.kind === 'ok' ? made.value : made.problems.map(({ where, what }) => `${where}: ${what}`)
}

describe('a difference as it is being said', () => {
  it('starts as the blueprint says it now', () => {
    expect(draft('part', 'motor', 'part-moved').cover).toBe('motor-cover')
    expect(draft('check', 'flex-line', 'check-how').text).toBe('Pin to switch')
    expect(draft('control', 'handle', 'renamed').text).toBe('Handle switch')
    expect(draft('fault', 'motor-worn', 'fault-share')).toMatchObject({ perHundred: '5', sharePercent: '0' })
    expect(draft('repair', 'change-switch', 'repair-cost')).toMatchObject({
      option: 'new',
      costLow: '3.00',
      minutes: '15',
    })
    expect(optionNow(tinyBlueprint, 'change-switch', 'salvaged')).toMatchObject({
      option: 'salvaged',
      costHigh: '1.00',
    })
  })

  it('becomes the edit of its kind', () => {
    expect(edit(draft('part', 'motor', 'part-absent'))).toEqual({ kind: 'part-absent', part: 'motor' })
    expect(edit(draft('part', 'motor', 'part-moved', { cover: '' }))).toEqual({
      kind: 'part-moved',
      part: 'motor',
      behind: null,
    })
    const fixings = [
      { count: '2', kind: ' TX15 ' },
      { count: '', kind: '' },
      { count: '0', kind: 'clip' },
    ]
    expect(edit(draft('cover', 'back-cover', 'cover-fixings', { fixings, openMin: '90 s' }))).toEqual({
      kind: 'cover-fixings',
      cover: 'back-cover',
      fixings: [{ count: 2, kind: 'TX15' }],
      openMin: 1.5,
      closeMin: 3,
    })
    expect(edit(draft('control', 'handle', 'renamed', { text: 'Foot ' }))).toEqual({
      kind: 'renamed',
      what: 'control',
      id: 'handle',
      name: 'Foot',
    })
    expect(edit(draft('fault', 'motor-worn', 'fault-share', { perHundred: '7,5', sharePercent: '30' }))).toEqual({
      kind: 'fault-share',
      fault: 'motor-worn',
      perHundred: 7.5,
      saleShareIfLeft: 0.3,
    })
    expect(edit(draft('repair', 'change-switch', 'repair-cost', { costHigh: '12' }))).toMatchObject({
      costMinor: { low: 300, high: 1200 },
      minutes: 15,
    })
    expect(edit(draft('plate', 'plate', 'plate', { powerW: '1.2 kW' }))).toMatchObject({ powerW: 1200, voltageV: 230 })
  })

  it('says by field what is wrong with it', () => {
    expect(edit(draft('part', '', 'part-absent'))).toEqual(['id: Nothing is chosen'])
    expect(edit(draft('part', 'motor', 'part-note', { text: ' ' }))).toEqual(['text: Nothing is written'])
    const fixings = [{ count: 'two', kind: 'TX15' }]
    expect(edit(draft('cover', 'back-cover', 'cover-fixings', { fixings }))).toEqual([
      'fixings[0].count: “two” is not a whole number from 0 to 99',
    ])
    expect(edit(draft('repair', 'change-switch', 'repair-cost', { costLow: '20' }))).toEqual([
      'costHigh: The lower cost is above the higher one',
    ])
    expect(edit(draft('plate', 'plate', 'plate', { voltageV: '0' }))).toEqual(['voltageV: This cannot be zero'])
  })

  it('can be said of every kind of thing in each of its ways, as an edit that the bench takes', () => {
    for (const { id: thing } of thingKinds) {
      const [first] = thingsOf(tinyBlueprint, thing)
      for (const { id: way } of waysOf[thing]) {
        const made = editOf(draft(thing, first.id, way, { text: 'Odd' }))
        expect(made.kind, `${thing} ${way}`).toBe('ok')
        if (made.kind === 'ok')
          expect(parseEdits([made.value]), `${thing} ${way}`).toEqual({ kind: 'ok', value: [made.value] })
      }
    }
  })
})
