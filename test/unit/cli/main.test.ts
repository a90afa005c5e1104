import { stat } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../../src/bench/contract.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { schemaNames } from '../../../src/bench/json-schemas.ts'
import { blueprintById, blueprints } from '../../../src/blueprint/library.ts'
import { blueprintSchema } from '../../../src/blueprint/schema.ts'
import { defaultFolder } from '../../../src/cli/main.ts'
import type { PlanAnswer, PlanProblemInput } from '../../../src/engines/plan/index.ts'
import { machineView, virtualComplaints } from '../../../src/machine/index.ts'
import type { MachineView } from '../../../src/machine/view.ts'
import { machineDocumentSchema, machineListSchema } from '../../../src/server/schemas.ts'
import { beliefProblem, surely } from '../../support/belief-cases.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
})
afterEach(() => line.remove())

/** The upright that the whole job is on, and the one whose moves are weighed quickest: every command answers with them. */
const [twoMotors] = blueprints
const upright = blueprintById('bagged-upright-one-motor')!

/** The machine that a command answers with, held against the forms that the API gives too. */
const machine = async (...args: readonly string[]): Promise<{ document: MachineDocument; view: MachineView }> => {
  const { code, value } = await line.json(...args)
  expect(code, JSON.stringify(value)).toBe(0)
  const { view, warnings, ...rest } = value as { view: MachineView; warnings: readonly string[] }
  expect(warnings).toEqual([])
  return { document: machineDocumentSchema.parse(rest), view }
}

/** Takes covers off, does something, puts them back in the opposite order. */
const behind = async (covers: readonly string[], work: () => Promise<unknown>): Promise<void> => {
  for (const cover of covers) await machine('off', 'Green', cover)
  await work()
  for (const cover of covers.toReversed()) await machine('on', 'Green', cover)
}

/** Makes every check that is asked for before running, as it is on a sound machine. */
const passGates = async (): Promise<void> => {
  const { view } = await machine('show', 'Green')
  for (const check of twoMotors.checks.filter((one) => view.beforeRunning.includes(one.name))) {
    const sound = check.kind === 'meter' ? (check.id === 'pins-on' ? '6.4' : 'open') : check.outcomes[0].id
    await behind(check.coversOff, () => machine('read', 'Green', check.id, sound))
  }
}

const add = ['add', '--name', 'Green', '--blueprint', upright.id] as const

