import { beforeAll, describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import type { MachineDocument } from '../../../src/bench/contract.ts'
import { fillDemoBench } from '../../../src/bench/demo.ts'
import { demoMachines } from '../../../src/bench/demo-machines.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { machineDocument, machineList } from '../../../src/bench/queries.ts'
import { blueprintById } from '../../../src/blueprint/library.ts'
import { airView, machineView, proofView } from '../../../src/machine/index.ts'
import { memoryBench } from '../../../src/store/memory/bench.ts'
import { storesOf } from '../../support/stores.ts'

describe('the five machines of the demonstration that are written by hand', () => {
  const documents: MachineDocument[] = []
  beforeAll(async () => {
    const stores = memoryBench()
    await fillDemoBench({ stores, blueprintById })
    const { store, books } = storesOf(stores)
    const { machines } = await machineList({ books, bench: 'demo' })
    const byHand = new Set(demoMachines.map(({ id }) => id))
    expect(machines.slice(0, 3).every(({ id }) => byHand.has(id))).toBe(true)
    for (const { id } of machines.filter((one) => byHand.has(one.id)))
      documents.push((await machineDocument({ store, blueprintById }, id))!)
  })
  const viewOf = ({ state, notes }: MachineDocument) =>
    machineView(jobOf(state, notes, blueprintById(state.blueprint)!))
  const named = (id: string) => documents.find(({ state }) => state.id === id)!

  it('says of each machine that it is invented', () => {
    expect(documents).toHaveLength(5)
    for (const { lines } of documents) expect(lines.some((line) => line.text.startsWith('Invented'))).toBe(true)
  })

  it('has one just in, two at work, one sold and one broken up', () => {
    expect(documents.filter(({ state }) => state.left === null)).toHaveLength(3)
    expect(documents.map(({ state }) => state.left?.exit).filter((exit) => exit !== undefined)).toEqual([
      'break-for-parts',
      'sell-working',
    ])
    expect(named('demo-green').state.version).toBe(2)
    // By hand, in pence: 8500 received less 1500 paid, 450 + 150 for parts, 80 for materials.
    expect(named('demo-blue').state.left?.profitMinor).toBe(8500 - 1500 - 680)
  })

  it('reads in plain words, with no ids left', () => {
    for (const { state, lines } of documents) {
      const { checks, covers, faults, repairs } = blueprintById(state.blueprint)!
      const ids = [...checks, ...covers, ...faults, ...repairs].map((one) => one.id).filter((id) => id.includes('-'))
      for (const line of lines) expect(ids.filter((id) => line.text.includes(id))).toEqual([])
    }
  })

  it('is such as the engines can explain', () => {
    for (const document of documents) expect(viewOf(document).unexplained, document.state.id).toBeNull()
  })

  it('shows what the work did to the air of the blue one, and its proof', () => {
    const { state, notes } = named('demo-blue')
    const job = jobOf(state, notes, blueprintById(state.blueprint)!)
    const air = valueOf(airView(job))
    expect(air.sets.map(({ name }) => name)).toEqual(['as found', 'after 3 repairs'])
    expect(air.sets[0]?.explanations[0]?.kind).toBe('blockage')
    expect(air.beforeAfter?.airPower?.ratio).toBeGreaterThan(1.2)
    expect(proofView(job, 'UK').verdict.kind).toBe('fit')
  })

  it('puts the flex at the handle first for the silver one', () => {
    expect(viewOf(named('demo-silver')).suspects[0]?.name).toMatch(/Flex at the handle/)
  })
})
