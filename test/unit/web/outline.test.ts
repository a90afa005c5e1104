import { describe, expect, it } from 'vitest'
import { featureIds, type Feature } from '../../../src/blueprint/entry.ts'
import { allSignQuestions, type Signs } from '../../../src/blueprint/narrow.ts'
import { drawnOf } from '../../../src/web/blueprints/outline/entry.ts'
import { outlineStrokes } from '../../../src/web/blueprints/outline/strokes.ts'
import { outlineWords } from '../../../src/web/blueprints/outline/words.ts'
import { tenKinds } from '../../support/signed-entries.ts'

const drawing = (signs: Signs, features: readonly Feature[] = []): string =>
  JSON.stringify(outlineStrokes(drawnOf({ signs, features })))
const stands = ['upright', 'cylinder', 'drum', 'stick']
const others = allSignQuestions.filter(({ id }) => id !== 'stands')

describe('the drawing of an architecture', () => {
  it('is another for each way to stand', () =>
    expect(new Set(stands.map((id) => drawing({ stands: [id] }))).size).toBe(stands.length))
  it.each(stands.flatMap((stand) => others.map((question) => [stand, question.id, question] as const)))(
    'shows on %s each answer to “%s”, and that none is known',
    (stand, id, { answers }) => {
      const drawn = answers.map((answer) => drawing({ stands: [stand], [id]: [answer.id] }))
      // "None" is drawn as nothing.
      const seen = id === 'reset' ? drawn.slice(0, 1) : drawn
      expect(new Set([...seen, drawing({ stands: [stand] })]).size).toBe(seen.length + 1)
    },
  )
  it('shows lamps on each, a hose and wheels on an upright', () => {
    for (const stand of stands) expect(drawing({ stands: [stand] }, ['lamps'])).not.toBe(drawing({ stands: [stand] }))
    const upright: Signs = { stands: ['upright'], dust: ['bag'] }
    expect(new Set([drawing(upright), ...featureIds.map((feature) => drawing(upright, [feature]))]).size).toBe(4)
  })
  it('tells the ten kinds apart, in lines and in words', () => {
    const kinds = tenKinds.filter(({ id }) => !id.endsWith('other-mains'))
    expect(new Set(kinds.map(({ signs }) => drawing(signs))).size).toBe(10)
    expect(new Set(kinds.map(({ signs }) => outlineWords({ signs, features: [] }))).size).toBe(10)
  })
  it('says in words what is to be seen, each answer where several fit', () =>
    expect(
      outlineWords({ signs: { stands: ['stick'], dust: ['bin', 'bag'], reset: ['no'] }, features: ['lamps', 'hose'] }),
    ).toBe('Thin stick; clear bin or bag inside; no overload button; lamps'))
  it('is made of plain SVG paths', () => {
    for (const { signs } of tenKinds)
      for (const { d } of outlineStrokes(drawnOf({ signs, features: [...featureIds] })))
        expect(d).toMatch(/^M[-\d.MmLlHhVvQqTtCcAaZz ]+$/)
  })
})
