import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { CleanView } from '../../../src/bench/cleaning/clean-view.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

/** One job through the commands, step upon step: what is worth cleaning, washing, drying, grading. */
describe('thrum clean, cleaned, dry and grade', () => {
  let line: CommandLine
  beforeAll(async () => {
    line = await makeCommandLine()
    await line.run('add', '--name', 'A', '--blueprint', 'bagged-upright-one-motor', '--paid', '6')
  })
  afterAll(() => line.remove())
  const json = async (...words: readonly string[]): Promise<CleanView> => (await line.json(...words)).value as CleanView

  it('says what comes first and what pays, with minutes and money', { timeout: 30_000 }, async () => {
    const { code, out } = await line.run('clean', 'A')
    expect(code).toBe(0)
    expect(out).toMatch(/^A: clean, and once it works, it is worth asking £\d+\.\d\d, looks B \(light marks\)/)
    expect(out).toMatch(/First, whatever it brings:\n {2}dust-out: .*8 min, costs £0\.20/)
    expect(out).toMatch(/wash-casing: Wash the casing: 15 min, costs £0\.30, £[\d.]+ more, £[\d.]+ a minute, dries 2 h/)
    expect(out).toContain('Nothing is noted as cleaned yet')
  })

  it('notes a wash with its usual minutes and cost, and its drying', { timeout: 30_000 }, async () => {
    const view = await json('cleaned', 'A', 'wash-filter', '--part', 'pre-motor-filter', '--damp')
    expect((await line.run('show', 'A')).out).toMatch(/! Pre-motor filter not found dry yet; should be dry at 20\S+Z\. Do not run it/) // prettier-ignore
    expect(view.done).toMatchObject([{ task: 'wash-filter', minutes: 5, costMinor: 0 }])
    const [drying] = view.drying
    expect(Date.parse(drying.readyAt) - Date.parse(drying.from)).toBe(48 * 3600 * 1000)
    expect(view.plan.first.map(({ id }) => id)).not.toContain('new-motor-filter')
    const calendar = await line.run('clean', 'A', '--calendar')
    expect(calendar.out).toMatch(/^BEGIN:VCALENDAR\r\n[^]*END:VCALENDAR/)
    const dry = await json('dry', 'A', drying.note)
    expect(dry.drying).toEqual([])
    expect(dry.calendar).toBeNull()
  })

  it('takes figures of its own, and grades', { timeout: 30_000 }, async () => {
    const view = await json('cleaned', 'A', 'wash-casing', '--minutes', '22', '--cost', '0.55', '--dry-hours', '3')
    expect(view).toMatchObject({ minutes: 27, costMinor: 55 })
    const graded = await json('grade', 'A', 'casing', 'C', '--when', 'before')
    expect(graded.grades).toEqual([{ part: 'casing', name: 'Casing', before: 'C', after: null }])
    expect(graded.plan.ranked.map(({ id }) => id)).toContain('scuffs')
  })

  it.each([
    [['cleaned', 'A', 'wash-cassing'], /“wash-cassing” is not a task here\. Did you mean wash-casing/],
    [['cleaned', 'A', 'other'], /Say in words what was done/],
    [['cleaned', 'A', 'roll', '--cost', 'little'], /--cost: “little” is not an amount of money/],
    [['cleaned', 'A', 'roll', '--minutes', 'few'], /minutes/],
    [['cleaned', 'A', 'roll', '--dry-hours', '1000'], /what takes more than a fortnight to dry is spoilt/],
    [['dry', 'A', 'none'], /Nothing was put to dry in the note “none”/],
    [['grade', 'A', 'casing', 'E'], /grade/],
    [['grade', 'A', 'wing', 'B'], /“wing” is not a part here/],
    [['clean', 'none'], /There is no machine “none”/],
  ])('refuses %j', async (words, said) => {
    const { code, err } = await line.run(...words)
    expect(code).toBe(1)
    expect(err).toMatch(said)
  })
})
