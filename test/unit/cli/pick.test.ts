import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { blueprints } from '../../../src/blueprint/library.ts'
import { allSignQuestions, narrow, type SignReply } from '../../../src/blueprint/narrow.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeAll(async () => {
  line = await makeCommandLine()
})
afterAll(() => line.remove())

const pick = (...args: readonly string[]) => line.run('blueprint', 'pick', ...args)

describe('blueprint pick', () => {
  it.each(blueprints)('finds $id by its own signs and asks no more than is of use', async ({ id, signs }) => {
    const given: SignReply[] = allSignQuestions.flatMap(({ id: question }) =>
      signs[question] === undefined ? [] : [{ question, answer: signs[question][0] }],
    )
    const args = given.flatMap(({ question, answer }) => [`--${question}`, answer])
    const { code, out } = await pick(...args)
    expect(code).toBe(0)
    expect(out).toContain(`\n  ${id}  `)
    const { value } = await line.json('blueprint', 'pick', ...args)
    const left = value as { kind: string; entries: { id: string; plate: object; recognise: string[] }[]; next: unknown }
    expect(left.entries.find((one) => one.id === id)).toMatchObject({ plate: expect.objectContaining({}) as object })
    expect(left.next).toEqual(expectedNext(given))
  })

  it('asks what tells most when nothing was said, with what to type for each answer', async () => {
    const { out } = await pick()
    expect(out).toContain(`${blueprints.length} of ${blueprints.length} fit:`)
    const next = expectedNext([])
    for (const answer of next?.answers ?? []) expect(out).toContain(`--${next!.id} ${answer.id}: ${answer.name}`)
  })

  it('says which answer to take back when nothing fits', async () => {
    // No stick has its switch on top of a drum's motor and a cloth bag.
    const { code, out } = await pick('--stands', 'stick', '--dust', 'cloth-bag', '--switch', 'top')
    expect(code).toBe(0)
    expect(out).toMatch(
      /^Nothing fits all of that\. Take back first: --(stands|dust|switch) \S+\nNearest:\n {2}\S+ {2}.*; against it: --/,
    )
  })

  it('refuses an answer that is none, with the nearest that is', async () => {
    expect(await pick('--stands', 'uprihgt', '--cord', 'reel')).toEqual({
      code: 1,
      out: '',
      err: '--stands: “uprihgt” is not an answer to this. Did you mean upright? Use one of upright, cylinder, drum, stick, cannot-tell.',
    })
    const { code, value } = await line.json('blueprint', 'pick', '--brush', 'x')
    expect([code, value]).toMatchObject([1, { problems: [{ code: 'unknown-answer', where: '--brush' }] }])
  })

  it('rules nothing out for who cannot tell', async () => {
    const args = allSignQuestions.flatMap(({ id }) => [`--${id}`, 'cannot-tell'])
    expect((await pick(...args)).out).toContain(`${blueprints.length} of ${blueprints.length} fit:`)
  })

  it('leaves the other commands on blueprints as they are', async () => {
    expect((await line.run('blueprint', 'export', blueprints[0].id)).code).toBe(0)
    expect((await line.run('blueprint', 'pick', '--colour', 'red')).code).toBe(2)
  })
})

const expectedNext = (replies: readonly SignReply[]) => {
  const left = narrow(blueprints, replies)
  return left.kind === 'fits' ? left.next : null
}
