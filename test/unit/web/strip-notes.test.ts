import { describe, expect, it } from 'vitest'
import { nextPlace, saidOf, stepNote } from '../../../src/web/strip/step-notes.ts'

const screw = { count: 2, kind: ' TX15 ', place: ' pot 1 ' }

describe('a step as typed', () => {
  it.each([
    ['pot 1', 'pot 2'],
    ['pot 9', 'pot 10'],
    ['tray 3, left', 'tray 4, left'],
    ['lid', 'lid'],
    ['', ''],
  ])('goes from “%s” to “%s”', (place, next) => expect(nextPlace(place)).toBe(next))

  it('leaves out a fixing with none of it, and asks for the kind of one that has some', () => {
    expect(saidOf({ fixings: [screw, { ...screw, count: 0 }], minutes: '3', text: ' stiff ' })).toEqual({
      kind: 'ok',
      value: { fixings: [{ count: 2, kind: 'TX15', place: 'pot 1' }], minutes: 3, text: 'stiff' },
    })
    expect(saidOf({ fixings: [{ ...screw, kind: ' ' }], minutes: 'soon', text: '' })).toMatchObject({
      kind: 'refused',
      problems: [{ where: 'fixings[0].kind' }, { where: 'minutes' }],
    })
  })

  it('says nothing of fixings that nobody counted', () => {
    const cover = { kind: 'cover', id: 'back', name: 'Back' } as const
    const said = { fixings: null, minutes: 2, text: '' }
    expect(stepNote(cover, 'back', said)).toEqual({ kind: 'closed', cover: 'back', minutes: 2 })
    const part = { kind: 'part', id: 'board', name: 'Board' } as const
    expect(stepNote(part, 'away', { ...said, fixings: [] })).toEqual({ kind: 'taken-out', part: 'board', minutes: 2, fixings: [] }) // prettier-ignore
  })
})
