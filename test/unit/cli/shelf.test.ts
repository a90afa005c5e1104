import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { makeCommandLine, type CommandLine } from './command-line.ts'

let line: CommandLine
beforeEach(async () => {
  line = await makeCommandLine()
})
afterEach(() => line.remove())

type State = {
  readonly id: string
  readonly costMinor: number
  readonly count: number
  readonly reservedFor: string | null
}
const stateOf = (value: unknown): State => (value as { state: State }).state
const add = async (name: string): Promise<string> => {
  const { value } = await line.json(
    'add',
    '--name',
    name,
    '--blueprint',
    'bagged-upright-two-motors',
    '--paid',
    '10.01',
  )
  return stateOf(value).id
}

describe('thrum shelf', () => {
  it('takes in, keeps, counts and sells a part', async () => {
    const put = await line.json(
      'shelf',
      'put',
      '--kind',
      'belt',
      '--name',
      'Belt',
      '--bought',
      'a stall',
      '--cost',
      '3',
      '--count',
      '3',
    )
    const { id } = stateOf(put.value)
    const machine = await add('Green')
    expect(stateOf((await line.json('shelf', 'reserve', id, machine)).value).reservedFor).toBe(machine)
    expect((await line.run('shelf', 'sell', id, '--received', '4')).err).toContain('kept for another machine')
    await line.json('shelf', 'release', id)
    await line.json('shelf', 'sell', id, '--received', '4')
    expect(stateOf((await line.json('shelf', 'count', id, '1')).value)).toMatchObject({ count: 1, costMinor: 100 })
    expect((await line.run('shelf')).out).toContain('Belt: 1, £1.00')
    expect((await line.run('shelf', 'describe', id, '--spec', 'powerW=3')).err).toContain('powerW')
  })

  it('breaks a machine, says where the motor fits, and puts it in at what it stands at', async () => {
    const [dead, other] = [await add('Dead'), await add('Other')]
    await line.json('take-off', dead, 'suction-motor', '--break', '--spec', 'powerW=1080', '--place', 'box 3')
    const listed = (await line.json('shelf')).value as { items: readonly State[] }
    const { id, costMinor } = listed.items[0]
    expect(costMinor).toBe(1001)
    expect((await line.run('shelf', 'fits', other, 'suction-motor')).out).toMatch(/may fit: Suction motor \(box 3\)/)
    for (const cover of ['bag-door', 'back-cover', 'filter-cover', 'motor-cover']) await line.run('off', other, cover)
    const done = await line.run('repair', other, 'suction-motor-swap', 'salvaged', '--from-shelf', id)
    expect(done.err).toBe('')
    expect(stateOf((await line.json('shelf', 'show', id)).value).count).toBe(0)
  })
})
