import { setTimeout } from 'node:timers/promises'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Change, Changes } from '../../src/bench/ports.ts'
import { added, log } from '../support/notes.ts'
import { databasesHere, type StoreForTest } from '../support/open-stores.ts'
import { put } from './log-store.ts'

/** Nothing may take longer than this; what it took is printed where another program is told. */
const patienceMs = 5000

const hear = (changes: Changes, bench: 'own' | 'demo' = 'own') => {
  const heard: Change[] = []
  const stop = changes.subscribe(bench, (change) => heard.push(change))
  const until = async (isIt: (change: Change) => boolean): Promise<number> => {
    const began = performance.now()
    while (!heard.some(isIt)) {
      if (performance.now() - began > patienceMs) throw new Error(`not heard: ${JSON.stringify(heard)}`)
      await setTimeout(5)
    }
    return performance.now() - began
  }
  return { heard, stop, until }
}

describe.each(databasesHere)('changes: %s', (name, open) => {
  let under: StoreForTest
  beforeEach(async () => {
    under = await open()
  })
  afterEach(() => under.close())

  /** Where those who listen are told over a connection, it says first that it is there. */
  const connected = async ({ until }: ReturnType<typeof hear>): Promise<void> => {
    if (name === 'PostgreSQL') await until(({ kind }) => kind === 'everything')
  }

  it('are told with the log and its version, on their own bench', async () => {
    const { store } = under
    const [own, demo] = [hear(store.changes), hear(store.changes, 'demo')]
    await connected(own)
    await connected(demo)
    await store.notes.add('own', 'm1', log([added()]))
    await store.notes.append('m1', 1, log([added(), { kind: 'said', text: 'hums' }]).slice(1))
    await store.logs.write('own', [{ kind: 'part', id: 'p1', expectedVersion: 0, entries: [put('p1')] }])
    await own.until(({ kind }) => kind === 'part')
    expect(own.heard.filter(({ kind }) => kind !== 'everything')).toEqual([
      { kind: 'machine', id: 'm1', version: 1 },
      { kind: 'machine', id: 'm1', version: 2 },
      { kind: 'part', id: 'p1', version: 1 },
    ])
    expect(demo.heard.filter(({ kind }) => kind !== 'everything')).toEqual([])
    own.stop()
    demo.stop()
  })

  it('that were not kept are not told, nor is anything to those who stopped', async () => {
    const { store } = under
    const [own, gone] = [hear(store.changes), hear(store.changes)]
    await connected(own)
    gone.stop()
    await store.notes.add('own', 'm1', log([added()]))
    await store.notes.append('m1', 7, log([added(), { kind: 'said', text: 'late' }]).slice(1))
    await store.notes.add('own', 'm2', log([added()], 'm2'))
    await own.until((change) => change.kind === 'machine' && change.id === 'm2')
    const told = own.heard.flatMap((change) => (change.kind === 'machine' ? [`${change.id} ${change.version}`] : []))
    expect(told).toEqual(['m1 1', 'm2 1'])
    expect(gone.heard.filter(({ kind }) => kind !== 'everything')).toEqual([])
    own.stop()
  })

  it('of another program are told within a second', async () => {
    const other = await under.other()
    const own = hear(under.store.changes)
    await connected(own)
    // SQLite's file is looked at twice a second, beginning now.
    await setTimeout(100)
    own.heard.length = 0
    await other.notes.add('own', 'm1', log([added()]))
    const ms = await own.until(({ kind }) => kind === 'machine' || kind === 'everything')
    console.log(`${name}: what another program wrote was told after ${ms.toFixed(0)} ms`)
    own.stop()
  })
})
