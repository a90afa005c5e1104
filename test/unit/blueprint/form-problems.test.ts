import { describe, expect, it } from 'vitest'
import { problemText } from '../../../src/base/problem.ts'
import { checkBlueprint } from '../../../src/blueprint/check.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

/** A value to be put at a path, or taken out of it. */
type Mistake = readonly [path: string, value?: unknown]

const withMistakes = (mistakes: readonly Mistake[]): unknown => {
  const copy: unknown = structuredClone(tinyBlueprint)
  for (const [path, value] of mistakes) {
    const steps = path.split('/')
    const last = steps.pop() ?? ''
    const holder = steps.reduce<unknown>((at, step) => (at as Record<string, unknown>)[step], copy)
    const fields = holder as Record<string, unknown>
    if (value === undefined) delete fields[last]
    else fields[last] = value
  }
  return copy
}

const refusals = (input: unknown): readonly string[] => {
  const checked = checkBlueprint(input)
  return checked.kind === 'ok' ? [] : checked.problems.map(problemText)
}

describe('a blueprint of the wrong form', () => {
  it.each<readonly [string, readonly Mistake[], readonly string[]]>([
    ['nothing written', [['name']], ['name: “name” is missing. Write it: a text in quotes.']],
    [
      'a misspelt field',
      [['checks/0/redd', 'plug.l'], ['checks/0/red']],
      [
        'checks.pins-on.red: “red” is missing. Write it: a text in quotes.',
        'checks.pins-on: There is no field “redd” here. Write “red”.',
      ],
    ],
    [
      'a field too many',
      [['parts/0/colour', 'red']],
      [
        'parts.plug: There is no field “colour” here. Take it out; the fields here are id, name, does, group, behind, within, air, spareMinor, note.',
      ],
    ],
    [
      'a text for a number',
      [['faults/0/rate/perHundred', 'five']],
      ['faults.flex-open.rate.perHundred: “five” is not a number. Write a number of 0 or more.'],
    ],
    [
      'an unknown kind of check',
      [['checks/0/kind', 'meterr']],
      ['checks.pins-on.kind: “meterr” is none of meter, look, run, air. Write “meter”.'],
    ],
    [
      'an unknown group',
      [['parts/0/group', 'wooden']],
      ['parts.plug.group: “wooden” is none of electrical, air, mechanical, control. Use one of these.'],
    ],
    [
      'an effect of no form',
      [['faults/0/electrical/0/becomes', { ohms: 3 }]],
      [
        'faults.flex-open.electrical.0.becomes: It has none of the forms it may have. Write "open", "short", {"ohm": …}, {"plusOhm": …} or {"timesOhm": …}.',
      ],
    ],
    ['an empty list', [['parts', []]], ['parts: The list is empty. Write at least one.']],
    [
      'a probability above 1',
      [['checks/4/sound/good', 1.4]],
      ['checks.look-flex.sound.good: 1.4 is more than 1. Write a number from 0 to 1.'],
    ],
    [
      'a length of nothing',
      [['circuit/0/lengthM', 0]],
      ['circuit.flex-l.lengthM: 0 is not above 0. Write a number above 0, in metres.'],
    ],
    [
      'an id with a space',
      [['parts/0/id', 'The plug']],
      [
        'parts.The plug.id: “The plug” is not right: an id is lower-case words joined by . or -. Change it so that this holds.',
      ],
    ],
    [
      'a range upside down',
      [['worth/workingMinor', { low: 5, high: 2 }]],
      ['worth.workingMinor: low must not be above high. Write the smaller one as low.'],
    ],
  ])('%s', (_name, mistakes, expected) => {
    expect(refusals(withMistakes(mistakes))).toEqual(expected)
  })

  it('that is no object at all is refused as a whole', () => {
    expect(refusals('a blueprint')).toEqual(['blueprint: “a blueprint” is not an object. Write an object in { }.'])
  })
})
