import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { problemText, type Problem } from '../../../src/base/problem.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

const [upright] = blueprints
const add = ['add', '--blueprint', upright.id, '--name'] as const

let line: CommandLine
beforeAll(async () => {
  line = await makeCommandLine()
  await line.run(...add, 'Green', '--complaint', 'dead')
  await line.run(...add, 'Gone')
  await line.run('leave', 'Gone', 'sell-for-spares', '15')
})
afterAll(() => line.remove())

/** Runs it both ways: the words on standard error, the same problems as JSON on standard output, exit code 1. */
const refusal = async (...args: readonly string[]): Promise<Problem> => {
  const plain = await line.run(...args)
  const { code, value } = await line.json(...args)
  const { problems } = value as { problems: readonly Problem[] }
  expect([plain.code, plain.out, code]).toEqual([1, '', 1])
  expect(plain.err).toBe(problems.map(problemText).join('\n'))
  return problems[0]
}

type Case = readonly [name: string, args: readonly string[], where: string, what: RegExp, mend: RegExp]

const onMachines: readonly Case[] = [
  [
    'a negative resistance',
    ['read', 'Green', 'pins-on', '-4.7'],
    'reading of pins-on',
    /-4\.7 is negative/,
    /zero or more/,
  ],
  [
    'a reading in the wrong unit',
    ['read', 'Green', 'pins-on', '12 V'],
    'reading of pins-on',
    /V is a unit of voltage, and this is resistance/,
    /Use one of Ω, ohm.*kΩ/,
  ],
  [
    'a reading that is none',
    ['read', 'Green', 'pins-on', 'lots'],
    'reading of pins-on',
    /“lots” is no meter reading/,
    /4\.7 Ω, or open, charging, jumps, cannot-tell/,
  ],
  [
    'no reading on a real machine',
    ['read', 'Green', 'pins-on'],
    'reading of pins-on',
    /No result was given/,
    /4\.7, open, charging, jumps/,
  ],
  [
    'a probe point inside a closed cover',
    ['read', 'Green', 'motor-at-leads', '8'],
    'check',
    /Probe point `motor\.a` is behind the motor cover/,
    /Open first, in this order: bag door, back cover, pre-motor filter frame and motor cover/,
  ],
  [
    'a note for a sold machine',
    ['say', 'Gone', 'hello'],
    '',
    /was sold for spares or repair on/,
    /strike out the note/,
  ],
  ['an unknown machine', ['show', 'Blue'], '', /There is no machine “Blue”/, /list of machines/],
  [
    'an unknown check',
    ['read', 'Green', 'pins-onn', 'open'],
    'check',
    /“pins-onn” is not a check/,
    /Did you mean pins-on/,
  ],
  [
    'an unknown grade',
    ['read', 'Green', 'look-flex', 'bad'],
    'reading of look-flex',
    /“bad” is not a result of “Flex, end to end”/,
    /whole, crushed, cut, or cannot-tell/,
  ],
  ['an unknown cover', ['off', 'Green', 'lid'], 'cover', /“lid” is not a cover/, /Did you mean/],
  [
    'a cover that is on put back on',
    ['on', 'Green', 'plug-top'],
    'cover',
    /The plug top is not off/,
    /All covers are on/,
  ],
  [
    'an unknown repair',
    ['repair', 'Green', 'fuse-neww', 'new'],
    'repair',
    /“fuse-neww” is not/,
    /Did you mean fuse-new/,
  ],
  [
    'an unknown option',
    ['repair', 'Green', 'fuse-new', 'gilded'],
    'option',
    /“gilded” is not an option here/,
    /It must be new/,
  ],
  [
    'a repair behind a closed cover',
    ['repair', 'Green', 'fuse-new', 'new'],
    'repair',
    /needs the plug top off/,
    /Open it first/,
  ],
  ['an unknown fault', ['confirm', 'Green', 'gremlin'], 'fault', /“gremlin” is not a fault/, /Did you mean/],
  [
    'an unknown complaint',
    ['seen', 'Green', 'flat'],
    'complaints[0]',
    /“flat” is none of dead, intermittent/,
    /Use one of these/,
  ],
  ['an unknown note', ['strike', 'Green', 'n99'], 'note', /“n99” is not a note of this machine/, /its log/],
  [
    'an unknown exit',
    ['leave', 'Green', 'give-away', '0'],
    'exit',
    /“give-away” is none of sell-working, /,
    /Use one of these/,
  ],
  [
    'sold working without a word on safety',
    ['leave', 'Green', 'sell-working', '85'],
    'safety',
    /do not prove it fit to sell, and nothing is said about that/,
    /who made them and with what/,
  ],
  ['received money that is none', ['leave', 'Green', 'scrap', 'abc'], 'received', /“abc” is not an amount/, /45\.00/],
  [
    'spent money that is none',
    ['repair', 'Green', 'fuse-new', 'new', '--cost', 'abc'],
    '--cost',
    /“abc” is not an amount of money/,
    /4\.50/,
  ],
  [
    'minutes that are none',
    ['read', 'Green', 'pins-on', '4', '--minutes', 'abc'],
    '--minutes',
    /“abc” is not a number/,
    /with its unit, such as 4\.7 min/,
  ],
  [
    'minutes in the wrong unit',
    ['repair', 'Green', 'fuse-new', 'new', '--minutes', '3 Ω'],
    '--minutes',
    /Ω is a unit of resistance, and this is time/,
    /Use one of min, s, h/,
  ],
  ['paid money that is none', [...add, 'X', '--paid', 'abc'], '--paid', /“abc” is not an amount of money/, /4\.50/],
  [
    'an unknown blueprint',
    ['add', '--name', 'X', '--blueprint', 'tub-bypass'],
    'blueprint',
    /“tub-bypass” is not a blueprint here/,
    /Did you mean tub-by-pass/,
  ],
  [
    'a voltage that no mains machine has',
    [...add, 'X', '--volts', '20'],
    '--volts',
    /50 V or more/,
    /Write a number from 50 to 480, in volts/,
  ],
  ['a power in volts', [...add, 'X', '--watts', '700 V'], '--watts', /V is a unit of voltage/, /Use one of W/],
  ['a frequency that is no number', [...add, 'X', '--hertz', 'abc'], '--hertz', /“abc” is not a whole number/, /50/],
  ['a seed that is no number', [...add, 'X', '--practice', 'abc'], '--practice', /“abc” is not a whole/, /such as 50/],
  ['a model too long', [...add, 'X', '--model', 'x'.repeat(121)], '--model', /121 characters long/, /at most 120/],
  ['a place of a list that is none', ['list', '--after', 'abc'], '--after', /“abc” is no place of a list/, /number/],
  [
    'days that are none',
    ['price-seen', '--blueprint', upright.id, '--price', '5', '--days', 'abc'],
    '--days',
    /“abc” is not a number/,
    /Write a number .*in days/,
  ],
  [
    'a share that is none',
    ['price-seen', '--blueprint', upright.id, '--price', '5', '--complete', '130'],
    '--complete',
    /“130” is no percentage/,
    /from 0 to 100/,
  ],
  ['an unknown missing part', [...add, 'X', '--missing', 'wing'], 'missing[0]', /“wing” is not a part/, /Did you mean/],
]

