import { describe, expect, it } from 'vitest'
import { blueprintById } from '../../../../src/blueprint/library.ts'
import type { Blueprint } from '../../../../src/blueprint/schema.ts'
import { functionChecks, type FunctionRow } from '../../../../src/machine/functions/function-checks.ts'
import type { Job, JobEvent } from '../../../../src/machine/job.ts'
import { tinyBlueprint } from '../../../support/tiny-blueprint.ts'

const twoMotors = blueprintById('bagged-upright-two-motors')!
const oneMotor = blueprintById('bagged-upright-one-motor')!

const jobWith = (blueprint: Blueprint, events: readonly JobEvent[], missing: readonly string[] = []): Job => ({
  blueprint,
  plate: blueprint.plate,
  complaints: [],
  missing,
  events,
  off: [],
  hourMinor: 800,
})

const grade = (check: string, outcome: string): JobEvent => ({
  kind: 'reading',
  note: `reading ${check}`,
  check,
  result: { kind: 'grade', outcome },
  instrument: 'budget-multimeter',
})
const tried = (name: string, result: 'good' | 'bad' | 'not-there' | 'cannot-tell'): JobEvent => ({
  kind: 'tried',
  note: `tried ${name}`,
  function: name,
  result,
})
const repaired = (repair: string, option: string): JobEvent => ({ kind: 'repaired', note: repair, repair, option })

const rowOf = (job: Job, id: string): FunctionRow => functionChecks(job).rows.find((row) => row.id === id)!

/** All gates of a blueprint passed, so that it may be run. */
const gates = (blueprint: Blueprint): readonly JobEvent[] =>
  blueprint.checks
    .filter((check) => check.beforeRunning || (check.kind !== 'meter' && check.firstRun))
    .map((check) =>
      check.kind === 'meter'
        ? {
            kind: 'reading',
            note: check.id,
            check: check.id,
            instrument: 'budget-multimeter',
            result:
              check.passesAtMostOhm === undefined
                ? { kind: 'open' }
                : { kind: 'ohms', resistanceOhm: check.passesAtMostOhm / 2 },
          }
        : grade(check.id, check.outcomes[0].id),
    )

describe('what was done already', () => {
  it('counts: a reading of the check that a function is', () => {
    expect(rowOf(jobWith(twoMotors, []), 'height-drive').state.kind).toBe('to-do')
    expect(rowOf(jobWith(twoMotors, [grade('run-height', 'settles')]), 'height-drive').state).toEqual({
      kind: 'told',
      told: { result: 'good', text: 'Rises, falls, settles', note: 'reading run-height' },
    })
    expect(rowOf(jobWith(twoMotors, [grade('run-height', 'ticks')]), 'height-drive').state).toMatchObject({
      told: { result: 'bad', text: 'Ticks, does not move' },
    })
  })

  it('is replaced by a later result, but not by one that told nothing', () => {
    const events = [tried('switch', 'bad'), tried('switch', 'good'), tried('switch', 'cannot-tell')]
    expect(rowOf(jobWith(oneMotor, events), 'switch').state).toMatchObject({ told: { result: 'good' } })
  })
})

describe('the order on the machine in hand', () => {
  const bagless = blueprintById('bagless-upright')!
  const groupsOf = (off: readonly string[]) =>
    functionChecks({ ...jobWith(bagless, []), off }).rows.map(({ group }) => group)
  it('opens nothing before what the closed machine lets one try', () => {
    const groups = groupsOf([])
    expect([groups[0], groups.at(-1)]).toEqual(['by-hand', 'run'])
    expect(groups.indexOf('opened')).toBe(groups.lastIndexOf('by-hand') + 1)
  })
  it('begins behind a cover that is off anyway', () => {
    expect(groupsOf(['cyclone-cover'])[0]).toBe('opened')
  })
})

