import { describe, expect, it } from 'vitest'
import { improvements } from '../../../src/facts/asking.ts'
import { cleaningCautions } from '../../../src/facts/cleaning-cautions.ts'
import type { CleaningTask } from '../../../src/facts/cleaning-task.ts'
import {
  cleaningCostMinor,
  cleaningTask,
  cleaningTaskIds,
  driesAfter,
  type CleaningTaskId,
} from '../../../src/facts/cleaning-tasks.ts'

const task = (id: CleaningTaskId): CleaningTask => cleaningTask(id)!

type Row = { readonly min: readonly [number, number]; readonly dry?: readonly [number, number]; readonly pounds?: readonly [number, number] } // prettier-ignore

/**
 * The trade's table of cleaning jobs, UK street level 2024–26, judgement of practitioners: minutes, hours of drying, pounds of
 * materials, each from and to. The hours are those of a warm room; filters and cones 48 where cold or humid.
 */
const trade: Partial<Record<CleaningTaskId, Row>> = {
  'dust-out': { min: [8, 8], pounds: [0.2, 0.2] },
  'wash-casing': { min: [15, 15], dry: [2, 6], pounds: [0.3, 0.3] },
  'wash-bin': { min: [12, 12], dry: [24, 48], pounds: [0.2, 0.2] },
  'wash-hose': { min: [8, 12], dry: [24, 24], pounds: [0.4, 0.4] },
  roll: { min: [10, 15], dry: [2, 2], pounds: [0.1, 0.1] },
  wheels: { min: [6, 6], dry: [1, 1] },
  'motor-dust': { min: [6, 6] },
  seals: { min: [4, 4], pounds: [0.2, 0.2] },
  flex: { min: [4, 4], dry: [0.5, 0.5], pounds: [0.1, 0.1] },
  scuffs: { min: [10, 15], pounds: [0.4, 0.4] },
  scratches: { min: [20, 40], pounds: [1, 1] },
  trims: { min: [6, 6], pounds: [0.4, 0.4] },
  residue: { min: [5, 5], pounds: [0.2, 0.2] },
  odour: { min: [10, 10], dry: [24, 48], pounds: [1, 1] },
  mould: { min: [30, 30], dry: [48, 48], pounds: [5, 15] },
  'final-wipe': { min: [8, 8], pounds: [0.2, 0.2] },
}

describe('cleaning tasks', () => {
  it.each(Object.entries(trade))('%s lies within the trade’s figures', (id, { min, dry, pounds }) => {
    const { minutes, ukCostMinor, dries } = task(id as CleaningTaskId)
    expect(minutes).toBeGreaterThanOrEqual(min[0])
    expect(minutes).toBeLessThanOrEqual(min[1])
    if (pounds !== undefined) {
      expect(ukCostMinor).toBeGreaterThanOrEqual(pounds[0] * 100)
      expect(ukCostMinor).toBeLessThanOrEqual(pounds[1] * 100)
    }
    if (dry !== undefined) {
      expect(dries?.warm).toBeGreaterThanOrEqual(dry[0])
      expect(dries?.warm).toBeLessThanOrEqual(dry[1])
      expect(dries?.damp).toBeGreaterThanOrEqual(dry[1])
    }
  })

  it('renews bag and both filters in three minutes, for £6 to £18: the trade’s line for all three', () => {
    const three = [task('new-bag'), task('new-motor-filter'), task('new-exhaust-filter')]
    expect(three.reduce((sum, { minutes }) => sum + minutes, 0)).toBe(3)
    const pounds = three.reduce((sum, { ukCostMinor }) => sum + ukCostMinor, 0) / 100
    expect(pounds).toBeGreaterThanOrEqual(6)
    expect(pounds).toBeLessThanOrEqual(18)
  })

  it('dries a washed filter for a day, cold or humid for two: user guides of such machines, and judgement', () => {
    expect(task('wash-filter').dries).toMatchObject({ warm: 24, damp: 48 })
    expect(task('wash-filter').cautions).toContain('cold-water-only')
    expect(task('wash-filter').cautions).toContain('no-heat')
  })

  it('renews always what the trade always renews: bag, pre-motor filter, the belt if it is flat rubber', () => {
    const always = cleaningTaskIds.filter((id) => task(id).must !== undefined && task(id).when === undefined)
    expect(always).toEqual(['dust-out', 'new-bag', 'new-motor-filter', 'new-belt'])
    expect(task('new-belt').must?.only).toBe('flat-belt')
  })

  it('have a place among the improvements of the asking price, and nothing beside them adds to it', () => {
    for (const id of cleaningTaskIds) {
      const { adds } = task(id)
      if (adds.kind === 'improvement') {
        expect(Object.keys(improvements)).toContain(adds.improvement)
        expect(adds.weight).toBeGreaterThan(0)
      }
    }
  })

  it('that use water or a knife say so: plug out first', () => {
    for (const id of ['wash-casing', 'wash-bin', 'roll', 'head', 'flex', 'motor-dust'] as const)
      expect(task(id).cautions).toContain('plug-out')
    expect(task('mould').cautions).toContain('mould-discard')
    expect(task('dust-out').cautions).toEqual(expect.arrayContaining(['dust-outside', 'mask', 'unknown-dust']))
    expect(task('wash-casing').cautions).toEqual(expect.arrayContaining(['no-solvents', 'water-away', 'hot-water']))
    expect(cleaningCautions['no-solvents'].text).toMatch(/acetone/)
  })

  it('cost in other money as much more as bag, filters and stuff do there', () => {
    // £8, €9, $10 and C$14 for the materials of a machine sold working: costs of a small bench, judgement.
    expect(cleaningCostMinor({ ukCostMinor: 800 }, 'GBP')).toBe(800)
    expect(cleaningCostMinor({ ukCostMinor: 800 }, 'EUR')).toBe(900)
    expect(cleaningCostMinor({ ukCostMinor: 400 }, 'USD')).toBe(500)
    expect(cleaningCostMinor({ ukCostMinor: 100 }, 'CAD')).toBe(175)
  })

  it('of no such name are none, not even a name that every object has', () => {
    expect(cleaningTask('constructor')).toBeUndefined()
    expect(driesAfter('constructor')).toBe('What was washed')
    expect(driesAfter('wash-filter')).toBe('Pre-motor filter')
  })
})
