import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkBlueprint } from '../../../src/blueprint/check.ts'
import { baggedUprightTwoMotors } from '../../../src/blueprint/library/bagged-upright-two-motors.ts'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import { blueprintSchema } from '../../../src/blueprint/schema.ts'

const sound: Blueprint = blueprintSchema.parse(baggedUprightTwoMotors[0])

const named = <T extends { id: string }>(items: T[], id: string): T => {
  const found = items.find((item) => item.id === id)
  if (found === undefined) throw new Error(`no ${id}`)
  return found
}

/** The problems of a copy of the library's blueprint with one mistake put in. */
const problemsOf = (mistake: (blueprint: Blueprint) => void) => {
  const copy = structuredClone(sound)
  mistake(copy)
  const result = checkBlueprint(copy)
  return result.kind === 'ok' ? [] : result.problems
}

const graded = (blueprint: Blueprint, id: string) => {
  const check = named(blueprint.checks, id)
  if (check.kind === 'meter') throw new Error(`${id} is a meter check`)
  return check
}

const meter = (blueprint: Blueprint, id: string) => {
  const check = named(blueprint.checks, id)
  if (check.kind !== 'meter') throw new Error(`${id} is no meter check`)
  return check
}

type Mistake = readonly [name: string, code: string, where: string, says: RegExp, mistake: (b: Blueprint) => void]

const names: readonly Mistake[] = [
  [
    'a mistyped probe point',
    'unknown-point',
    'checks.fuse-through.red',
    /Write “plug\.line”/,
    (b) => (meter(b, 'fuse-through').red = 'plug.lien'),
  ],
  [
    'an element end that is no point',
    'unknown-point',
    'circuit.flex-line.to',
    /no point/,
    (b) => (named(b.circuit, 'flex-line').to = 'attic'),
  ],
  ['a supply that is no point', 'unknown-point', 'supply.line', /no point/, (b) => (b.supply.line = 'attic')],
  [
    'an element of an unknown part',
    'unknown-part',
    'circuit.flex-line.part',
    /no part/,
    (b) => (named(b.circuit, 'flex-line').part = 'wing'),
  ],
  [
    'a fault of an unknown part',
    'unknown-part',
    'faults.bag-full.part',
    /no part/,
    (b) => (named(b.faults, 'bag-full').part = 'wing'),
  ],
  ['an unknown part in the air path', 'unknown-part', 'airPath', /no part/, (b) => b.airPath.push('wing')],
  [
    'a wiggle of an unknown part',
    'unknown-part',
    'checks.pins-move-handle.moving',
    /no part/,
    (b) => meter(b, 'pins-move-handle').moving.push('wing'),
  ],
  [
    'a fault of an unknown element',
    'unknown-element',
    'faults.plug-fuse-open.electrical',
    /no element/,
    (b) => (named(b.faults, 'plug-fuse-open').electrical[0].element = 'wing'),
  ],
  [
    'an unknown element unplugged',
    'unknown-element',
    'checks.motor-at-leads.unplug',
    /no element/,
    (b) => meter(b, 'motor-at-leads').unplug.push('wing'),
  ],
  [
    'an unknown driven element',
    'unknown-element',
    'checks.run-first.driven',
    /no element/,
    (b) => (graded(b, 'run-first').driven!.element = 'wing'),
  ],
  [
    'a point behind an unknown cover',
    'unknown-cover',
    'points.motor.a.behind',
    /no cover/,
    (b) => (named(b.points, 'motor.a').behind = 'bonnet'),
  ],
  [
    'a part behind an unknown cover',
    'unknown-cover',
    'parts.bag.behind',
    /no cover/,
    (b) => (named(b.parts, 'bag').behind = 'bonnet'),
  ],
  [
    'an unknown cover off for a check',
    'unknown-cover',
    'checks.look-bag.coversOff',
    /no cover/,
    (b) => graded(b, 'look-bag').coversOff.push('bonnet'),
  ],
  [
    'a cover after an unknown one',
    'unknown-cover',
    'covers.board-cover.after',
    /no cover/,
    (b) => named(b.covers, 'board-cover').after.push('bonnet'),
  ],
  [
    'an unknown control',
    'unknown-control',
    'checks.pins-on.controls',
    /no control/,
    (b) => (meter(b, 'pins-on').controls['throttle'] = 'on'),
  ],
  [
    'an unknown position',
    'unknown-position',
    'checks.pins-on.controls',
    /Use one of off, on/,
    (b) => (meter(b, 'pins-on').controls['mains-switch'] = 'half'),
  ],
  [
    'a contact closed in an unknown position',
    'unknown-position',
    'circuit.park-switch.closedWhen',
    /upright, reclined/,
    (b) => {
      const element = named(b.circuit, 'park-switch')
      if (element.kind === 'contact') element.closedWhen.positions.push('flat')
    },
  ],
  [
    'an unknown fault excluded',
    'unknown-fault',
    'faults.bag-full.excludes',
    /no fault/,
    (b) => named(b.faults, 'bag-full').excludes.push('gremlin'),
  ],
  [
    'an unknown fault under a check',
    'unknown-fault',
    'checks.look-bag.under',
    /Write “bag-full”/,
    (b) => (graded(b, 'look-bag').under['bag-ful'] = { full: 1 }),
  ],
  [
    'an unknown fault removed',
    'unknown-fault',
    'repairs.bag-new.removes',
    /no fault/,
    (b) => named(b.repairs, 'bag-new').removes.push('gremlin'),
  ],
  [
    'an unknown component of the open data',
    'unknown-component',
    'faults.bag-full.rate.component',
    /open repair data/,
    (b) => (named(b.faults, 'bag-full').rate.component!.id = 'wing'),
  ],
]

