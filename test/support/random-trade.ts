import fc from 'fast-check'
import type { ExpenseEvent, Log, MachineEvent, ShelfEvent } from '../../src/engines/money/index.ts'

/** What somebody with a purse and a list of costs would say, worked out without double entry. */
export const plainBooks = (logs: readonly Log[]) => {
  let [cashMinor, machinesMinor, shelfMinor, profitMinor] = [0, 0, 0, 0]
  const pay = (minor: number): void => void (cashMinor -= minor)
  for (const log of logs) {
    if (log.kind === 'expenses') {
      for (const { minor } of log.events) {
        pay(minor)
        profitMinor -= minor
      }
      continue
    }
    let cost = 0
    let tookMinor = 0
    for (const event of log.events as readonly (MachineEvent | ShelfEvent)[]) {
      const before = cost
      switch (event.kind) {
        case 'bought':
        case 'spent':
          pay(event.minor)
          cost += event.minor
          break
        case 'found':
          break
        case 'part-fitted':
          cost += event.minor
          shelfMinor -= event.minor
          break
        case 'part-taken':
          cost -= event.minor
          shelfMinor += event.minor
          break
        // The machine's own log has moved these.
        case 'from-machine':
        case 'to-machine':
          cost += event.kind === 'from-machine' ? event.minor : -event.minor
          shelfMinor -= cost - before
          break
        case 'sold': {
          tookMinor = 'costMinor' in event && event.costMinor !== undefined ? event.costMinor : cost
          cost -= tookMinor
          const net = event.receivedMinor - event.feeMinor - event.postageMinor
          cashMinor += net
          profitMinor += net - tookMinor
          break
        }
        case 'written-off': {
          const gone = 'costMinor' in event && event.costMinor !== undefined ? event.costMinor : cost
          cost -= gone
          profitMinor -= gone
          break
        }
        case 'came-back':
          pay(event.refundMinor)
          cost += tookMinor
          profitMinor += tookMinor - event.refundMinor
          break
      }
      if (log.kind === 'machine') machinesMinor += cost - before
      else shelfMinor += cost - before
    }
  }
  return { cashMinor, machinesMinor, shelfMinor, profitMinor }
}

type Deed = {
  readonly machine: number
  readonly part: number
  readonly what: number
  readonly minor: number
  readonly share: number
  readonly day: string
}

const machineCount = 3
const partCount = 3

/** A trade of several machines, lots of parts and expenses that could have happened: deeds that could not be done are not. */
export const randomTrade = (): fc.Arbitrary<readonly Log[]> =>
  fc
    .array(
      fc.record({
        machine: fc.nat(machineCount - 1),
        part: fc.nat(partCount - 1),
        what: fc.nat(11),
        minor: fc.nat(20_000),
        share: fc.nat(100),
        day: fc
          .integer({ min: 0, max: 900 })
          .map((days) => new Date(Date.UTC(2025, 0, 1 + days)).toISOString().slice(0, 10)),
      }),
      // Long trades, or lots are seldom sold off and machines seldom come back.
      { maxLength: 150, size: 'max' },
    )
    .map((deeds) => tradeOf(deeds.toSorted((a, b) => a.day.localeCompare(b.day))))

type Machine = {
  events: MachineEvent[]
  cost: number
  took: number
  got: number
  state: 'none' | 'in' | 'sold' | 'gone'
}
type Lot = { events: ShelfEvent[]; cost: number; there: boolean }

const tradeOf = (deeds: readonly Deed[]): readonly Log[] => {
  const machines = Array.from({ length: machineCount }, (): Machine => ({
    events: [],
    cost: 0,
    took: 0,
    got: 0,
    state: 'none',
  }))
  const lots = Array.from({ length: partCount }, (): Lot => ({ events: [], cost: 0, there: false }))
  const expenses: ExpenseEvent[] = []
  deeds.forEach((deed, i) => {
    const told = { day: deed.day, note: `note ${i}` }
    if (deed.what === 0) expenses.push({ ...told, minor: deed.minor, what: 'tape' })
    else if (deed.what <= 3) onShelf(lots[deed.part], deed, told)
    else onMachine(machines[deed.machine], lots[deed.part], deed, told)
  })
  return [
    ...machines.map(({ events }): Log => ({ kind: 'machine', events })),
    ...lots.map(({ events }, i): Log => ({ kind: 'part', part: `part ${i}`, events })),
    { kind: 'expenses', events: expenses },
  ]
}

type Told = { readonly day: string; readonly note: string }

const onShelf = (lot: Lot, { what, minor, share }: Deed, told: Told): void => {
  const part = Math.floor((lot.cost * share) / 100)
  if (what === 1) {
    lot.events.push(minor % 3 === 0 ? { ...told, kind: 'found' } : { ...told, kind: 'bought', minor })
    lot.cost += minor % 3 === 0 ? 0 : minor
    lot.there = true
  } else if (lot.there && what === 2) {
    const sale = { receivedMinor: minor, feeMinor: Math.floor(minor / 10), postageMinor: 350 }
    const all = share > 50
    lot.events.push({ ...told, kind: 'sold', ...sale, ...(all ? {} : { costMinor: part }) })
    lot.cost -= all ? lot.cost : part
    lot.there = !all
  } else if (lot.there && what === 3) {
    lot.events.push({ ...told, kind: 'written-off', costMinor: part })
    lot.cost -= part
  }
}

const onMachine = (machine: Machine, lot: Lot, { part, what, minor, share }: Deed, told: Told): void => {
  if (machine.state === 'none') {
    machine.events.push({ ...told, kind: 'bought', minor })
    machine.cost = minor
    machine.state = 'in'
  } else if (machine.state === 'in') inHand(machine, lot, { part: `part ${part}`, what, minor, share }, told)
  else if (machine.state === 'sold' && what === 11) {
    const refundMinor = Math.floor((machine.got * share) / 100)
    machine.events.push({ ...told, kind: 'came-back', refundMinor })
    machine.cost = machine.took
    machine.state = 'in'
  }
}

type Handling = { readonly part: string; readonly what: number; readonly minor: number; readonly share: number }

const inHand = (machine: Machine, lot: Lot, { part, what, minor, share }: Handling, told: Told): void => {
  if (what <= 6) {
    machine.events.push({ ...told, kind: 'spent', minor })
    machine.cost += minor
  } else if (what === 7 && lot.there) {
    const taken = Math.floor((lot.cost * share) / 100)
    machine.events.push({ ...told, kind: 'part-fitted', part, minor: taken })
    lot.events.push({ ...told, kind: 'to-machine', minor: taken })
    machine.cost += taken
    lot.cost -= taken
  } else if (what === 8) {
    const taken = Math.floor((machine.cost * share) / 100)
    machine.events.push({ ...told, kind: 'part-taken', part, minor: taken })
    lot.events.push({ ...told, kind: 'from-machine', minor: taken })
    machine.cost -= taken
    lot.cost += taken
    lot.there = true
  } else if (what === 9 || what === 10) {
    machine.events.push({
      ...told,
      kind: 'sold',
      receivedMinor: minor,
      feeMinor: what === 9 ? 0 : 120,
      postageMinor: 0,
    })
    Object.assign(machine, { took: machine.cost, got: minor, cost: 0, state: 'sold' })
  } else if (what === 11 && share < 30) {
    machine.events.push({ ...told, kind: 'written-off' })
    Object.assign(machine, { cost: 0, state: 'gone' })
  }
}
