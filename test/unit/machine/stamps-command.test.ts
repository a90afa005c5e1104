import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { main } from '../../../src/cli/main.ts'

const rule = join(import.meta.dirname, '../../truth/stamps/rule/input.json')

const run = async (...args: readonly string[]) => {
  const out: string[] = []
  const err: string[] = []
  const code = await main(args, { out: (text) => out.push(text), err: (text) => err.push(text) }, {})
  return { code, out: out.join('\n'), err: err.join('\n') }
}

describe('thrum stamps', () => {
  it('says in words when the machine was put together', async () => {
    const { code, out } = await run('stamps', rule)
    expect(code).toBe(0)
    expect(out).toContain('Put together: 2010-05-01 to 2010-11-01')
    expect(out).toContain('d: 2012-01-01 to 2012-01-31 (likely replaced)')
  })
  it('gives JSON when asked, and a form by name', async () => {
    expect(JSON.parse((await run('stamps', rule, '--json')).out)).toMatchObject({ window: { from: '2010-05-01' } })
    expect(JSON.parse((await run('schema', 'stamps')).out)).toMatchObject({ type: 'object' })
  })
  it('refuses a file that is not there', async () => {
    const { code, err } = await run('stamps', 'no-such-file.json')
    expect(code).toBe(1)
    expect(err).toContain('no-such-file.json')
  })
})