const sense: readonly Mistake[] = [
  [
    'a fault listed twice',
    'duplicate-id',
    'faults',
    /“bag-full” is there twice/,
    (b) => b.faults.push(structuredClone(named(b.faults, 'bag-full'))),
  ],
  [
    'an outcome listed twice',
    'duplicate-id',
    'checks.look-bag.outcomes',
    /“full” is there twice/,
    (b) => graded(b, 'look-bag').outcomes.push({ id: 'full', name: 'Full', danger: false }),
  ],
  [
    'a repair’s way listed twice',
    'duplicate-id',
    'repairs.bag-new.options',
    /twice/,
    (b) => named(b.repairs, 'bag-new').options.push({ ...named(b.repairs, 'bag-new').options[0] }),
  ],
  [
    'covers that wait for each other',
    'cover-cycle',
    'covers.bag-door.after',
    /bag-door, motor-cover, .*bag-door/,
    (b) => named(b.covers, 'bag-door').after.push('motor-cover'),
  ],
  [
    'a run with a cover off',
    'run-with-cover-off',
    'checks.run-first.coversOff',
    /covers on/,
    (b) => graded(b, 'run-first').coversOff.push('motor-cover'),
  ],
  [
    'probabilities that do not sum to 1',
    'not-summing-to-one',
    'checks.look-bag.under.bag-full',
    /sum to 0\.9,/,
    (b) => (graded(b, 'look-bag').under['bag-full'] = { full: 0.9 }),
  ],
  [
    'a sound machine’s that do not',
    'not-summing-to-one',
    'checks.look-bag.sound',
    /sum to 1\.1,/,
    (b) => (graded(b, 'look-bag').sound = { room: 1, full: 0.1 }),
  ],
  [
    'an unknown outcome in a distribution',
    'unknown-outcome',
    'checks.look-bag.under.bag-full',
    /Write “full”/,
    (b) => (graded(b, 'look-bag').under['bag-full'] = { ful: 1 }),
  ],
  [
    'an unknown outcome in sound',
    'unknown-outcome',
    'checks.look-bag.sound',
    /room, full, split/,
    (b) => (graded(b, 'look-bag').sound = { room: 0.9, overflowing: 0.1 }),
  ],
  [
    'an unknown outcome when not driven',
    'unknown-outcome',
    'checks.run-first.driven.otherwise',
    /no outcome/,
    (b) => (graded(b, 'run-first').driven!.otherwise = 'asleep-in-bed'),
  ],
  [
    'an unknown outcome when it trips',
    'unknown-outcome',
    'checks.run-first.whenTrips',
    /no outcome/,
    (b) => (graded(b, 'run-first').whenTrips = 'explodes-at-once'),
  ],
  [
    'a sound machine that shows the second',
    'sound-not-first',
    'checks.look-bag.sound',
    /“room”, the first outcome/,
    (b) => (graded(b, 'look-bag').sound = { room: 0.4, full: 0.6 }),
  ],
  [
    'a switch that is driven',
    'driven-no-motor',
    'checks.run-first.driven',
    /only a motor/,
    (b) => (graded(b, 'run-first').driven!.element = 'mains-switch'),
  ],
  [
    'a look that proves the machine works',
    'proves-without-running',
    'checks.look-bag.provesWorking',
    /cannot prove/,
    (b) => (graded(b, 'look-bag').provesWorking = true),
  ],
  [
    'a fault that excludes one way only',
    'excludes-one-way',
    'faults.bag-full.excludes',
    /Add “bag-full” to the excludes of “bag-split”/,
    (b) => named(b.faults, 'bag-full').excludes.push('bag-split'),
  ],
  [
    'a fault that excludes itself',
    'excludes-itself',
    'faults.bag-full.excludes',
    /itself/,
    (b) => named(b.faults, 'bag-full').excludes.push('bag-full'),
  ],
  [
    'a fault nobody can mend',
    'fault-without-repair',
    'faults.bag-full',
    /No repair removes “Bag full”/,
    (b) => {
      for (const repair of b.repairs) repair.removes = repair.removes.filter((id) => id !== 'bag-full')
      b.repairs = b.repairs.filter((repair) => repair.removes.length > 0)
    },
  ],
  [
    'a repair that mends another part unsaid',
    'repair-of-another-part',
    'repairs.plug-new.removes',
    /“plug-fuse-open”, “plug-fuse-wrong” of another part, “Plug fuse”/,
    (b) => (named(b.repairs, 'plug-new').note = 'Sleeved pins'),
  ],
  [
    'an element with one end',
    'same-ends',
    'circuit.flex-line',
    /Both ends are at “flex.line”/,
    (b) => (named(b.circuit, 'flex-line').from = 'flex.line'),
  ],
  [
    'both probes on one point',
    'same-ends',
    'checks.fuse-through',
    /Both ends/,
    (b) => (meter(b, 'fuse-through').black = 'plug.line'),
  ],
  [
    'a stray path opened',
    'effect-on-nothing',
    'faults.flex-short.electrical',
    /changes nothing/,
    (b) => (named(b.faults, 'flex-short').electrical[0].becomes = 'open'),
  ],
  [
    'two effects on one element',
    'effect-twice',
    'faults.flex-short.electrical',
    /two things/,
    (b) => named(b.faults, 'flex-short').electrical.push({ element: 'flex-bridge', becomes: 'short' }),
  ],
]

