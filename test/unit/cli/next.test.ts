import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { blueprintById } from '../../../src/blueprint/library.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
})
afterEach(() => line.remove())

type Entry = { readonly name: string; readonly minorPerHour: number }
type Next = { readonly carryOn: readonly Entry[]; readonly ready: readonly Entry[]; readonly unknown: readonly Entry[] }

describe('thrum next', () => {
  it('orders the machines in hand by what an hour brings, as their own views say', async () => {
    // Of the architectures worth carrying on with the one whose moves are weighed quickest.
    const { id } = blueprintById('bagless-cylinder')!
    for (const [name, complaint] of [
      ['Green', 'dead'],
      ['Blue', 'weak-suction'],
      ['Gone', 'dead'],
    ] as const)
      await line.run('add', '--name', name, '--blueprint', id, '--complaint', complaint)
    await line.run('leave', 'Gone', 'scrap', '0')
    const { code, value } = await line.json('next')
    const { carryOn, ready, unknown } = value as Next
    expect([code, unknown]).toEqual([0, []])
    expect([...carryOn, ...ready].map(({ name }) => name).toSorted()).toEqual(['Blue', 'Green'])
    expect(carryOn.length).toBeGreaterThan(0)
    for (const { name, minorPerHour } of carryOn) {
      const { worth } = ((await line.json('show', name)).value as { view: MachineView }).view
      expect(minorPerHour).toBeCloseTo((worth.carryOnMinor - worth.asItStandsMinor) / (worth.expectedMin / 60))
    }
    const rates = carryOn.map(({ minorPerHour }) => minorPerHour)
    expect(rates).toEqual(rates.toSorted((a, b) => b - a))
    const { out } = await line.run('next')
    expect(out).toMatch(/^For the next hour, best first:\n {2}\S.*; an hour brings £\d+\.\d\d {2}\(/)
  })

  it('says when nothing is in hand', async () => expect((await line.run('next')).out).toBe('Nothing in hand.'))
})
