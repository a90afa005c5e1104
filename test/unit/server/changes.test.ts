import { OpenAPIHono } from '@hono/zod-openapi'
import { describe, expect, it } from 'vitest'
import { addChanges } from '../../../src/server/changes.ts'
import { onBehalfOf } from '../../../src/server/sign-in/who-asks.ts'
import { makeListeners } from '../../../src/store/changes.ts'

const address = '/api/bench/own/changes'

/** The events as the standard writes them: fields in lines, an empty line after each (WHATWG HTML, 9.2.6 Interpreting an event stream). */
const eventsOf = (text: string): readonly (readonly [string, unknown])[] =>
  text
    .split('\n\n')
    .filter((block) => block.startsWith('event:') || block.startsWith('data:'))
    .map((block) => {
      const field = (name: string): string =>
        block
          .split('\n')
          .find((line) => line.startsWith(`${name}: `))
          ?.slice(name.length + 2) ?? ''
      return [field('event'), JSON.parse(field('data')) as unknown]
    })

const serving = () => {
  const listeners = makeListeners()
  const stopping = new AbortController()
  const app = new OpenAPIHono()
  addChanges(app, { changes: listeners, stopping: stopping.signal })
  return { app, listeners, stopping }
}

describe('the address of changes', () => {
  it('says that it is there, tells what is written to its bench, and ends when the program stops', async () => {
    const { app, listeners, stopping } = serving()
    const response = await app.request(address)
    expect(response.headers.get('content-type')).toMatch('text/event-stream')
    expect(response.headers.get('cache-control')).toBe('no-store')
    listeners.tell('own', { kind: 'machine', id: 'm1', version: 3 })
    listeners.tell('demo', { kind: 'machine', id: 'm2', version: 1 })
    listeners.tellAll()
    stopping.abort()
    expect(eventsOf(await response.text())).toEqual([
      ['ready', {}],
      ['change', { kind: 'machine', id: 'm1', version: 3 }],
      ['change', { kind: 'everything' }],
    ])
    expect(listeners.someone()).toBe(false)
  })

  it('lets go of one that went away', async () => {
    const { app, listeners } = serving()
    const response = await app.request(address)
    expect(listeners.someone()).toBe(true)
    await response.body?.cancel()
    await expect.poll(() => listeners.someone()).toBe(false)
  })

  it('tells of spending to the keeper of the books only', async () => {
    const { app, listeners, stopping } = serving()
    const hearing = (role: 'bench' | 'keeper') =>
      onBehalfOf({ role } as Parameters<typeof onBehalfOf>[0], () => app.request(address))
    const [bench, keeper] = [await hearing('bench'), await hearing('keeper')]
    listeners.tell('own', { kind: 'expense', id: 'e1', version: 1 })
    stopping.abort()
    const kinds = async (response: Response) => eventsOf(await response.text()).map(([event]) => event)
    expect(await kinds(bench)).toEqual(['ready'])
    expect(await kinds(keeper)).toEqual(['ready', 'change'])
  })
})
