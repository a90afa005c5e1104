import { describe, expect, it } from 'vitest'
import type { Problem } from '../../../../src/base/problem.ts'
import type { MachineState } from '../../../../src/bench/contract.ts'
import { closingProblems, openingProblems } from '../../../../src/bench/cover-rules.ts'
import { noteLines } from '../../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import type { Piece } from '../../../../src/bench/stripping/pieces.ts'
import { stripProblems } from '../../../../src/bench/stripping/strip-rules.ts'
import { stripView } from '../../../../src/bench/stripping/strip-view.ts'
import { adaptBlueprint } from '../../../../src/blueprint/adapt.ts'
import { blueprintById, blueprints } from '../../../../src/blueprint/library.ts'
import type { Blueprint } from '../../../../src/blueprint/schema.ts'
import type { Job } from '../../../../src/machine/job.ts'
import { added, content, log } from '../../../support/notes.ts'

const upright = blueprintById('bagged-upright-two-motors')!
const screws = { count: 5, kind: 'TX15 plastic 4 × 20', place: 'pot 1' }
const motorScrews = { count: 4, kind: 'TX20 plastic 4 × 25', place: 'pot 2' }
const pin = { count: 1, kind: 'felt washer', place: 'lid' }

const view = (...notes: readonly NoteContentInput[]) =>
  stripView(log([added({ blueprint: upright.id, plate: upright.plate }), ...notes]), upright)
const ids = (all: readonly { readonly piece: { readonly kind: string; readonly id: string } }[]): readonly string[] =>
  all.map(({ piece }) => `${piece.kind} ${piece.id}`)

const bagDoorOff = { kind: 'opened' as const, cover: 'bag-door', minutes: 0.2 }
const backOff = { kind: 'opened' as const, cover: 'back-cover', minutes: 6, fixings: [screws] }
const boardOff = { kind: 'opened' as const, cover: 'board-cover', minutes: 2, fixings: [] }
const boardOut = { kind: 'taken-out' as const, part: 'board', fixings: [pin], minutes: 3 }
const boardIn = { kind: 'put-in' as const, part: 'board', fixings: [pin], minutes: 3 }

/** What the rules at the door say against a step, with these covers off and these parts out. */
const against = (
  blueprint: Blueprint,
  { kind, id }: Piece,
  way: 'away' | 'back',
  off: readonly string[],
  out: readonly string[],
): readonly Problem[] => {
  if (kind === 'cover') return (way === 'away' ? openingProblems : closingProblems)(id, blueprint, off)
  const moved = content({ kind: way === 'away' ? 'taken-out' : 'put-in', part: id })
  if (moved.kind !== 'taken-out' && moved.kind !== 'put-in') throw new Error('not of a part')
  return stripProblems(
    moved,
    { blueprint, off } as Job,
    { out, missing: [] as readonly string[] } as unknown as MachineState,
  )
}

const moved = ({ kind, id }: Piece, way: 'away' | 'back'): NoteContentInput =>
  kind === 'cover'
    ? { kind: way === 'away' ? 'opened' : 'closed', cover: id, minutes: 1 }
    : { kind: way === 'away' ? 'taken-out' : 'put-in', part: id, minutes: 1 }

describe('what can come away', () => {
  it.each(blueprints.map((blueprint) => [blueprint.id, blueprint] as const))(
    'comes away and goes back in an order that the rules let through: %s',
    (_id, blueprint) => {
      const first = added({ blueprint: blueprint.id, plate: blueprint.plate })
      const { next } = stripView(log([first]), blueprint)
      expect(next).toHaveLength(blueprint.covers.length + blueprint.parts.length)
      const [off, out]: [string[], string[]] = [[], []]
      for (const { piece } of next) {
        expect(against(blueprint, piece, 'away', off, out), piece.id).toEqual([])
        ;(piece.kind === 'cover' ? off : out).push(piece.id)
      }
      const steps = next.map(({ piece }) => moved(piece, 'away'))
      const { away } = stripView(log([first, ...steps]), blueprint)
      expect(ids(away)).toEqual(ids(next).toReversed())
      for (const { piece } of away) {
        expect(against(blueprint, piece, 'back', off, out), piece.id).toEqual([])
        const from = piece.kind === 'cover' ? off : out
        from.splice(from.indexOf(piece.id), 1)
      }
      const back = away.map(({ piece }) => moved(piece, 'back'))
      expect(stripView(log([first, ...steps, ...back]), blueprint)).toMatchObject({ away: [], isClosed: true })
    },
  )
  it('says which covers come off before', () => {
    const motor = view().next.find(({ piece }) => piece.kind === 'part' && piece.id === 'suction-motor')
    expect(motor?.after.map(({ id }) => id)).toEqual(['bag-door', 'back-cover', 'filter-cover', 'motor-cover'])
    expect(view(bagDoorOff).next.find(({ piece }) => piece.id === 'back-cover')?.after).toEqual([])
  })
  it('has the fixings of the blueprint, then those that went in last time', () => {
    const back = (...notes: readonly NoteContentInput[]) =>
      view(...notes).next.find(({ piece }) => piece.id === 'back-cover')
    expect(back()).toMatchObject({
      fixings: [{ count: 5, kind: 'TX15 plastic 4 × 20', place: '' }],
      fixingsFrom: 'blueprint',
      minutes: 6,
    })
    const closed = { kind: 'closed' as const, cover: 'back-cover', minutes: 6, fixings: [{ ...screws, count: 4 }] }
    expect(back(bagDoorOff, backOff, closed)).toMatchObject({
      fixings: [{ ...screws, count: 4 }],
      fixingsFrom: 'last-time',
    })
  })
  it('leaves out what is not on the machine', () => {
    const { next } = stripView(log([added({ blueprint: upright.id, missing: ['board'] })]), upright)
    expect(ids(next)).not.toContain('part board')
  })
  it('warns of what is behind a cover where the hand is', () => {
    const cautions = (id: string) =>
      view()
        .next.find(({ piece }) => piece.id === id)
        ?.cautions.join(' ')
    expect(cautions('motor-end')).toContain('Carbon dust')
    expect(cautions('motor-cover')).toContain('sharp edges')
    expect(cautions('park-latch')).toContain('spring may fly')
  })
})

