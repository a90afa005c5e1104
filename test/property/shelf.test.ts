import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { partContentSchema, type PartContentInput } from '../../src/bench/shelf/part-note.ts'
import { partProblems } from '../../src/bench/shelf/part-rules.ts'
import { foldPart, shareOfStock, type PartEntry } from '../../src/bench/shelf/part-state.ts'

const seeded = { seed: 20_261_126, numRuns: 300 }

/** Anything somebody may try to write about a part, sensible or not. */
const attempt = fc.oneof(
  fc.record({ kind: fc.constant('sold' as const), count: fc.integer({ min: 1, max: 4 }), receivedMinor: fc.nat(5000) }),
  fc.record({ kind: fc.constant('scrapped' as const), count: fc.integer({ min: 1, max: 4 }) }),
  fc.record({ kind: fc.constant('counted' as const), count: fc.nat(8) }),
  fc.record({ kind: fc.constant('reserved' as const), machine: fc.constantFrom('m1', 'm2') }),
  fc.constant({ kind: 'released' as const }),
  fc.record({ kind: fc.constant('use' as const), machine: fc.constantFrom('m1', 'm2') }),
  fc.record({ kind: fc.constant('strike' as const), at: fc.nat(20) }),
)
type Attempt = typeof attempt extends fc.Arbitrary<infer T> ? T : never

const contentOf = (entries: readonly PartEntry[], tried: Attempt): PartContentInput => {
  if (tried.kind === 'strike') return { kind: 'struck', note: entries[tried.at % entries.length].id }
  if (tried.kind !== 'use') return tried
  const { costMinor, count } = foldPart(entries)
  return { kind: 'used', machine: tried.machine, costMinor: shareOfStock(costMinor, Math.max(1, count), 1) }
}

/** Writes what the rules let through. */
const played = (costMinor: number, count: number, tried: readonly Attempt[]): readonly PartEntry[][] => {
  const put = {
    kind: 'put',
    name: 'Belt',
    partKind: 'belt',
    currency: 'GBP',
    costMinor,
    count,
    origin: { kind: 'bought', where: 'a stall' },
  } as const
  const histories: PartEntry[][] = [[entry(1, put)]]
  for (const one of tried) {
    const entries = histories.at(-1)!
    const next = entry(entries.length + 1, contentOf(entries, one))
    if (partProblems(entries, next.content).length === 0) histories.push([...entries, next])
  }
  return histories
}

const entry = (seq: number, content: PartContentInput): PartEntry => ({
  id: `e${seq}`,
  log: 'p',
  seq,
  at: new Date(Date.UTC(2026, 2, 14, 10, seq)).toISOString(),
  content: partContentSchema.parse(content),
})

const history = fc
  .tuple(fc.nat(9999), fc.integer({ min: 1, max: 6 }), fc.array(attempt, { maxLength: 25 }))
  .map(([cost, count, tried]) => ({ cost, histories: played(cost, count, tried) }))

describe('random histories of a part', () => {
  it('count and cost are never below nothing, and nothing costs anything when none is left', () => {
    fc.assert(
      fc.property(history, ({ histories }) => {
        for (const entries of histories) {
          const { count, costMinor } = foldPart(entries)
          expect(count).toBeGreaterThanOrEqual(0)
          expect(costMinor).toBeGreaterThanOrEqual(0)
          expect(Number.isSafeInteger(costMinor)).toBe(true)
          if (count === 0) expect(costMinor).toBe(0)
        }
      }),
      seeded,
    )
  })

  it('every penny of its cost is on the shelf, in a machine, written off or went with one that was sold', () => {
    fc.assert(
      fc.property(history, ({ cost, histories }) => {
        for (const [at, entries] of histories.entries()) {
          const now = foldPart(entries)
          const isGone = entries.some(({ content }) => content.kind === 'struck' && content.note === 'e1')
          if (at === 0 || isGone) continue
          const before = foldPart(histories[at - 1])
          const { content } = entries.at(-1)!
          const inMachines = now.used.reduce((sum, { costMinor }) => sum + costMinor, 0)
          const accounted = now.costMinor + inMachines + now.writtenOffMinor
          expect(accounted).toBeLessThanOrEqual(cost)
          const wasAccounted =
            before.costMinor + before.used.reduce((sum, { costMinor }) => sum + costMinor, 0) + before.writtenOffMinor
          if (content.kind !== 'sold' && content.kind !== 'struck') expect(accounted).toBe(wasAccounted)
        }
      }),
      seeded,
    )
  })
})
