import { expect, it } from 'vitest'
import { inTurn } from '../../../src/store/sql/in-turn.ts'
import { makeKnownLogs } from '../../../src/store/sql/known-logs.ts'
import { added, log } from '../../support/notes.ts'

/** A question whose answers are given by hand: how often it was asked, and how to answer the one asked last. */
const byHand = () => {
  const asked: { readonly key: string; readonly answer: (value: number) => void; readonly fail: () => void }[] = []
  const ask = (key: string): Promise<number> =>
    new Promise((resolve, reject) => asked.push({ key, answer: resolve, fail: () => reject(new Error('away')) }))
  return { asked, ask: inTurn(ask) }
}
const settled = () => new Promise((resolve) => setImmediate(resolve))

it('whoever asks meanwhile gets an answer that was begun after they asked, together with the others who wait', async () => {
  const { asked, ask } = byHand()
  const first = ask('a')
  const [second, third, elsewhere] = [ask('a'), ask('a'), ask('b')]
  expect(asked.map(({ key }) => key)).toEqual(['a', 'b'])
  asked[0].answer(1)
  expect(await first).toBe(1)
  await settled()
  expect(asked).toHaveLength(3)
  const fourth = ask('a')
  asked[2].answer(2)
  expect(await Promise.all([second, third])).toEqual([2, 2])
  await settled()
  asked[3].answer(3)
  expect(await fourth).toBe(3)
  asked[1].answer(9)
  expect(await elsewhere).toBe(9)
})

it('a question that fails takes nobody with it who asked later', async () => {
  const { asked, ask } = byHand()
  const first = ask('a')
  const second = ask('a')
  asked[0].fail()
  await expect(first).rejects.toThrow('away')
  await settled()
  asked[1].answer(2)
  expect(await second).toBe(2)
})

it('of the logs that are known those are dropped that were asked for longest ago', () => {
  const known = makeKnownLogs(3)
  const one = (id: string) => log([added()], id)
  for (const id of ['a', 'b', 'c']) known.put(id, one(id))
  known.get('a')
  known.put('d', one('d'))
  expect(['a', 'b', 'c', 'd'].map((id) => known.get(id)?.length)).toEqual([1, undefined, 1, 1])
  known.put('e', log([added(), { kind: 'said', text: 'hums' }], 'e'))
  expect(['a', 'c', 'd', 'e'].map((id) => known.get(id)?.length)).toEqual([undefined, undefined, 1, 2])
})