describe('what goes back', () => {
  it('is the last that came away first, with its fixings and photographs', () => {
    const photo = { kind: 'photo', photo: 'a'.repeat(64), about: { kind: 'note', note: 'n3' }, when: 'work' } as const
    const { away, kept } = view(bagDoorOff, backOff, boardOff, boardOut, photo)
    expect(ids(away)).toEqual(['part board', 'cover board-cover', 'cover back-cover', 'cover bag-door'])
    expect(away[2]).toMatchObject({ kept: [screws], isCounted: true, photos: [{ photo: 'a'.repeat(64) }] })
    expect(away[2]?.before.map(({ id }) => id)).toEqual(['board-cover', 'board'])
    expect(away[3]).toMatchObject({ kept: [], isCounted: false })
    expect(kept.map(({ place, lots }) => [place, lots.length])).toEqual([
      ['pot 1', 1],
      ['lid', 1],
    ])
  })
  it('goes back in an order that can be, though the note of a cover was struck out', () => {
    const struck = { kind: 'struck' as const, note: 'n3' }
    const { away } = view(bagDoorOff, backOff, boardOff, struck, backOff)
    expect(ids(away)).toEqual(['cover board-cover', 'cover back-cover', 'cover bag-door'])
  })
})

describe('what is left over', () => {
  const backOn = (count: number) => ({
    kind: 'closed' as const,
    cover: 'back-cover',
    minutes: 6,
    fixings: [{ ...screws, count }],
  })
  const boardOn = { kind: 'closed' as const, cover: 'board-cover', minutes: 2, fixings: [] }
  const away = [bagDoorOff, backOff, boardOff, boardOut] as const

  it('is nothing where all is ticked back', () => {
    const end = view(...away, boardIn, boardOn, backOn(5))
    expect(end.balance).toEqual({ taken: 6, back: 6, kept: 0, leftOver: 0, unknown: 0 })
    expect(end.warnings).toEqual([])
  })
  it('is said in words, with the step that left it', () => {
    const end = view(...away, { ...boardIn, fixings: [] }, boardOn, backOn(4))
    expect(end.warnings).toEqual(['One TX15 plastic screw 4 × 20 and a felt washer are left over.'])
    expect(end.leftOver).toMatchObject([
      { piece: { id: 'back-cover' }, fixings: [{ ...screws, count: 1 }], closing: { note: 'n8' } },
      { piece: { id: 'board' }, fixings: [pin], closing: { note: 'n6' } },
    ])
  })
  it('is not what nobody counted as it went back', () => {
    const end = view(bagDoorOff, backOff, { kind: 'closed', cover: 'back-cover', minutes: 6 })
    expect(end).toMatchObject({ leftOver: [], warnings: [], balance: { taken: 5, back: 0, unknown: 5 } })
    expect(end.notCounted).toEqual([
      'The back cover went back without a count: five TX15 plastic screws 4 × 20 may be in it or not.',
    ])
  })
  it('is not touched by a cover that came off uncounted', () => {
    const motorOff = { kind: 'opened' as const, cover: 'motor-cover', minutes: 4 }
    const motorOn = { kind: 'closed' as const, cover: 'motor-cover', minutes: 5, fixings: [{ ...screws, count: 2 }] }
    const filterOff = { kind: 'opened' as const, cover: 'filter-cover', minutes: 1 }
    const end = view(bagDoorOff, backOff, filterOff, motorOff, motorOn, backOn(3))
    expect(end.balance).toMatchObject({ taken: 5, back: 3, leftOver: 2 })
    expect(view(bagDoorOff, backOff, filterOff, motorOff).notCounted).toEqual([
      'Nobody counted what held the motor cover.',
    ])
  })
  it('goes in where a piece that is counted takes one more', () => {
    const four = { ...backOff, fixings: [{ ...screws, count: 4 }] }
    const open = view(bagDoorOff, backOff, backOn(4), four)
    expect(open.balance).toMatchObject({ taken: 9, back: 4, kept: 4, leftOver: 1 })
    expect(open.away[0]).toMatchObject({ kept: [{ count: 4 }], leftOver: [{ count: 1 }] })
    expect(view(bagDoorOff, backOff, backOn(4), four, backOn(5)).warnings).toEqual([])
    expect(view(bagDoorOff, backOff, backOn(4), four, backOn(4)).balance).toMatchObject({ back: 8, leftOver: 1 })
  })
  it('stays so where its cover comes off again and nobody counts, until it is said to be in', () => {
    const uncounted = { kind: 'opened' as const, cover: 'back-cover', minutes: 6 }
    const on = { kind: 'closed' as const, cover: 'back-cover', minutes: 6 }
    const left = ['One TX15 plastic screw 4 × 20 is left over.']
    const again = [bagDoorOff, backOff, backOn(4), uncounted] as const
    expect(view(...again).warnings).toEqual(left)
    expect(view(...again).leftOver).toMatchObject([{ fixings: [{ ...screws, count: 1 }], closing: null }])
    expect(view(...again, on).warnings).toEqual(left)
    expect(view(...again, on).leftOver).toMatchObject([{ closing: { note: 'n6' } }])
    expect(view(...again, backOn(4)).warnings).toEqual(left)
    const end = view(...again, { ...on, leftOverIn: [{ ...screws, count: 1 }] })
    expect(end).toMatchObject({ warnings: [], balance: { taken: 5, back: 5, leftOver: 0, unknown: 0 } })
  })
  it('goes with a step that is struck out', () => {
    const end = view(...away, boardIn, boardOn, backOn(4), { kind: 'struck', note: 'n8' })
    expect(end).toMatchObject({ leftOver: [], balance: { taken: 6, back: 1, kept: 5, leftOver: 0 } })
    expect(ids(end.away)).toEqual(['cover back-cover', 'cover bag-door'])
  })
  it('is not known for a part that went to the shelf', () => {
    const gone = { kind: 'took-off' as const, part: 'board', shelfPart: 's1', costMinor: 0 }
    expect(view(...away, gone)).toMatchObject({ leftOver: [], balance: { unknown: 1 } })
  })
  it('warns of a part that is still out', () => {
    expect(view(...away, boardOn, backOn(5)).warnings).toEqual([
      'The control board is out of the machine and not back.',
    ])
  })
})