describe('a refusal says what, where and what would be right', () => {
  it.each(onMachines)('%s', async (_name, args, where, what, mend) => {
    const before = (await line.run('list', '--json')).out
    const problem = await refusal(...args)
    expect(problem.where).toBe(where)
    expect(problem.what).toMatch(what)
    expect(problem.mend).toMatch(mend)
    expect((await line.run('list', '--json')).out).toBe(before)
  })

  it('a data folder that cannot be written', async () => {
    await writeFile(join(line.folder, 'a-file'), '')
    const folder = join(line.folder, 'a-file', 'data')
    for (const command of [['list'], ['serve', '--port', '0'], [...add, 'X']]) {
      const problem = await refusal(...command, '--data', folder)
      expect(problem).toMatchObject({ code: 'folder-not-writable', where: folder, mend: 'Name a folder that can be' })
      expect(problem.what).toMatch(/cannot be written: a file stands where a folder should be/)
    }
  })

  it.each(['abc', '-1', '65536', '80.5'])('port %s', async (port) => {
    expect(await refusal('serve', '--port', port)).toMatchObject({
      where: '--port',
      what: `“${port}” is not a port`,
      mend: 'Write a whole number from 0 to 65535',
    })
  })

  it('unknown names of blueprints, schemas and what to do with a blueprint', async () => {
    expect(await refusal('blueprint', 'export', 'tub-bypass')).toMatchObject({
      where: 'tub-bypass',
      mend: expect.stringMatching(/^Did you mean tub-by-pass or .*See thrum blueprint list$/) as string,
    })
    expect(await refusal('blueprint', 'eat', upright.id)).toMatchObject({
      mend: 'Use list, pick, check, export, readings or shows',
    })
    expect((await refusal('schema', 'toaster')).mend).toMatch(/^Use one of blueprint, notes/)
  })
})

describe('files', () => {
  it.each(['network', 'belief', 'plan', 'blueprint check'])(
    '%s: what is not JSON, and what is not there',
    async (command) => {
      const path = await line.file('torn.json', '{"format": ')
      expect(await refusal(...command.split(' '), path)).toMatchObject({
        code: 'not-json',
        where: path,
        what: expect.stringMatching(/^This is not JSON \(.*JSON.*\)$/) as string,
        mend: 'Give a JSON file, or - for standard input',
      })
      const gone = join(line.folder, 'gone.json')
      expect(await refusal(...command.split(' '), gone)).toMatchObject({ code: 'cannot-read', where: gone })
      const empty = await line.file('empty.json', {})
      expect((await refusal(...command.split(' '), empty)).code).toBe('not-of-the-form')
    },
  )

  it('a blueprint that names a missing part', async () => {
    const copy = structuredClone(upright)
    const [element] = copy.circuit
    const path = await line.file('missing-part.json', {
      ...copy,
      circuit: copy.circuit.map((one) => (one === element ? { ...one, part: 'flexx' } : one)),
    })
    const problem = await refusal('blueprint', 'check', path)
    expect(problem).toMatchObject({
      code: 'unknown-part',
      where: `circuit.${element.id}.part`,
      what: '“flexx” is no part of this blueprint',
    })
    expect(problem.mend).toMatch(/^Write “flex”, or add the part “flexx”$/)
  })

  it('a network with a negative resistance', async () => {
    const path = await line.file('negative.json', {
      network: {
        format: 'thrum-network-1',
        elements: [{ kind: 'resistor', id: 'r1', from: 'a', to: 'b', resistanceOhm: -4.7 }],
      },
      do: { kind: 'dc' },
    })
    expect(await refusal('network', path)).toMatchObject({
      where: 'network.elements[0].resistanceOhm',
      what: '-4.7 is not right: a resistance, capacitance or inductance is zero or more',
    })
  })
})
