import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Entry } from '../../src/bench/logs/entry.ts'
import type { BenchStores, LogWrite } from '../../src/bench/ports.ts'
import { added, log } from '../support/notes.ts'

export type BenchUnderTest = {
  readonly stores: BenchStores
  /** The stores as another start of the program would find them. */
  readonly again: () => Promise<BenchStores>
  readonly close: () => Promise<void>
}

const at = (day: number): string => `2026-03-${String(day).padStart(2, '0')}T10:00:00.000Z`

export const put = (part: string, over: object = {}, day = 1): Entry => ({
  id: `${part}-put`,
  log: part,
  seq: 1,
  at: at(day),
  content: {
    kind: 'put',
    name: `Motor ${part}`,
    partKind: 'motor',
    spec: {},
    condition: 'tested',
    origin: { kind: 'bought', where: 'a lot' },
    currency: 'GBP',
    costMinor: 300,
    count: 3,
    place: '',
    ...over,
  },
})

const entry = (part: string, seq: number, id: string, content: Entry['content'], day = 2): Entry => ({
  id,
  log: part,
  seq,
  at: at(day),
  content,
})
const begin = (part: string, over: object = {}): LogWrite => ({
  kind: 'part',
  id: part,
  expectedVersion: 0,
  entries: [put(part, over)],
})
const said = (part: string, seq: number, id: string): LogWrite => ({
  kind: 'part',
  id: part,
  expectedVersion: seq - 1,
  entries: [entry(part, seq, id, { kind: 'said', text: id })],
})