describe('what went out', () => {
  const motorOut = { kind: 'taken-out' as const, part: 'suction-motor', minutes: 2 }
  const down = ['bag-door', 'back-cover', 'filter-cover', 'motor-cover'].map((cover) => ({
    kind: 'opened' as const,
    cover,
    minutes: 1,
  }))
  it('is not offered again: what is within it, and what a cover carried out', () => {
    expect(ids(view(...down).next)).toContain('part carbon-brushes')
    const { next } = view(...down, motorOut)
    for (const one of ['suction-motor', 'carbon-brushes', 'motor-fan']) expect(ids(next)).not.toContain(`part ${one}`)
    const lifted = view(...down, { kind: 'opened', cover: 'motor-end', minutes: 1 })
    expect(ids(lifted.next)).not.toContain('part suction-motor')
    // Its end cap is off to get at them.
    expect(ids(lifted.next)).toContain('part carbon-brushes')
  })
  it('goes back with the words for going back, and what its coming off asked for', () => {
    const back = view(...down, { kind: 'opened', cover: 'motor-end', minutes: 1 })
    expect(back.away[0]).toMatchObject({ piece: { id: 'motor-end' }, cameSo: 'Photograph the leads. Seal and mount come with the motor.' }) // prettier-ignore
    expect(back.away[0]?.cautions.join(' ')).not.toContain('Carbon dust')
    const latch = view({ kind: 'taken-out', part: 'park-latch', minutes: 1 }).away[0]
    expect(latch?.cautions.join(' ')).toContain('both of its legs as on the photograph')
    expect(latch?.cautions.join(' ')).not.toContain('lifting')
  })
  it('has in no pot the catches that stay in their plate', () => {
    const fixings = [{ count: 3, kind: 'quarter-turn catch or TX20', place: '' }, screws]
    const { kept, staying } = view({ kind: 'opened', cover: 'sole-plate', minutes: 1, fixings })
    expect(kept.flatMap(({ lots }) => lots.map(({ count }) => count))).toEqual([5])
    expect(staying).toMatchObject([{ count: 3 }])
  })
  it('says of catches that went back open that they are not closed, and never that they are left over', () => {
    const catches = (count: number) => ({ count, kind: 'quarter-turn catch or TX20', place: '' })
    const off = { kind: 'opened' as const, cover: 'sole-plate', minutes: 1, fixings: [catches(3), screws] }
    const on = (count: number) => ({ ...off, kind: 'closed' as const, fixings: [catches(count), { ...screws, count: 4 }] }) // prettier-ignore
    const end = view(off, on(2))
    expect(end.warnings).toEqual([
      'One TX15 plastic screw 4 × 20 is left over.',
      'One quarter-turn catch or TX20 of the sole plate is not closed.',
    ])
    expect(end.notClosed).toMatchObject([{ piece: { id: 'sole-plate' }, fixings: [catches(1)], closing: { note: 'n3' } }]) // prettier-ignore
    expect(end.balance).toEqual({ taken: 5, back: 4, kept: 0, leftOver: 1, unknown: 0 })
    // As it comes off again there are three to let go, though two went in last time, and four screws.
    expect(end.next.find(({ piece }) => piece.kind === 'cover' && piece.id === 'sole-plate')?.fixings).toEqual([catches(3), { ...screws, count: 4 }]) // prettier-ignore
    // Off again, it is open as it should be.
    expect(view(off, on(2), off)).toMatchObject({ notClosed: [], staying: [catches(3)] })
    expect(view(off, on(2), { ...off, fixings: [catches(3)] }, on(3)).notClosed).toEqual([])
    const uncounted = { kind: 'closed' as const, cover: 'sole-plate', minutes: 1 }
    expect(view(off, uncounted).notCounted).toContain(
      'The sole plate went back without a count: three quarter-turn catches or TX20 may be closed or not.',
    )
  })
  it('leaves the machine open, said in one sentence', () => {
    expect(view().coversOff).toBe('')
    expect(view(bagDoorOff, backOff).coversOff).toBe('Not closed up: back cover and bag door.')
  })
})