describe('a whole job by commands', () => {
  it('from coming in to the profit, each answer of the form of the API', { timeout: 120_000 }, async () => {
    const { document } = await machine(
      ...add.with(4, twoMotors.id),
      '--model',
      'TM 12',
      '--paid',
      '6',
      '--complaint',
      'dead',
      '--claim',
      'It just stopped',
    )
    expect(document.state).toMatchObject({
      name: 'Green',
      model: 'TM 12',
      version: 1,
      paidMinor: 600,
      plate: twoMotors.plate,
    })
    await machine('read', 'Green', 'pins-on', '255')
    await behind(['handle-cover'], async () => {
      await machine('read', 'Green', 'line-pin-to-entry', '0.4 Ω')
      await machine('read', 'Green', 'neutral-pin-to-entry', '400m')
      const { view } = await machine('read', 'Green', 'switch-closed', '0.24k', '--minutes', '2 min')
      expect(view.faults['switch-burnt']).toBeGreaterThan(0.9)
      await machine('repair', 'Green', 'switch-swap', 'salvaged', '--cost', '2', '--minutes', '15')
    })
    await passGates()
    await machine('read', 'Green', 'run-first', 'runs')
    await machine('read', 'Green', 'run-full', 'works')
    const { document: left } = await machine('leave', 'Green', 'sell-working', '85', '--safety', 'A. Tester, 42 MΩ')
    expect(left.state.left).toMatchObject({ exit: 'sell-working', receivedMinor: 8500, profitMinor: 8500 - 600 - 200 })
    const readings = left.notes.flatMap(({ content }) => (content.kind === 'reading' ? [content] : []))
    expect(readings.slice(0, 4).map((reading) => reading.result)).toEqual(
      [255, 0.4, 0.4, 240].map((resistanceOhm) => ({ kind: 'ohms', resistanceOhm })),
    )
    expect(machineListSchema.parse((await line.json('list')).value).machines).toEqual([left.state])
  })

  it('shows what the engines make of the notes', async () => {
    await machine(...add, '--complaint', 'weak-suction')
    const { document, view } = await machine('show', 'Green')
    const blueprint = blueprintById(document.state.blueprint)!
    const own = machineView(jobOf(document.state, document.notes, blueprint))
    expect(view).toEqual(JSON.parse(JSON.stringify(own)))
  })

  it('finds a machine by the beginning of its id too, and says when several begin so', async () => {
    const { document } = await machine(...add)
    expect((await machine('show', document.state.id.slice(0, 8))).document).toEqual(document)
    await machine(...add)
    const { code, err } = await line.run('show', 'Green')
    expect([code, err]).toEqual([1, 'Green: 2 machines begin like this. Give more of the id.'])
  })

  it('takes the seen, the certain and remarks, and strikes a slip', async () => {
    await machine(...add, '--complaint', 'noise')
    const before = await machine('show', 'Green')
    const slip = await machine('confirm', 'Green', 'armature-shorted')
    expect(slip.view.faults['armature-shorted']).toBeGreaterThan(0.9)
    const note = slip.document.notes.at(-1)!.id
    const after = await machine('strike', 'Green', note, 'wrong machine')
    expect(after.view.suspects).toEqual(before.view.suspects)
    expect(after.document.lines[1]).toMatchObject({ struck: true, canStrike: false })
    await machine('seen', 'Green', 'sparks', 'smell')
    const { document } = await machine('say', 'Green', 'two', 'words')
    expect(document.state.seen).toMatchObject([{ complaints: ['sparks', 'smell'] }])
    expect(document.notes.at(-1)?.content).toEqual({ kind: 'said', text: 'two words' })
  })

  it('practises: the seed gives the complaint, and the virtual meter the reading', async () => {
    const { document } = await machine(...add, '--practice', '7')
    expect(document.state.practiceSeed).toBe(7)
    expect(document.state.claimed.complaints).toEqual(virtualComplaints(upright, upright.plate, 7))
    const { document: read } = await machine('read', 'Green', 'pins-on')
    await machine(...add.with(2, 'Again'), '--practice', '7')
    const { document: again } = await machine('read', 'Again', 'pins-on')
    expect(again.notes.at(-1)?.content).toEqual(read.notes.at(-1)?.content)
  })

  it('reads as plain lines without --json', async () => {
    await machine(...add, '--complaint', 'dead', '--claim', 'It just stopped')
    const { code, out, err } = await line.run('show', 'Green')
    expect([code, err]).toEqual([0, ''])
    expect(out).toMatch(/^Green \(.*\), version 1\nClaimed: Dead: nothing happens at all \(“It just stopped”\)\n/)
    expect(out).toMatch(/\nNext:\n {2}\S.*\n[^]*\nSuspects:\n +\d+\.\d % {2}\S/)
    expect((await line.run('list')).out).toMatch(/^\S+ {2}Green {2}in hand$/)
    await machine('leave', 'Green', 'scrap', '0')
    expect((await line.run('list')).out).toMatch(/Green {2}left: scrap, profit £0\.00$/)
  })
})

describe('blueprints', () => {
  it('are listed', async () => {
    const { code, value } = await line.json('blueprints')
    expect([code, value]).toEqual([
      0,
      blueprints.map(({ id, name, summary, signs, plate, faults, checks }) => ({
        id,
        name,
        summary,
        signs,
        plate,
        faults: faults.length,
        checks: checks.length,
      })),
    ])
    expect((await line.run('blueprints')).out).toContain(`${upright.id}  ${upright.name}`)
  })

  it('are exported in the form of their schema, and what was exported is sound', async () => {
    const { value } = await line.json('blueprint', 'export', upright.id)
    expect(blueprintSchema.parse(value)).toEqual(upright)
    const path = await line.file('own.json', value)
    expect(await line.json('blueprint', 'check', path)).toMatchObject({ code: 0, value: { kind: 'ok', remarks: [] } })
    const { out } = await line.run('blueprint', 'check', path)
    expect(out).toMatch(/^This blueprint is sound\.\nThese look alike from outside: /)
  })

  it('give the readings of a sound machine, one for each meter check', async () => {
    const { value } = await line.json('blueprint', 'readings', upright.id)
    const readings = value as { check: string; resistanceOhm: number | null; text: string }[]
    const meterChecks = upright.checks.filter((check) => check.kind === 'meter')
    expect(readings.map((one) => one.check)).toEqual(meterChecks.map((check) => check.id))
    expect(readings.find((one) => one.check === 'pins-off')).toMatchObject({ resistanceOhm: null, text: 'open' })
    const { out } = await line.run('blueprint', 'readings', upright.id)
    expect(out.split('\n')).toHaveLength(meterChecks.length)
  })
})

