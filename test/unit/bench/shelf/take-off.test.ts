import { beforeEach, describe, expect, it } from 'vitest'
import { problemText } from '../../../../src/base/problem.ts'
import { addMachine, addNote, type CommandDeps, type CommandOutcome } from '../../../../src/bench/commands.ts'
import type { NoteContentInput } from '../../../../src/bench/note.ts'
import { noteContentSchema } from '../../../../src/bench/note.ts'
import { costLeft, foldNotes } from '../../../../src/bench/fold.ts'
import { partContentSchema } from '../../../../src/bench/shelf/part-note.ts'
import { shelf } from '../../../../src/bench/shelf/shelf-commands.ts'
import { takeOff, takeOffSchema, type TakeOffInput } from '../../../../src/bench/shelf/take-off.ts'
import { blueprintById, blueprints } from '../../../../src/blueprint/library.ts'
import { memorySettingsStore } from '../../../../src/store/memory/settings-store.ts'
import { storesOf } from '../../../support/stores.ts'

const blueprint = blueprintById('bagged-upright-two-motors')!
let deps: CommandDeps
let minute = 0

beforeEach(() => {
  let count = 0
  deps = {
    ...storesOf(),
    settings: memorySettingsStore(),
    bench: 'own',
    blueprintById,
    blueprintIds: () => blueprints.map(({ id }) => id),
    now: () => new Date(Date.UTC(2026, 4, 2, 9, minute++)).toISOString(),
    newId: () => `id-${++count}`,
  }
})

const add = (id: string, over: Partial<Extract<NoteContentInput, { kind: 'added' }>> = {}) =>
  addMachine(
    deps,
    noteContentSchema.parse({
      kind: 'added',
      name: id,
      blueprint: blueprint.id,
      plate: blueprint.plate,
      paidMinor: 1001,
      currency: 'GBP',
      ...over,
    }),
    id,
  )
const note = async (machine: string, content: NoteContentInput) =>
  addNote(deps, machine, (await deps.store.notes(machine)).length, noteContentSchema.parse(content))
const off = async (machine: string, asked: Omit<TakeOffInput, 'version'>) =>
  takeOff(deps, machine, takeOffSchema.parse({ version: (await deps.store.notes(machine)).length, ...asked }))
const part = async (id: string) => (await shelf.document(deps, id))!.state
const machineCost = async (id: string) => costLeft(foldNotes(await deps.store.notes(id)))
const words = (outcome: CommandOutcome): string =>
  outcome.kind === 'done' ? '' : outcome.problems.map(problemText).join('\n')
const done = (outcome: CommandOutcome): void => expect(words(outcome)).toBe('')
const three = [{ part: 'suction-motor' }, { part: 'hose' }, { part: 'flex' }]
const motorIn = (shelfPart: string, costMinor: number): NoteContentInput => ({
  kind: 'repaired',
  repair: 'suction-motor-swap',
  option: 'salvaged',
  minutes: 20,
  costMinor,
  shelfPart,
})
const openMotor = async (machine: string): Promise<void> => {
  const covers = blueprint.covers.map(({ id }) => id)
  for (let round = 0; round < covers.length; round++)
    for (const cover of covers) await note(machine, { kind: 'opened', cover, minutes: 1 })
}

describe('taking parts off', () => {
  it('broken for parts, the shares add up to the cost to the penny', async () => {
    await add('m1')
    done(await off('m1', { id: 'g', taken: three, breaks: {} }))
    const parts = await Promise.all(['g.1', 'g.2', 'g.3'].map(part))
    expect(parts.reduce((sum, { costMinor }) => sum + costMinor, 0)).toBe(1001)
    expect(await machineCost('m1')).toBe(0)
    expect(parts.map(({ origin }) => origin)).toContainEqual({ kind: 'machine', machine: 'm1', part: 'hose' })
  })

  it('a share that somebody sets is kept, and the others still share out the rest', async () => {
    await add('m1')
    done(
      await off('m1', {
        id: 'g',
        taken: [{ part: 'hose', costMinor: 300 }, { part: 'flex' }, { part: 'casing' }],
        breaks: {},
      }),
    )
    const costs = (await Promise.all(['g.1', 'g.2', 'g.3'].map(part))).map(({ costMinor }) => costMinor)
    expect(costs[0]).toBe(300)
    expect(costs.reduce((sum, one) => sum + one, 0)).toBe(1001)
  })

  it('off a machine that stays, parts and machine together stand at what was paid', async () => {
    await add('m1')
    done(await off('m1', { id: 'g', taken: [{ part: 'suction-motor' }] }))
    const { costMinor } = await part('g.1')
    expect(costMinor).toBeGreaterThan(0)
    expect(costMinor + (await machineCost('m1'))).toBe(1001)
  })

  it('sent again it does nothing', async () => {
    await add('m1')
    done(await off('m1', { id: 'g', taken: three }))
    const before = await deps.store.notes('m1')
    done(await off('m1', { id: 'g', taken: three }))
    expect(await deps.store.notes('m1')).toEqual(before)
    expect((await deps.logs.list('own', 'part')).length).toBe(3)
  })

  it('struck out, both sides are as they were', async () => {
    await add('m1')
    done(await off('m1', { id: 'g', taken: [{ part: 'hose' }] }))
    done(await note('m1', { kind: 'struck', note: 'g.1' }))
    expect(await machineCost('m1')).toBe(1001)
    expect(foldNotes(await deps.store.notes('m1')).missing).toEqual([])
    expect(await part('g.1')).toMatchObject({ count: 0, costMinor: 0 })
  })

  it('cannot be struck out once the part was sold', async () => {
    await add('m1')
    done(await off('m1', { id: 'g', taken: [{ part: 'hose' }] }))
    await shelf.add(deps, 'g.1', 1, partContentSchema.parse({ kind: 'sold', receivedMinor: 900 }))
    expect(words(await note('m1', { kind: 'struck', note: 'g.1' }))).toContain('Strike out the later entries first')
  })

  it('the same part is not taken off twice, nor one off a virtual machine', async () => {
    await add('m1')
    done(await off('m1', { taken: [{ part: 'hose' }] }))
    expect(words(await off('m1', { taken: [{ part: 'hose' }] }))).toContain('That part is not on the machine')
    await add('m2', { practiceSeed: 7 })
    expect(words(await off('m2', { taken: [{ part: 'hose' }] }))).toContain('virtual machine')
  })
})