describe('what is different on this machine', () => {
  const four = { ...backOff, fixings: [{ ...screws, count: 3 }, { count: 1, kind: 'PH2 plastic 4 × 12', place: '' }] } // prettier-ignore
  it('is offered to the blueprint as an edit that it takes', () => {
    const [found] = view(bagDoorOff, four).deviations
    expect(found?.text).toBe(
      'Back cover: three TX15 plastic screws 4 × 20 and a PH2 plastic screw 4 × 12 here, where the blueprint says five TX15 plastic screws 4 × 20',
    )
    const variant = adaptBlueprint(upright, [found.edit])
    if (variant.kind !== 'ok') throw new Error('refused')
    const notes = log([added({ blueprint: upright.id }), bagDoorOff, four])
    expect(stripView(notes, variant.value).deviations).toEqual([])
  })
  it('is not what another place or another order makes of it, nor an uncounted cover', () => {
    const twice = { ...backOff, fixings: [{ ...screws, count: 2 }, { ...screws, count: 3, place: 'lid' }] } // prettier-ignore
    expect(view(bagDoorOff, twice).deviations).toEqual([])
  })
  it('is not what was left out as it went together again', () => {
    const on = { kind: 'closed' as const, cover: 'back-cover', minutes: 6, fixings: [{ ...screws, count: 4 }] }
    const again = { ...backOff, fixings: [{ ...screws, count: 4 }] }
    expect(view(bagDoorOff, backOff, on, again).deviations).toEqual([])
  })
})

it('reads in the log with where the fixings are and where they came from', () => {
  const on = { kind: 'closed' as const, cover: 'back-cover', minutes: 6, fixings: [screws] }
  const texts = noteLines(log([added({ blueprint: upright.id }), backOff, on, boardOut]), upright).map((l) => l.text)
  expect(texts.slice(1)).toEqual([
    'Opened: back cover, 6 min; 5 × TX15 plastic 4 × 20 in pot 1',
    'Closed: back cover, 6 min; 5 × TX15 plastic 4 × 20 from pot 1',
    'Taken out: control board, 3 min; 1 × felt washer in lid',
  ])
})

it('keeps fixings of two covers apart', () => {
  const motorOff = { kind: 'opened' as const, cover: 'motor-cover', minutes: 4, fixings: [motorScrews] }
  const filterOff = { kind: 'opened' as const, cover: 'filter-cover', minutes: 1, fixings: [] }
  const { away } = view(bagDoorOff, backOff, filterOff, motorOff)
  expect(away.map(({ kept }) => kept)).toEqual([[motorScrews], [], [screws], []])
})
