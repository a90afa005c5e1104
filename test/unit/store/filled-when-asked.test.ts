import { expect, it } from 'vitest'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { filledWhenAsked } from '../../../src/store/memory/filled-when-asked.ts'
import { added, log } from '../../support/notes.ts'

const filling = () => {
  const stores = memoryBench()
  let fills = 0
  const fill = async (): Promise<void> => {
    fills++
    await Promise.resolve()
    await stores.notes.add('demo', 'm1', log([added()]))
  }
  return { stores: filledWhenAsked(stores, fill), fills: () => fills }
}

it('is filled at the first question and no sooner, once, and all who ask meanwhile wait for it', async () => {
  const { stores, fills } = filling()
  expect(fills()).toBe(0)
  const [notes, page, groups] = await Promise.all([
    stores.notes.notes('m1'),
    stores.books.machines('demo', { open: true, limit: 10 }),
    stores.books.groups('demo', 'machine'),
  ])
  expect(notes).toHaveLength(1)
  expect(page.total).toBe(1)
  expect(groups).toHaveLength(1)
  expect(await stores.logs.list('demo', 'part')).toEqual([])
  expect(fills()).toBe(1)
})

it('says so at every question where the filling throws', async () => {
  const stores = filledWhenAsked(memoryBench(), () => Promise.reject(new Error('wrong')))
  await expect(stores.notes.notes('m1')).rejects.toThrow('wrong')
  await expect(stores.notes.list('demo')).rejects.toThrow('wrong')
})
