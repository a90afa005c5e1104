import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  allSignQuestions,
  cannotTell,
  narrow,
  replyText,
  sameSigns,
  type SignReply,
  type Signs,
} from '../../../src/blueprint/narrow.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { SignQuestionId } from '../../../src/blueprint/signs.ts'
import { tenKinds, type SignedEntry } from '../../support/signed-entries.ts'

const ids = (entries: readonly { readonly id: string }[]): readonly string[] => entries.map(({ id }) => id)
const fits = (entries: readonly SignedEntry[], ...replies: readonly SignReply[]) => {
  const left = narrow(entries, replies)
  if (left.kind !== 'fits') throw new Error('nothing fits')
  return left
}
const none = (entries: readonly SignedEntry[], ...replies: readonly SignReply[]) => {
  const left = narrow(entries, replies)
  if (left.kind !== 'none') throw new Error('something fits')
  return left
}
const entry = (id: string, signs: Signs): SignedEntry => ({ id, signs })
const reply = (question: SignQuestionId, answer: string): SignReply => ({ question, answer })

describe('what still fits', () => {
  it('is everything before the first answer', () => expect(fits(tenKinds).entries).toEqual(tenKinds))
  it('is what the answers do not speak against', () =>
    expect(ids(fits(tenKinds, reply('stands', 'upright'), reply('brush', 'belt')).entries)).toEqual([
      'upright-belt-bag',
      'upright-belt-bag-other-mains',
      'upright-belt-cloth',
      'upright-belt-bin',
    ]))
  it('has every entry in it that leaves a question out or gives several answers', () =>
    expect(ids(fits(tenKinds, reply('stands', 'stick'), reply('dust', 'bag'), reply('switch', 'top')).entries)).toEqual(
      ['stick-electric'],
    ))
  it('is not narrowed by who cannot tell', () =>
    expect(fits(tenKinds, reply('stands', cannotTell)).entries).toHaveLength(tenKinds.length))
  it('is nothing of nothing, and nothing is asked', () =>
    expect(narrow([], [reply('stands', 'stick')])).toEqual({ kind: 'fits', entries: [], next: null }))
})

describe('the next question', () => {
  const next = (entries: readonly SignedEntry[], ...replies: readonly SignReply[]) => fits(entries, ...replies).next?.id
  // Four equally likely kinds: halves give 1 bit, one against three 0.811 bit (binary entropy of 1/4), four ways 2 bits.
  const four = (...answers: readonly (readonly [string, string, string])[]) =>
    answers.map(([dust, cord, brush], k) => entry(`${k}`, { dust: [dust], cord: [cord], brush: [brush] }))
  it('is the one that halves them rather than the one that takes off a corner', () => {
    const rest = four(
      ['bag', 'reel', 'none'],
      ['bin', 'reel', 'none'],
      ['bin', 'hooks', 'none'],
      ['bin', 'hooks', 'belt'],
    )
    expect(next(rest)).toBe('cord')
  })
  it('is the one that tells all four apart', () =>
    expect(
      next(
        four(['bag', 'reel', 'belt'], ['bag', 'reel', 'electric'], ['bin', 'hooks', 'air'], ['bin', 'hooks', 'none']),
      ),
    ).toBe('brush'))
  it('is not one that all answer alike, nor one that was answered', () => {
    const two = [entry('a', { cord: ['reel'], dust: ['bag'] }), entry('b', { cord: ['reel'], dust: ['bin'] })]
    expect(next(two)).toBe('dust')
    expect(next(two, reply('dust', cannotTell))).toBeUndefined()
  })
  it('is not one where each answer fits all', () =>
    expect(
      next([entry('a', { cord: ['reel', 'hooks'], dust: ['bag'] }), entry('b', { dust: ['bag'] })]),
    ).toBeUndefined())
  it('is rather one that most can answer than one that tells a little more to the few who can', () => {
    // Ten kinds: `stands` 1.85 bits, `brush` 1.90 bits, but whether a roll has a motor of its own is hard to see.
    expect(next(tenKinds)).toBe('stands')
  })
  it('counts variants of one architecture as one', () => {
    const variants = ['1', '2', '3', '4'].map((id) => entry(id, { dust: ['bag'], cord: ['reel'], brush: ['belt'] }))
    const others = [
      entry('b', { dust: ['bag'], cord: ['hooks'], brush: ['none'] }),
      entry('c', { dust: ['bin'], cord: ['hooks'], brush: ['belt'] }),
      entry('d', { dust: ['bin'], cord: ['hooks'], brush: ['belt'], switch: ['top'] }),
    ]
    // By entries `dust` splits 5 : 2 and `cord` 4 : 3; by kinds 2 : 2 and 1 : 3.
    expect(next([...variants, ...others])).toBe('dust')
  })
  it('tells ten kinds apart in four questions at most', () => {
    const asked = tenKinds.map((one) => interview(tenKinds, one, () => 0).replies.length)
    expect(Math.max(...asked)).toBeLessThanOrEqual(4)
  })
})

it.each(blueprints)('four questions at most tell $id from every architecture that is not its own', (blueprint) => {
  const { replies, left } = interview(blueprints, blueprint, () => 0)
  expect(replies.length).toBeLessThanOrEqual(4)
  expect(new Set(left.map(({ signs }) => sameSigns(signs))).size).toBe(1)
})