/** Taking all checks that could show it away must be noticed; the meter’s are found by the circuit, not by a list. */
const unseen: readonly Mistake[] = [
  [
    'a fault in no outcome and no circuit',
    'fault-not-revealed',
    'faults.bag-full',
    /No check could reveal “Bag full”/,
    (b) => {
      for (const check of b.checks) if (check.kind !== 'meter') delete check.under['bag-full']
    },
  ],
  [
    'an open wire that no probe pair spans',
    'fault-not-revealed',
    'faults.height-motor-open',
    /Height motor open/,
    (b) => {
      for (const check of b.checks) if (check.kind !== 'meter') delete check.under['height-motor-open']
      b.checks = b.checks.filter((check) => check.id !== 'height-motor-through')
    },
  ],
  [
    'an open triac that only a run shows',
    'fault-not-revealed',
    'faults.triac-open',
    /triac open/,
    (b) => {
      for (const check of b.checks) {
        if (check.kind === 'meter') continue
        delete check.under['triac-open']
        if (check.driven?.element === 'brush-motor') delete check.driven
      }
    },
  ],
]

describe('checkBlueprint', () => {
  it('takes the library’s blueprint', () => {
    expect(checkBlueprint(baggedUprightTwoMotors[0]).kind).toBe('ok')
  })

  it.each([...names, ...sense, ...unseen])('refuses %s', (_name, code, where, says, mistake) => {
    const found = problemsOf(mistake).filter((problem) => problem.code === code && problem.where === where)
    expect(found, problemsOf(mistake).map(problemText).join('\n')).toHaveLength(1)
    expect(problemText(found[0])).toMatch(says)
    expect(found[0].mend).not.toBe('')
  })

  it('finds an open wire by the circuit alone, with no list naming it', () => {
    const problems = problemsOf((b) => {
      for (const check of b.checks) if (check.kind !== 'meter') delete check.under['height-motor-open']
    })
    expect(problems).toEqual([])
  })

  it('tells every mistake at once', () => {
    const problems = problemsOf((b) => {
      named(b.faults, 'bag-full').part = 'wing'
      graded(b, 'look-bag').sound = { room: 0.5 }
    })
    expect(problems.map((problem) => problem.code)).toEqual(
      expect.arrayContaining(['unknown-part', 'not-summing-to-one']),
    )
  })

  it('allows a distribution that is off by rounding only', () => {
    expect(problemsOf((b) => (graded(b, 'look-bag').under['bag-full'] = { full: 0.9999999, room: 0 }))).toEqual([])
  })

  it('leaves a negative resistance to the form', () => {
    const copy = structuredClone(sound) as unknown as { circuit: { kind: string; resistanceOhm?: number }[] }
    copy.circuit.find((element) => element.kind === 'resistor')!.resistanceOhm = -1
    const result = checkBlueprint(copy)
    expect(result.kind === 'refused' && result.problems[0]?.what).toBe('-1 is less than 0')
  })

  it('refuses what is no blueprint at all', () => {
    expect(checkBlueprint(null).kind).toBe('refused')
  })
})