describe('blueprint shows', () => {
  it('names the checks that show each fault, the surest first, with what a sound machine shows', async () => {
    const { value } = await line.json('blueprint', 'shows', upright.id)
    const shows = value as { fault: string; checks: { check: string; sure: number }[] }[]
    expect(shows.map(({ fault }) => fault)).toEqual(upright.faults.map(({ id }) => id))
    expect(shows.find(({ fault }) => fault === 'plug-fuse-open')!.checks[0].check).toBe('fuse-through')
    const { out } = await line.run('blueprint', 'shows', upright.id)
    expect(out).toMatch(/\n {2}fuse-through: open, sound: under \S+ Ω; then it is this fault 100 %\n/)
  })
})

describe('engines on their own', () => {
  it('network: what a meter reads over two resistors side by side', async () => {
    const resistor = (id: string, resistanceOhm: number) => ({
      kind: 'resistor',
      id,
      from: 'a',
      to: 'b',
      resistanceOhm,
    })
    const path = await line.file('network.json', {
      network: { format: 'thrum-network-1', elements: [resistor('r1', 6), resistor('r2', 3)] },
      do: { kind: 'ohms', from: 'a', to: 'b' },
    })
    const { code, value } = await line.json('network', path)
    expect(code).toBe(0)
    // 1/R = 1/6 + 1/3.
    expect(value).toEqual({ kind: 'ohms', resistanceOhm: expect.closeTo(2, 9) as number })
  })

  it('belief: the posterior is prior times likelihood', async () => {
    const path = await line.file('belief.json', beliefProblem([0.2, 0.8], [surely('r', [0.9, 0.1])]))
    const { value } = await line.json('belief', path)
    // Bayes: 0.2·0.9 / (0.2·0.9 + 0.8·0.1) = 18/26.
    const { probability } = value as { probability: number[] }
    expect(probability).toEqual([expect.closeTo(18 / 26, 12), expect.closeTo(8 / 26, 12)])
  })

  it('plan: the exit of the highest expected money', async () => {
    const path = await line.file('plan.json', {
      format: 'thrum-plan-1',
      hourMinor: 600,
      faults: ['f'],
      suspects: [
        { id: 'sound', faults: [], probability: 0.25 },
        { id: 'faulty', faults: ['f'], probability: 0.75 },
      ],
      exits: [
        { id: 'as-it-is', payoffMinor: [1000, 200] },
        { id: 'parts', payoffMinor: [300, 300] },
      ],
    } satisfies PlanProblemInput)
    const { code, value } = await line.json('plan', path)
    expect(code).toBe(0)
    const { best, lowerMinor, upperMinor, ranked } = value as PlanAnswer
    // 0.25·1000 + 0.75·200 = 400; parts bring 300. Who knew which it is would get 0.25·1000 + 0.75·300 = 475.
    expect(best).toEqual({ kind: 'exit', id: 'as-it-is' })
    expect(ranked.map((one) => one.expectedMinor)).toEqual([expect.closeTo(400, 6), expect.closeTo(300, 6)])
    expect(lowerMinor).toBeCloseTo(400, 6)
    expect(upperMinor).toBeGreaterThanOrEqual(lowerMinor)
    expect(upperMinor).toBeLessThanOrEqual(475 + 1e-6)
  })

  it.each(schemaNames)('schema %s is JSON Schema of an object', async (name) => {
    const { code, value } = await line.json('schema', name)
    expect([code, value]).toMatchObject([
      0,
      { $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' },
    ])
  })
})

describe('the command line itself', () => {
  it('explains itself and answers 0', async () => {
    const { code, out } = await line.run('--help')
    expect(code).toBe(0)
    for (const command of ['add', 'show', 'read', 'strike', 'leave', 'blueprint', 'network', 'plan', 'serve']) {
      expect(out).toMatch(new RegExp(`^ {2}${command}\\b`, 'm'))
    }
  })

  it.each([
    ['an unknown command', ['fly'], /unknown command 'fly'/],
    ['an unknown option', ['list', '--fast'], /unknown option '--fast'/],
    ['a missing argument', ['show'], /missing required argument 'machine'/],
    ['a machine without its blueprint', ['add', '--name', 'x'], /required option '--blueprint/],
    ['an option without its value', ['list', '--data'], /argument missing/],
  ] as const)('answers 2 to %s', async (_name, args, says) => {
    const { code, out, err } = await line.run(...args)
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(says)
  })

  it('takes the folder from --data, wherever it stands, else from the environment', async () => {
    const other = join(line.folder, 'other')
    await line.run(...add, '--data', other)
    expect((await stat(join(other, 'bench.sqlite'))).isFile()).toBe(true)
    expect((await line.run('--data', other, 'list')).out).toContain('Green')
    expect((await line.json('list')).value).toEqual({ machines: [], inHand: 0, left: 0, after: null })
    expect(defaultFolder({ THRUM_DATA: '/elsewhere' })).toBe('/elsewhere')
    expect(defaultFolder({})).toMatch(/\.thrum$/)
  })
})
