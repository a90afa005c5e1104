import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeCommandLine, type CommandLine } from './command-line.ts'

describe('thrum brush', () => {
  let line: CommandLine
  beforeAll(async () => {
    line = await makeCommandLine()
  })
  afterAll(() => line.remove())

  const drive = ['--motor', '25000', '--roll-diameter', '30mm', '--motor-diameter', '6mm'] as const

  it('tells speed, slip and drag', async () => {
    const { out } = await line.run('brush', '--roll', '3500rpm', ...drive, '--on', '870W', '--off', '800W')
    expect(out).toMatch(/3500 rpm[^]*slips by 30\.0 %[^]*takes 70 W/)
    expect((await line.json('brush', '--roll', '3500')).value).toMatchObject({ slip: null, drag: null })
  })

  it.each([
    [['--roll', 'fast'], '--roll: “fast” is not a speed. Write turns per minute, such as 3200.'],
    [['--roll', '3500', '--motor', '25000'], /^--motor: The slip of a belt needs the speed of the motor and both/],
    [['--roll', '3500', '--on', '870W'], /^--on: The drag of a roll needs the watts with it driven and without/],
    [['--roll', '3500', ...drive.slice(0, 3), 'wide', ...drive.slice(4)], /--roll-diameter: “wide” is not a number/],
  ] as const)('refuses %j in words', async (options, words) => {
    const { code, err } = await line.run('brush', ...options)
    expect(code).toBe(1)
    expect(err).toMatch(words)
  })
})
