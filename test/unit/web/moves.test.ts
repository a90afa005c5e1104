import { describe, expect, it } from 'vitest'
import { noteContentSchema } from '../../../src/bench/note.ts'
import { choiceOf, moveOf } from '../../../src/web/machine/choice.ts'
import { coversToClose, coversToOpen } from '../../../src/web/machine/cover-steps.ts'
import { ownMinutes, readingNotes } from '../../../src/web/machine/entry-notes.ts'
import { smallBlueprint } from './blueprint.ts'

const ids = (steps: readonly { readonly id: string }[]): readonly string[] => steps.map(({ id }) => id)

describe('covers', () => {
  it('come off from the outside in', () =>
    expect(ids(coversToOpen(smallBlueprint, [], ['motor-cover']))).toEqual(['shell', 'motor-cover']))
  it('are not taken off twice', () =>
    expect(ids(coversToOpen(smallBlueprint, ['shell'], ['motor-cover', 'motor-cover']))).toEqual(['motor-cover']))
  it('go back on from the inside out', () =>
    expect(ids(coversToClose(smallBlueprint, ['shell', 'motor-cover']))).toEqual(['motor-cover', 'shell']))
})

describe('a check taken from the blueprint', () => {
  const shown = moveOf('check motor-ohms', null, smallBlueprint, [])
  if (shown?.move.kind !== 'check') throw new Error('not found')
  const { move } = shown

  it('says so, and starts with the plug out', () => {
    expect(shown.figured).toBe(false)
    expect(move.setUp[0]).toBe('Plug out')
    expect(move.probes).toEqual({
      red: { point: 'switch.out', name: 'After the switch' },
      black: { point: 'motor.b', name: 'Motor, neutral side' },
    })
  })
  it('counts the covers into its minutes and takes them out of its own', () => {
    const covers = smallBlueprint.covers.reduce((sum, cover) => sum + cover.openMin, 0)
    expect(move.minutes).toBe(covers + 2)
    expect(ownMinutes(move)).toBe(2)
  })
  it('is found again by its own choice', () =>
    expect(moveOf(choiceOf(move), null, smallBlueprint, [])?.move).toEqual(move))
  it('enters the covers before the reading, as notes the bench takes', () => {
    const notes = readingNotes(move, { kind: 'open' }, smallBlueprint)
    expect(notes.map(({ kind }) => kind)).toEqual(['opened', 'opened', 'reading'])
    expect(notes.every((note) => noteContentSchema.safeParse(note).success)).toBe(true)
  })
})

describe('running', () => {
  it('puts every cover back first', () => {
    const move = moveOf('check run', null, smallBlueprint, ['shell', 'motor-cover'])?.move
    expect(ids(move?.close ?? [])).toEqual(['motor-cover', 'shell'])
  })
})

describe('what the blueprint does not know', () => {
  it.each(['check nothing', 'repair nothing new', ''])('gives no move for “%s”', (choice) =>
    expect(moveOf(choice, null, smallBlueprint, [])).toBeNull(),
  )
})
