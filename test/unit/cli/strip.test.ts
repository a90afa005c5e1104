import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../../src/bench/contract.ts'
import type { StripView } from '../../../src/bench/stripping/strip-view.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeAll(async () => {
  line = await makeCommandLine()
  await line.run('add', '--name', 'Green', '--blueprint', 'bagged-upright-two-motors')
})
afterAll(() => line.remove())

type Answered = MachineDocument & { readonly warnings: readonly string[] }
const noted = async (...args: readonly string[]) => (await line.json(...args)).value as Answered

describe('stripping down from the command line', () => {
  it('notes what came away with its fixings, puts it back, and says what is left over', async () => {
    await noted('off', 'Green', 'bag-door', '--none')
    await noted('open', 'Green', 'back-cover', '--as-said', '--place', 'pot 1', '--minutes', '8')
    const opened = await noted('off', 'Green', 'board-cover', '--fixing', '3 × screw 4×16 in lid', 'felt washer', '--text', 'one was gone') // prettier-ignore
    expect(opened.notes.at(-1)?.content).toEqual({
      kind: 'opened',
      cover: 'board-cover',
      minutes: 3,
      fixings: [
        { count: 3, kind: 'screw 4×16', place: 'lid' },
        { count: 1, kind: 'felt washer', place: '' },
      ],
      text: 'one was gone',
    })
    await noted('take-out', 'Green', 'board', '--none')
    const strip = (await line.json('strip', 'Green')).value as StripView
    expect(strip.away.map(({ piece }) => piece.id)).toEqual(['board', 'board-cover', 'back-cover', 'bag-door'])
    expect(strip.balance).toMatchObject({ taken: 9, kept: 9 })
    expect((await line.run('strip', 'Green')).out).toContain(
      'Board cover: 3 × screw 4×16 in lid and 1 × felt washer  (board-cover)',
    )

    await noted('put-in', 'Green', 'board', '--none')
    await noted('on', 'Green', 'board-cover', '--fixing', '2 × screw 4×16 in lid')
    await noted('close', 'Green', 'back-cover', '--as-said')
    const closed = await noted('on', 'Green', 'bag-door', '--none')
    expect(closed.warnings).toEqual(['One 4 × 16 screw and a felt washer are left over.'])
    const { out } = await line.run('strip', 'Green')
    expect(out).toContain('! One 4 × 16 screw and a felt washer are left over.')
    expect(out).toContain('Different here: Board cover: three 4 × 16 screws and a felt washer here')
  })

  it('refuses what says no fixing, a part behind a cover that is on, and a part that is not out', async () => {
    expect(await line.json('off', 'Green', 'bag-door', '--fixing', '0 × screw')).toMatchObject({
      code: 1,
      value: { problems: [{ code: 'not-a-fixing' }] },
    })
    expect((await line.json('take-out', 'Green', 'board')).value).toMatchObject({ problems: [{ code: 'covered' }] })
    expect((await line.json('put-in', 'Green', 'board')).value).toMatchObject({ problems: [{ code: 'not-out' }] })
  })

  it('takes a cover noted without a word on its fixings as not counted', async () => {
    const { notes } = await noted('off', 'Green', 'bag-door')
    expect(notes.at(-1)?.content).toEqual({ kind: 'opened', cover: 'bag-door', minutes: 0.2 })
  })

  it('has left over what is left over, through an opening that nobody counts, until it is said to be in', async () => {
    await noted('off', 'Green', 'back-cover')
    await noted('off', 'Green', 'board-cover')
    await noted('on', 'Green', 'board-cover', '--left-over-in', 'screw 4×16')
    const { warnings } = (await line.json('strip', 'Green')).value as StripView
    expect(warnings).toEqual(['One felt washer is left over.'])
  })
})
