import { expect, it } from 'vitest'
import type { Change } from '../../../src/bench/ports.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { toldBench } from '../../../src/store/memory/told-bench.ts'
import { put } from '../../contract/log-store.ts'
import { added, log } from '../../support/notes.ts'

it('a bench in memory tells what is written to it, with the version, and nothing that was not kept', async () => {
  const { stores, changes } = toldBench(memoryBench(), 'demo')
  const heard: Change[] = []
  const stop = changes.subscribe('demo', (change) => heard.push(change))
  const other: Change[] = []
  changes.subscribe('own', (change) => other.push(change))
  const notes = log([added(), { kind: 'said', text: 'hums' }])
  await stores.notes.add('demo', 'm1', notes.slice(0, 1))
  await stores.notes.append('m1', 7, notes.slice(1))
  await stores.notes.append('m1', 1, notes.slice(1))
  await stores.logs.write('demo', [{ kind: 'part', id: 'p1', expectedVersion: 0, entries: [put('p1')] }])
  stop()
  await stores.notes.add('demo', 'm2', log([added()], 'm2'))
  expect(heard).toEqual([
    { kind: 'machine', id: 'm1', version: 1 },
    { kind: 'machine', id: 'm1', version: 2 },
    { kind: 'part', id: 'p1', version: 1 },
  ])
  expect(other).toEqual([])
})