/** What every store of the other logs must do, together with the logs of machines, and what lists and books make of it. */
export const logStoreContract = (name: string, make: () => Promise<BenchUnderTest>): void => {
  describe(`stores of a bench: ${name}`, () => {
    let under: BenchUnderTest
    let stores: BenchStores
    beforeEach(async () => {
      under = await make()
      stores = under.stores
    })
    afterEach(() => under.close())

    it('gives back what was written, in order, and after another start', async () => {
      expect(await stores.logs.write('own', [begin('p1')])).toEqual({ kind: 'appended' })
      expect(await stores.logs.write('own', [said('p1', 2, 'b')])).toEqual({ kind: 'appended' })
      const expected = [put('p1'), entry('p1', 2, 'b', { kind: 'said', text: 'b' })]
      expect(await stores.logs.entries('part', 'p1')).toEqual(expected)
      expect(await (await under.again()).logs.entries('part', 'p1')).toEqual(expected)
    })

    it('keeps kinds and benches apart', async () => {
      await stores.logs.write('own', [begin('p1')])
      await stores.logs.write('demo', [begin('p2')])
      expect(await stores.logs.entries('price', 'p1')).toEqual([])
      expect((await stores.logs.list('own', 'part')).map((one) => one[0]?.log)).toEqual(['p1'])
      expect((await stores.logs.list('demo', 'part')).map((one) => one[0]?.log)).toEqual(['p2'])
    })

    it('refuses another version, and what was never begun', async () => {
      await stores.logs.write('own', [begin('p1')])
      expect(await stores.logs.write('own', [said('p1', 3, 'b')])).toEqual({ kind: 'conflict', at: 0, version: 1 })
      expect(await stores.logs.write('own', [{ ...begin('p1'), entries: [{ ...put('p1'), id: 'other' }] } as LogWrite])) // prettier-ignore
        .toEqual({ kind: 'conflict', at: 0, version: 1 })
      expect(await stores.logs.write('own', [said('p9', 2, 'b')])).toEqual({ kind: 'missing', at: 0 })
      expect(await stores.logs.entries('part', 'p1')).toEqual([put('p1')])
    })

    it('takes entries sent again as kept', async () => {
      await stores.logs.write('own', [begin('p1')])
      await stores.logs.write('own', [said('p1', 2, 'b')])
      expect(await stores.logs.write('own', [begin('p1')])).toEqual({ kind: 'appended' })
      expect(await stores.logs.write('own', [said('p1', 2, 'b')])).toEqual({ kind: 'appended' })
      expect(await stores.logs.entries('part', 'p1')).toHaveLength(2)
    })

    it('writes to a machine and a part all or nothing', async () => {
      const notes = log([added(), { kind: 'said', text: 'fitted' }])
      const first = notes.slice(0, 1)
      await stores.notes.add('own', 'm1', first)
      await stores.logs.write('own', [begin('p1')])
      const machine = (expectedVersion: number): LogWrite => ({
        kind: 'machine',
        id: 'm1',
        expectedVersion,
        entries: notes.slice(1),
      })
      expect(await stores.logs.write('own', [machine(1), said('p1', 5, 'late')])).toEqual({
        kind: 'conflict',
        at: 1,
        version: 1,
      })
      expect(await stores.notes.notes('m1')).toEqual(first)
      expect(await stores.logs.write('own', [said('p1', 2, 'b'), machine(0)])).toEqual({
        kind: 'conflict',
        at: 1,
        version: 1,
      })
      expect(await stores.logs.entries('part', 'p1')).toHaveLength(1)
      expect(await stores.logs.write('own', [machine(1), said('p1', 2, 'b')])).toEqual({ kind: 'appended' })
      expect(await stores.notes.notes('m1')).toEqual(notes)
      expect(await stores.logs.entries('part', 'p1')).toHaveLength(2)
    })

    it('of two that use up the same part exactly one wins', async () => {
      await stores.logs.write('own', [begin('p1')])
      const outcomes = await Promise.all([
        stores.logs.write('own', [said('p1', 2, 'one')]),
        stores.logs.write('own', [said('p1', 2, 'other')]),
      ])
      expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['appended', 'conflict'])
    })

    it('lists parts by what they are, the newest first, bit by bit', async () => {
      for (const part of ['p1', 'p2', 'p3']) await stores.logs.write('own', [begin(part)])
      await stores.logs.write('own', [begin('p4', { partKind: 'hose', name: 'Grey hose 100%' })])
      await stores.logs.write('own', [
        { kind: 'part', id: 'p2', expectedVersion: 1, entries: [entry('p2', 2, 'x', { kind: 'scrapped', count: 3, reason: '' })] }, // prettier-ignore
      ])
      const first = await stores.books.logs('own', 'part', { open: true, limit: 2 })
      expect(first.items).toMatchObject([{ id: 'p4' }, { id: 'p3' }])
      expect(first.total).toBe(3)
      const rest = await stores.books.logs('own', 'part', { open: true, limit: 2, after: first.after ?? undefined })
      expect(rest).toMatchObject({ items: [{ id: 'p1' }], after: null })
      expect(await stores.books.logs('own', 'part', { open: true, limit: 9, group: 'hose' })).toMatchObject({
        total: 1,
      })
      expect(await stores.books.logs('own', 'part', { open: true, limit: 9, text: ' 100% ' })).toMatchObject({
        total: 1,
      })
      expect(await stores.books.logs('own', 'part', { open: true, limit: 9, text: 'mot_r' })).toMatchObject({
        total: 0,
      })
      expect(await stores.books.logs('own', 'part', { open: false, limit: 9 })).toMatchObject({ items: [{ id: 'p2', count: 0 }] }) // prettier-ignore
      expect(await stores.books.groups('own', 'part')).toEqual([
        { group: 'hose', currency: 'GBP', logs: 1, count: 3, stockMinor: 300 },
        { group: 'motor', currency: 'GBP', logs: 2, count: 6, stockMinor: 600 },
      ])
    })

    it('sums the books by month, and again when something is struck out', async () => {
      await stores.notes.add('own', 'm1', log([added({ paidMinor: 500, travelMinor: 120, travelMin: 20 })]))
      await stores.logs.write('own', [{ ...begin('p1'), entries: [put('p1', {}, 3)] } as LogWrite])
      await stores.logs.write('own', [
        { kind: 'part', id: 'p1', expectedVersion: 1, entries: [entry('p1', 2, 's', { kind: 'sold', count: 1, receivedMinor: 900, feeMinor: 90, postageMinor: 0, minutes: 14 }, 30)] }, // prettier-ignore
      ])
      const march = (account: string, minor: number, minutes = 0) => ({
        month: '2026-03',
        currency: 'GBP',
        account,
        minor,
        minutes,
      })
      const sold = [
        march('cash', -500 - 120 - 300 + 900 - 90),
        march('cost-of-sales', 100),
        march('fees', 90),
        march('machines', 620),
        march('minutes', 0, 34),
        march('sales', -900),
        march('shelf', 200),
      ]
      expect(await stores.books.months('own', 'calendar')).toEqual(sold)
      // The put on the 3rd belongs to the tax month that began on the 6th of February.
      const tax = await stores.books.months('own', 'from-6th')
      expect(tax.filter(({ account }) => account === 'cash')).toEqual([
        { month: '2026-02', currency: 'GBP', account: 'cash', minor: -300, minutes: 0 },
        { month: '2026-03', currency: 'GBP', account: 'cash', minor: 190, minutes: 0 },
      ])
      await stores.logs.write('own', [
        { kind: 'part', id: 'p1', expectedVersion: 2, entries: [entry('p1', 3, 't', { kind: 'struck', note: 's', reason: '' })] }, // prettier-ignore
      ])
      const later = await under.again()
      expect(await later.books.months('own', 'calendar')).toEqual([
        march('cash', -920),
        march('machines', 620),
        march('minutes', 0, 20),
        march('shelf', 300),
      ])
      expect(await later.books.months('demo', 'calendar')).toEqual([])
    })

    it('says what machines brought by kind, complaint and source, and leaves virtual ones out', async () => {
      const machine = (id: string, paidMinor: number, receivedMinor: number | null, over: object = {}) =>
        stores.notes.add(
          'own',
          id,
          log(
            [
              added({ paidMinor, complaints: ['dead'], source: 'boot-sale', ...over }),
              ...(receivedMinor === null
                ? []
                : [{ kind: 'left' as const, exit: 'sell-working' as const, receivedMinor, minutes: 30, safety: 'x' }]),
            ],
            id,
          ),
        )
      await machine('m1', 500, 4000)
      await machine('m2', 900, 700, { complaints: ['noise'] })
      await machine('m3', 900, null)
      await machine('m4', 0, 9000, { practiceSeed: 7 })
      const results = await stores.books.results('own', 'complaint')
      expect(results).toEqual([
        { key: 'dead', currency: 'GBP', machines: 1, soldWorking: 1, receivedMinor: 4000, costMinor: 500, profitMinor: 3500, minutes: 30, atLoss: 0, profitSquares: 3500 ** 2 }, // prettier-ignore
        { key: 'noise', currency: 'GBP', machines: 1, soldWorking: 1, receivedMinor: 700, costMinor: 900, profitMinor: -200, minutes: 30, atLoss: 1, profitSquares: 200 ** 2 }, // prettier-ignore
      ])
      expect(await stores.books.results('own', 'source')).toMatchObject([{ key: 'boot-sale', machines: 2, profitMinor: 3300 }]) // prettier-ignore
      expect((await stores.books.results('own', 'blueprint')).map(({ machines }) => machines)).toEqual([2])
      const hand = await stores.books.machines('own', { open: true, limit: 5 })
      expect(hand.items.map(({ id }) => id)).toEqual(['m3'])
      const left = await stores.books.machines('own', { open: false, limit: 2 })
      expect(left.items.map(({ id }) => id)).toEqual(['m4', 'm2'])
      expect(left.total).toBe(3)
      expect(await stores.books.groups('own', 'machine')).toMatchObject([{ logs: 1, stockMinor: 900 }])
      // Came on the 14th of March and left then: the tax month that began on the 6th.
      const traffic = [{ month: '2026-03', currency: 'GBP', came: 3, paidMinor: 2300, left: 2 }]
      expect(await stores.books.traffic('own', 'calendar')).toEqual(traffic)
      expect(await stores.books.traffic('own', 'from-6th')).toEqual(traffic)
      const sold = await stores.books.sold('own', '2026-03-14', '2026-03-14')
      expect(sold.map(({ id }) => id)).toEqual(['m1', 'm2'])
      const machines = (await stores.books.machines('own', { open: false, limit: 9 })).items
      expect(sold).toEqual(
        sold.map(({ id }) => {
          const one = machines.find((machine) => machine.id === id)
          const { name, currency, paidMinor, receivedMinor } = one ?? {}
          const [boughtDay, soldDay] = [one?.addedAt, one?.left?.at].map((time) => time?.slice(0, 10))
          return { id, name, currency, paidMinor, receivedMinor, boughtDay, soldDay }
        }),
      )
      expect(await stores.books.sold('own', '2026-03-15', '2026-04-14')).toEqual([])
      expect(await stores.books.sold('demo', '2026-03-14', '2026-03-14')).toEqual([])
    })

    it('counts a machine that came on the 5th to the tax month before', async () => {
      const notes = log([added()]).map((note) => ({ ...note, at: at(5) }))
      await stores.notes.add('own', 'm1', notes)
      expect((await stores.books.traffic('own', 'from-6th')).map(({ month }) => month)).toEqual(['2026-02'])
      expect((await stores.books.traffic('own', 'calendar')).map(({ month }) => month)).toEqual(['2026-03'])
    })

    it('gives the lines of a month with what they belong to', async () => {
      await stores.notes.add('own', 'm1', log([added({ travelMin: 20 })]))
      await stores.logs.write('own', [{ ...begin('p1'), entries: [put('p1', {}, 3)] } as LogWrite])
      const lines = await stores.books.lines('own', 'calendar', '2026-03')
      const part = { kind: 'part', log: 'p1', label: 'Motor p1', currency: 'GBP', what: 'put', note: 'p1-put', day: '2026-03-03' } // prettier-ignore
      const machine = { kind: 'machine', log: 'm1', label: 'Heather grey upright', currency: 'GBP', what: 'added', note: 'n1', day: '2026-03-14' } // prettier-ignore
      expect(lines).toEqual([
        { ...part, account: 'shelf', minor: 300, minutes: 0 },
        { ...part, account: 'cash', minor: -300, minutes: 0 },
        { ...machine, account: 'machines', minor: 500, minutes: 0 },
        { ...machine, account: 'cash', minor: -500, minutes: 0 },
        { ...machine, account: 'minutes', minor: 0, minutes: 20 },
      ])
      expect(await stores.books.lines('own', 'from-6th', '2026-02')).toHaveLength(2)
      expect(await stores.books.lines('demo', 'calendar', '2026-03')).toEqual([])
    })

    it('gives some of the lines of a month, and how many there are', async () => {
      await stores.notes.add('own', 'm1', log([added({ currency: 'EUR' })]))
      await stores.logs.write('own', [{ ...begin('p1'), entries: [put('p1', {}, 3)] } as LogWrite])
      const logsOf = async (...asked: Parameters<typeof stores.books.lines>) =>
        (await stores.books.lines(...asked)).map((line) => `${line.log} ${line.account}`)
      expect(await logsOf('own', 'calendar', '2026-03', { limit: 3 })).toEqual(['p1 shelf', 'p1 cash', 'm1 machines'])
      expect(await logsOf('own', 'calendar', '2026-03', { currency: 'EUR', limit: 1 })).toEqual(['m1 machines'])
      expect(await logsOf('own', 'calendar', '2026-03', { day: '2026-03-03' })).toEqual(['p1 shelf', 'p1 cash'])
      expect(await logsOf('own', 'from-6th', '2026-02', { day: '2026-03-14' })).toEqual([])
      expect(await stores.books.lineCount('own', 'calendar', '2026-03')).toBe(4)
      expect(await stores.books.lineCount('own', 'from-6th', '2026-02', 'GBP')).toBe(2)
      expect(await stores.books.lineCount('own', 'calendar', '2026-03', 'EUR')).toBe(2)
      expect(await stores.books.lineCount('demo', 'calendar', '2026-03')).toBe(0)
    })
  })
}
