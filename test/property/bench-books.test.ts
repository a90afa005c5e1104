import fc from 'fast-check'
import { expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { booksOf } from '../../src/bench/books/books.ts'
import { expenses } from '../../src/bench/books/expenses.ts'
import { addMachine, addNote } from '../../src/bench/commands.ts'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { benchDeps } from '../support/bench-deps.ts'
import { added, content } from '../support/notes.ts'

const deed = fc.record({ machine: fc.nat(2), what: fc.nat(5), minor: fc.nat(9000), days: fc.nat(700) })

/**
 * A purse and a list of what things cost, kept beside the use-cases: whatever notes are taken, the books' cash is what came in
 * less what went out, and profit is cash and the growth of the stock (double entry; any bookkeeping primer).
 */
it('the books keep what the purse and the shelf know, over any history', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(deed, { maxLength: 25 }), async (deeds) => {
      const { deps, setDay } = benchDeps()
      let purse = 0
      const costs = new Map<string, number>()
      const take = async (id: string, input: NoteContentInput): Promise<boolean> => {
        const version = (await deps.store.notes(id)).length
        return (await addNote(deps, id, version, content(input))).kind === 'done'
      }
      for (const { machine, what, minor, days } of deeds.toSorted((a, b) => a.days - b.days)) {
        const id = `m${machine}`
        setDay(new Date(Date.UTC(2025, 0, 1 + days)).toISOString().slice(0, 10))
        if (what === 0) {
          const day = deps.now().slice(0, 10)
          await expenses.begin(deps, {
            kind: 'spent',
            what: 'tape',
            costMinor: minor + 1,
            currency: 'GBP',
            day,
            minutes: 5,
          })
          purse -= minor + 1
        } else if (!costs.has(id)) {
          await addMachine(deps, added({ paidMinor: minor, travelMinor: 70 }), id)
          purse -= minor + 70
          costs.set(id, minor + 70)
        } else if (what <= 2) {
          if (!(await take(id, { kind: 'spent', costMinor: minor, minutes: 3, text: 'belt' }))) continue
          purse -= minor
          costs.set(id, (costs.get(id) ?? 0) + minor)
        } else if (what <= 4) {
          const left = {
            kind: 'left',
            exit: 'sell-for-spares',
            receivedMinor: minor,
            feeMinor: 30,
            postageMinor: 20,
          } as const
          if (await take(id, left)) purse += minor - 50
        } else {
          const refundMinor = Math.floor(minor / 4)
          if (await take(id, { kind: 'came-back', refundMinor })) purse -= refundMinor
        }
      }
      const inHand = (await deps.books.machines('own', { open: true, limit: 9 })).items
      const stock = inHand.reduce((sum, { id }) => sum + (costs.get(id) ?? 0), 0)
      const { all, months, years } = valueOf(await booksOf(deps)).currencies[0]
      expect(all.cashMinor).toBe(purse)
      expect(all.machinesMinor + all.shelfMinor).toBe(stock)
      expect(all.profitMinor).toBe(purse + stock)
      for (const parts of [months, years]) {
        for (const name of ['profitMinor', 'cashMinor', 'boughtMinor', 'materialsMinor', 'minutes', 'came'] as const)
          expect(parts.reduce((sum, one) => sum + one[name], 0)).toBe(all[name])
      }
    }),
    { numRuns: 60 },
  )
})