describe('when nothing fits', () => {
  const wrong = [reply('stands', 'drum'), reply('dust', 'bag'), reply('cord', 'reel')]
  it('the answer to take back is the one that brings most of the nearest back', () => {
    const { takeBack, nearest } = none(tenKinds, ...wrong)
    expect(nearest.map(({ entry: { id }, against }) => [id, against.map(({ question }) => question)])).toEqual([
      ['cylinder-plain', ['stands']],
      ['cylinder-electric', ['stands']],
      ['drum', ['cord']],
      ['stick-electric', ['stands']],
    ])
    expect(takeBack).toEqual(wrong[0])
  })
  it('of equals it is the last given', () => {
    const two = [entry('a', { cord: ['reel'], dust: ['bin'] }), entry('b', { cord: ['hooks'], dust: ['bag'] })]
    expect(none(two, reply('dust', 'bag'), reply('cord', 'reel')).takeBack.question).toBe('cord')
  })
})

/** Answers every question that is asked truthfully of one entry; `choose` picks among the answers that fit, the last is "cannot tell". */
const interview = (
  entries: readonly SignedEntry[],
  truth: SignedEntry,
  choose: (count: number, step: number) => number,
): { readonly replies: readonly SignReply[]; readonly left: readonly SignedEntry[] } => {
  const replies: SignReply[] = []
  for (;;) {
    const left = narrow(entries, replies)
    if (left.kind === 'none') throw new Error('answering truthfully ruled everything out')
    if (left.next === null) return { replies, left: left.entries }
    const { id, answers } = left.next
    const fitting = [...(truth.signs[id] ?? answers.map((answer) => answer.id)), cannotTell]
    replies.push(reply(id, fitting[choose(fitting.length, replies.length)]))
    if (replies.length > 50) throw new Error('asks for ever')
  }
}

const signsArbitrary = fc.record(
  Object.fromEntries(
    allSignQuestions.map(({ id, answers }) => [
      id,
      fc.uniqueArray(fc.constantFrom(...answers.map((answer) => answer.id)), { minLength: 1, maxLength: 2 }),
    ]),
  ),
  { requiredKeys: [] },
) as fc.Arbitrary<Signs>
const entriesArbitrary = fc
  .array(signsArbitrary, { minLength: 1, maxLength: 25 })
  .map((all) => all.map((signs, k) => entry(`e${k}`, signs)))
/** Every question has one answer. */
const wholeEntriesArbitrary = fc
  .array(
    fc.tuple(
      ...allSignQuestions.map(({ id, answers }) =>
        fc.constantFrom(...answers.map((answer) => [id, [answer.id]] as const)),
      ),
    ),
    { minLength: 1, maxLength: 25 },
  )
  .map((all) => all.map((signs, k) => entry(`e${k}`, Object.fromEntries(signs) as Signs)))
const repliesArbitrary = fc
  .tuple(
    ...allSignQuestions.map(({ id, answers }) =>
      fc.option(fc.constantFrom(cannotTell, ...answers.map((answer) => reply(id, answer.id).answer)), { nil: null }),
    ),
  )
  .map((answers) => answers.flatMap((answer, k) => (answer === null ? [] : [reply(allSignQuestions[k].id, answer)])))

describe('whatever the entries', () => {
  it('answering truthfully leaves the entry in, and no more is asked than there are questions, none twice', () =>
    fc.assert(
      fc.property(
        entriesArbitrary,
        fc.nat(),
        fc.array(fc.nat(), { minLength: 8, maxLength: 8 }),
        (entries, pick, dice) => {
          const truth = entries[pick % entries.length]
          const { replies, left } = interview(entries, truth, (count, step) => dice[step % dice.length] % count)
          expect(left).toContain(truth)
          expect(replies.length).toBeLessThanOrEqual(allSignQuestions.length)
          expect(new Set(replies.map(({ question }) => question)).size).toBe(replies.length)
        },
      ),
    ))
  it('a question is asked only when some answer to it rules an entry out', () =>
    fc.assert(
      fc.property(entriesArbitrary, repliesArbitrary, (entries, replies) => {
        const left = narrow(entries, replies)
        if (left.kind === 'none' || left.next === null) return
        const { id, answers } = left.next
        const after = answers.map((answer) => narrow(left.entries, [reply(id, answer.id)]))
        expect(after.some((one) => one.kind === 'none' || one.entries.length < left.entries.length)).toBe(true)
      }),
    ))
  it('each question with one answer and nobody in doubt, those left at the end have the same signs', () =>
    fc.assert(
      fc.property(wholeEntriesArbitrary, fc.nat(), (entries, pick) => {
        const truth = entries[pick % entries.length]
        const same = entries.filter(({ signs }) => sameSigns(signs) === sameSigns(truth.signs))
        expect(interview(entries, truth, () => 0).left).toEqual(same)
      }),
    ))
  it('taking back what is named leads to something that fits, in as many steps as answers stand against the nearest', () =>
    fc.assert(
      fc.property(entriesArbitrary, repliesArbitrary, (entries, replies) => {
        let kept = replies
        const first = narrow(entries, kept)
        if (first.kind === 'fits') return
        const steps = first.nearest[0].against.length
        for (let step = 0; step < steps; step++) {
          const { takeBack } = none(entries, ...kept)
          kept = kept.filter((one) => one !== takeBack)
        }
        expect(narrow(entries, kept).kind).toBe('fits')
      }),
    ))
})

it('an answer reads as its question puts it', () => {
  expect(replyText(reply('cord', 'reel'))).toBe('Winds itself in')
  expect(replyText(reply('cord', cannotTell))).toBe('Cannot tell')
})