describe('a part of the shelf that goes into a machine', () => {
  it('takes its cost along, and nobody else can have it', async () => {
    await Promise.all([add('m1'), add('m2', { paidMinor: 300 }), add('m3', { paidMinor: 300 })])
    done(await off('m1', { id: 'g', taken: [{ part: 'suction-motor' }, { part: 'hose' }], breaks: {} }))
    const { costMinor } = await part('g.1')
    for (const id of ['m2', 'm3']) await openMotor(id)
    expect(words(await note('m2', motorIn('g.1', costMinor + 1)))).toContain('One of them stands at')
    done(await note('m2', motorIn('g.1', costMinor)))
    expect(await machineCost('m2')).toBe(300 + costMinor)
    expect(await part('g.1')).toMatchObject({ count: 0, costMinor: 0 })
    expect(words(await note('m3', motorIn('g.1', costMinor)))).toContain('None of this part is left')
  })

  it('struck out, it lies on the shelf again', async () => {
    await Promise.all([add('m1'), add('m2')])
    done(await off('m1', { id: 'g', taken: [{ part: 'suction-motor' }], breaks: {} }))
    await openMotor('m2')
    done(
      await addNote(
        deps,
        'm2',
        (await deps.store.notes('m2')).length,
        noteContentSchema.parse(motorIn('g.1', 1001)),
        'fit',
      ),
    )
    done(await note('m2', { kind: 'struck', note: 'fit' }))
    expect(await part('g.1')).toMatchObject({ count: 1, costMinor: 1001 })
    expect(await machineCost('m2')).toBe(1001)
  })

  it('is refused in another currency', async () => {
    await add('m1', { currency: 'EUR' })
    await openMotor('m1')
    await shelf.begin(
      deps,
      partContentSchema.parse({ kind: 'put', name: 'M', partKind: 'motor', currency: 'GBP' }),
      'p',
    )
    expect(words(await note('m1', motorIn('p', 0)))).toContain('another currency')
  })
})

/** What double entry promises: cash in less cash out is the profit less what still stands in the books. */
describe('a whole story', () => {
  it('bought dead, broken for parts, its motor in another machine, that sold: the books add up to the penny', async () => {
    await Promise.all([add('dead', { paidMinor: 700 }), add('other', { paidMinor: 333 })])
    done(await note('dead', { kind: 'spent', costMinor: 58, text: 'petrol' }))
    done(await off('dead', { id: 'g', taken: three, breaks: {} }))
    await openMotor('other')
    const motor = await part('g.1')
    done(await note('other', motorIn('g.1', motor.costMinor)))
    done(await note('other', { kind: 'left', exit: 'sell-for-spares', receivedMinor: 3000, feeMinor: 300 }))
    await shelf.add(
      deps,
      'g.2',
      1,
      partContentSchema.parse({ kind: 'sold', receivedMinor: 950, feeMinor: 95, postageMinor: 120 }),
    )
    const [hose, flex] = [await part('g.2'), await part('g.3')]
    const cashIn = 3000 - 300 + 950 - 95 - 120
    const profit = foldNotes(await deps.store.notes('other')).left!.profitMinor
    expect(profit).toBe(3000 - 300 - 333 - motor.costMinor)
    const hoseCost = 758 - motor.costMinor - flex.costMinor
    expect(hose.receivedMinor - hose.feesMinor - hoseCost + profit).toBe(cashIn - (700 + 58 + 333) + flex.costMinor)
    const lines = await deps.books.months('own', 'calendar')
    const of = (account: string) =>
      lines.filter((one) => one.account === account).reduce((sum, { minor }) => sum + minor, 0)
    expect(of('shelf')).toBe(flex.costMinor)
    expect(lines.reduce((sum, { minor }) => sum + minor, 0)).toBe(0)
  })
})
