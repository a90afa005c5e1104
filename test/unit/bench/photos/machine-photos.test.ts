import { describe, expect, it } from 'vitest'
import { checkNote } from '../../../../src/bench/append.ts'
import { noteLines } from '../../../../src/bench/lines.ts'
import { photosView, sellingPhoto } from '../../../../src/bench/photos/machine-photos.ts'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import { saleShotIds } from '../../../../src/facts/sale-shots.ts'
import { shotTime } from '../../../../src/web/photos/photo-times.ts'
import { added, content, log } from '../../../support/notes.ts'
import { tinyBlueprint } from '../../../support/tiny-blueprint.ts'

const hash = (digit: string): string => digit.repeat(64)
const photo = (digit: string, over: object = {}): NoteContentInput => ({ kind: 'photo', photo: hash(digit), ...over })

describe('photographs of a machine', () => {
  it('are those that stand, each once', () => {
    const notes = log([
      added(),
      photo('a'),
      photo('a'),
      photo('b', { when: 'after' }),
      { kind: 'struck', note: 'n4', reason: '' },
    ])
    expect(photosView(notes).photos.map((one) => one.photo[0])).toEqual(['a'])
  })

  it('make pairs of before and after of the same thing, the last of each', () => {
    const about = { kind: 'part', part: tinyBlueprint.parts[0].id }
    const view = photosView(
      log([
        added(),
        photo('a', { when: 'before', about }),
        photo('b', { when: 'before', about }),
        photo('c', { when: 'after', about }),
        photo('d', { when: 'after' }),
        photo('e', { when: 'before', shot: 'underside' }),
        photo('f', { when: 'after', shot: 'underside' }),
      ]),
    )
    expect(view.pairs.map(({ before, after }) => before.photo[0] + after.photo[0])).toEqual(['bc', 'ef'])
  })

  it('say which shots that sell are not taken yet', () => {
    const view = photosView(log([added(), photo('a', { shot: 'plate' }), photo('b', { shot: 'front' })]))
    expect(view.shotsLeft).toEqual(saleShotIds.filter((shot) => shot !== 'plate' && shot !== 'front'))
  })

  it('do not sell a machine with what it looked like before', () => {
    const before = photo('a', { shot: 'front', when: 'before' })
    expect(photosView(log([added(), before])).shotsLeft).toContain('front')
    const { photos } = photosView(log([added(), photo('b', { shot: 'front', when: 'after' }), before]))
    expect(sellingPhoto(photos, 'front')?.photo[0]).toBe('b')
    const gauge = photosView(log([added(), photo('c', { shot: 'gauge-before', when: 'before' })]))
    expect(gauge.shotsLeft).not.toContain('gauge-before')
  })

  it('are filed as was pressed, but for the shots of the gauge', () => {
    expect([shotTime('front', 'before'), shotTime('front', null)]).toEqual(['before', 'after'])
    expect([shotTime('gauge-before', 'after'), shotTime('gauge-after', 'before')]).toEqual(['before', 'after'])
  })

  it('read as what they show', () => {
    const part = tinyBlueprint.parts[0]
    const notes = log([
      added(),
      photo('a', { when: 'before', about: { kind: 'part', part: part.id }, text: 'cut through' }),
      photo('b', { when: 'after', shot: 'underside' }),
    ])
    expect(
      noteLines(notes, tinyBlueprint)
        .map(({ text }) => text)
        .slice(1),
    ).toEqual([
      `Photograph, before: ${part.name.charAt(0).toLowerCase()}${part.name.slice(1)}; cut through`,
      'Photograph, after: underside',
    ])
  })

  it.each([
    [{ about: { kind: 'part', part: 'wing' } }, 'about.part'],
    [{ about: { kind: 'fault', fault: 'rust' } }, 'about.fault'],
    [{ about: { kind: 'note', note: 'n9' } }, 'about.note'],
  ])('refuse %o: it is not on the machine', (over, where) => {
    const checked = checkNote(log([added()]), content(photo('a', over)), tinyBlueprint)
    expect(checked).toMatchObject({ kind: 'refused', problems: [{ where }] })
  })
})
