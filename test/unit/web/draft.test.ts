import { describe, expect, it } from 'vitest'
import { noteContentSchema } from '../../../src/bench/note.ts'
import { contentFromDraft, draftFromText, emptyDraft, withBlueprint, withSettings } from '../../../src/web/add/draft.ts'
import { problemsAt, problemsElsewhere } from '../../../src/web/problems-at.ts'
import { seedFromText } from '../../../src/web/seed.ts'
import { smallBlueprint } from './blueprint.ts'

const draft = withBlueprint(emptyDraft, smallBlueprint)

describe('contentFromDraft', () => {
  it('makes a note the bench takes from nothing but a blueprint', () => {
    const content = contentFromDraft(draft)
    if (content.kind !== 'ok') throw new Error('refused')
    expect(noteContentSchema.safeParse(content.value).success).toBe(true)
    expect(content.value.plate.voltageV).toBe(smallBlueprint.plate.voltageV)
  })
  it('reads units at the edge: 7.50 is 750 pence, 5500 g is 5.5 kg, 1.2 kW is 1200 W', () => {
    const content = contentFromDraft({ ...draft, paid: '7.50', mass: '5500 g', power: '1.2 kW', frequency: '60 Hz' })
    if (content.kind !== 'ok') throw new Error('refused')
    expect(content.value).toMatchObject({ paidMinor: 750, plate: { frequencyHz: 60, powerW: 1200 } })
    expect(content.value.plate.massKg).toBeCloseTo(5.5, 9)
  })
  it('takes age and use where they are given, and says nothing of them otherwise', () => {
    const given = contentFromDraft({ ...draft, age: '12', wear: 'heavy' })
    expect(given.kind === 'ok' ? given.value : null).toMatchObject({ ageYears: 12, wear: 'heavy' })
    const plain = contentFromDraft(draft)
    expect(plain.kind === 'ok' ? [plain.value.ageYears, plain.value.wear] : null).toEqual([undefined, undefined])
    const wrong = contentFromDraft({ ...draft, age: 'old' })
    expect(wrong.kind === 'refused' ? wrong.problems.map(({ where }) => where) : []).toEqual(['ageYears'])
  })
  it('takes the model where it is given, and says nothing of it otherwise', () => {
    const given = contentFromDraft({ ...draft, model: ' TM 12 ' })
    expect(given.kind === 'ok' ? given.value.model : null).toBe('TM 12')
    const stored = draftFromText(JSON.stringify({ ...draft, model: undefined }))
    const plain = contentFromDraft(stored ?? draft)
    expect(plain.kind === 'ok' ? plain.value.model : null).toBeUndefined()
  })
  it('names every wrong field at once, each with a mend', () => {
    const content = contentFromDraft({ ...draft, paid: 'a fiver', voltage: '230 W', name: ' ' })
    if (content.kind !== 'refused') throw new Error('taken')
    expect(content.problems.map(({ where }) => where).sort()).toEqual(['name', 'paidMinor', 'plate.voltageV'])
    expect(content.problems.every(({ mend }) => mend !== '')).toBe(true)
  })
})

describe('withBlueprint', () => {
  it('keeps what was said and paid', () => {
    const before = { ...emptyDraft, paid: '4', complaints: ['dead' as const], claim: 'went bang' }
    expect(withBlueprint(before, smallBlueprint)).toMatchObject({ paid: '4', complaints: ['dead'], claim: 'went bang' })
  })
})

describe('withSettings', () => {
  const settings = { hourMinor: 950, currency: 'EUR' as const }
  it('brings in the hour and the currency once, and never over what was typed', () => {
    const brought = withSettings(draft, settings)
    expect(brought).toMatchObject({ hour: '9.50', currency: 'EUR' })
    const typed = { ...brought, hour: '' }
    expect(withSettings(typed, { hourMinor: 800, currency: 'GBP' })).toEqual(typed)
  })
  it('an empty hour is left to the bench; a wrong one is named', () => {
    const empty = contentFromDraft({ ...draft, hour: ' ' })
    expect(empty.kind === 'ok' ? empty.value.hourMinor : null).toBeUndefined()
    const given = contentFromDraft(withSettings(draft, settings))
    expect(given.kind === 'ok' ? given.value.hourMinor : null).toBe(950)
    const wrong = contentFromDraft({ ...draft, hour: 'much' })
    expect(wrong.kind === 'refused' ? wrong.problems.map(({ where }) => where) : []).toEqual(['hourMinor'])
  })
})

describe('the name on a draft', () => {
  it('is that of the blueprint where none was typed', () => expect(draft.name).toBe(smallBlueprint.name))
  it('stays when it was typed', () =>
    expect(withBlueprint({ ...emptyDraft, name: 'Red' }, smallBlueprint).name).toBe('Red'))
})

describe('draftFromText', () => {
  it('gives back what was stored', () => expect(draftFromText(JSON.stringify(draft))).toEqual(draft))
  it('leaves out stored answers that no question knows', () => {
    const good = { question: 'cord', answer: 'reel' }
    const replies = [good, { question: 'cord', answer: 'gone' }, { question: 'colour', answer: 'red' }, null, 7]
    expect(draftFromText(JSON.stringify({ ...draft, replies }))?.replies).toEqual([good])
    expect(draftFromText(JSON.stringify({ ...draft, replies: 'x' }))?.replies).toEqual([])
  })
  it.each([null, '', 'null', '{', '[]', '{"paid":"4"}'])('takes %s for no draft', (text) =>
    expect(draftFromText(text)).toBeNull(),
  )
})

describe('problemsAt', () => {
  const problem = (where: string) => ({ code: 'x', where, what: 'w', mend: 'm' })
  it('finds a field under whatever stands before it, and no other of a like name', () => {
    const all = ['voltageV', 'plate.voltageV', 'note content.plate.voltageV', 'overvoltageV'].map(problem)
    expect(problemsAt(all, 'voltageV').map(({ where }) => where)).toEqual([
      'voltageV',
      'plate.voltageV',
      'note content.plate.voltageV',
    ])
    expect(problemsElsewhere(all, ['voltageV']).map(({ where }) => where)).toEqual(['overvoltageV'])
  })
})

describe('seedFromText', () => {
  it.each(['0', ' 42 ', '4294967295'])('takes %s', (text) =>
    expect(seedFromText(text)).toEqual({ kind: 'ok', value: Number(text) }),
  )
  it.each(['', '-1', '1.5', '4294967296', 'luck'])('refuses “%s”', (text) =>
    expect(seedFromText(text).kind).toBe('refused'),
  )
})