describe('later work', () => {
  it('sends a function of the repaired part back, and says why', () => {
    const events = [grade('run-height', 'ticks'), grade('roll-wheels', 'roll')]
    const [mend] = twoMotors.repairs.filter(({ part }) => part === 'height-drive')
    const job = jobWith(twoMotors, [...events, repaired(mend.id, mend.options[0].id)])
    expect(rowOf(job, 'height-drive').state).toEqual({
      kind: 'again',
      was: { result: 'bad', text: 'Ticks, does not move', note: 'reading run-height' },
      why: `Since then: ${mend.name.charAt(0).toLowerCase()}${mend.name.slice(1)}`,
    })
  })

  it('leaves functions of other parts as they were', () => {
    const [wheel] = oneMotor.repairs.filter(({ part }) => part === 'wheels')
    const events = [grade('look-cracks', 'whole'), tried('tools', 'good'), grade('roll-wheels', 'stuck')]
    const job = jobWith(oneMotor, [...events, repaired(wheel.id, wheel.options[0].id)])
    expect(rowOf(job, 'cracks').state.kind).toBe('told')
    expect(rowOf(job, 'tools').state.kind).toBe('told')
    expect(rowOf(job, 'wheels').state.kind).toBe('again')
  })

  it('behind a cover does so once that cover was off; the run of the whole machine whatever was opened', () => {
    const events = [grade('run-height', 'settles'), grade('run-full', 'works'), grade('ball-through-hose', 'drops')]
    const job = jobWith(twoMotors, [...events, { kind: 'opened', note: 'o', cover: 'head-shells' }])
    const { name } = twoMotors.covers.find(({ id }) => id === 'head-shells')!
    const why = `The ${name.charAt(0).toLowerCase()}${name.slice(1)} was off since`
    expect(rowOf(job, 'height-drive').state).toMatchObject({ kind: 'again', why })
    expect(rowOf(job, 'everything').state.kind).toBe('again')
    expect(rowOf(job, 'hose-clear').state.kind).toBe('told')
  })

  it('on a part taken out and put in again does so too; while it is out nothing of it can be tried', () => {
    const events: readonly JobEvent[] = [
      grade('ball-through-hose', 'drops'),
      { kind: 'taken-out', note: 'x', part: 'hose' },
    ]
    const out = rowOf(jobWith(oneMotor, events), 'hose-clear')
    expect(out.barred).toEqual(['the hose is out of the machine'])
    const back = rowOf(jobWith(oneMotor, [...events, { kind: 'put-in', note: 'y', part: 'hose' }]), 'hose-clear')
    expect(back.barred).toEqual([])
    expect(back.state).toMatchObject({ kind: 'again', why: 'Hose was out of the machine since' })
  })
})

describe('running', () => {
  it('is barred with the names of what has not been passed, and only for what runs', () => {
    const view = functionChecks(jobWith(tinyBlueprint, []))
    for (const { runs, barred, id } of view.rows)
      expect(barred, id).toEqual(runs ? ['Both pins to touchable metal', 'Flex, whole length'] : [])
  })

  it('is open once all gates are passed, and shut again by a repair of anything electrical', () => {
    const passed = gates(oneMotor)
    expect(rowOf(jobWith(oneMotor, passed), 'switch').barred).toEqual([])
    const [mend] = oneMotor.repairs.filter(({ part }) => part === 'mains-switch')
    const after = jobWith(oneMotor, [...passed, repaired(mend.id, mend.options[0].id)])
    expect(rowOf(after, 'switch').barred.length).toBeGreaterThan(0)
  })

  it('says how the controls stand', () => {
    expect(rowOf(jobWith(twoMotors, []), 'height-drive').settings).toEqual(['Handle switch: on', 'Handle: reclined'])
  })
})

describe('what is missing', () => {
  it('is not there, whether it was so from the beginning or found while trying', () => {
    expect(rowOf(jobWith(oneMotor, [], ['hose']), 'hose-whole').state).toEqual({
      kind: 'told',
      told: { result: 'not-there', text: 'Not there', note: null },
    })
    const found = jobWith(oneMotor, [tried('wheels', 'not-there')], ['wheels'])
    expect(rowOf(found, 'wheels').state).toMatchObject({ told: { note: 'tried wheels' } })
  })

  it('is one thing: neither the whole machine nor all of its air', () => {
    const { rows } = functionChecks(jobWith(twoMotors, []))
    const not = rows.filter(({ mayBeMissing }) => !mayBeMissing).map(({ id }) => id)
    expect(not).toEqual(['suction', 'everything'])
    expect(rows.find(({ id }) => id === 'tools')).toMatchObject({ part: null, mayBeMissing: true })
  })
})

describe('the verdict', () => {
  it('counts, and names what is not as it should be', () => {
    const { total } = functionChecks(jobWith(twoMotors, []))
    const events = [
      ...gates(twoMotors),
      grade('run-height', 'ticks'),
      tried('tools', 'not-there'),
      tried('switch', 'cannot-tell'),
    ]
    // Of the gates, the flex, the closed casing and the first run are functions themselves.
    const view = functionChecks(jobWith(twoMotors, events))
    expect(view).toMatchObject({ total, tried: 5, bad: 1, notThere: 1, again: 0 })
    expect(view.verdict).toBe(
      `5 of ${total} tried, 1 not as it should be: height drive, 1 not there: tools, 1 could not be told: mains switch`,
    )
  })

  it('says so when all is well', () => {
    const all = functionChecks(jobWith(oneMotor, [])).rows.map(({ id, check, outcomes }) =>
      check === null ? tried(id, 'good') : grade(check, outcomes[0].id),
    )
    const view = functionChecks(jobWith(oneMotor, all))
    expect(view.verdict).toBe(`All ${view.total} tried, all as they should be`)
  })
})
