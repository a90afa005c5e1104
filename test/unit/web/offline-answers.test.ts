import { describe, expect, it } from 'vitest'
import { answerTo, keepFiles, type Keeper } from '../../../src/web/offline/answer-to.ts'

const origin = 'http://bench.test'

/** Stores as a browser has them, and a network that can be cut. */
const browser = (network: Record<string, string>) => {
  const stores = new Map<string, Map<string, string>>()
  const asked: string[] = []
  const state = { cut: false }
  const pathOf = (key: Request | string): string => new URL(typeof key === 'string' ? key : key.url, origin).pathname
  const open = (name: string) => {
    const store = stores.get(name) ?? new Map<string, string>()
    stores.set(name, store)
    return Promise.resolve({
      match: (key: string) => {
        const text = store.get(pathOf(key))
        return Promise.resolve(text === undefined ? undefined : new Response(text))
      },
      put: async (key: string, answer: Response) => void store.set(pathOf(key), await answer.text()),
      keys: () => Promise.resolve([...store.keys()].map((path) => ({ url: `${origin}${path}` }))),
      delete: (key: string) => Promise.resolve(store.delete(pathOf(key))),
    } as unknown as Cache)
  }
  const keeper: Keeper = {
    caches: {
      open,
      keys: () => Promise.resolve([...stores.keys()]),
      delete: (name) => Promise.resolve(stores.delete(name)),
    },
    origin,
    fetch: (request) => {
      const path = pathOf(request)
      asked.push(path)
      if (state.cut) return Promise.reject(new TypeError('no network'))
      const text = network[path]
      return Promise.resolve(text === undefined ? new Response('', { status: 404 }) : new Response(text))
    },
  }
  return { keeper, asked, state, stores }
}

const get = (path: string, init: RequestInit & { readonly mode?: RequestMode } = {}): Request =>
  Object.assign(new Request(`${origin}${path}`, { method: init.method ?? 'GET' }), {})
const page = (path: string): Request =>
  new Proxy(get(path), {
    get: (request, name) => (name === 'mode' ? 'navigate' : (Reflect.get(request, name, request) as unknown)),
  })

const text = async (answer: Promise<Response> | null): Promise<string | null> =>
  answer === null ? null : (await answer).text()

describe('between the pages and the network', () => {
  const files = { '/files.json': '["/index.html","/assets/a-1.js"]', '/index.html': 'page', '/assets/a-1.js': 'code' }

  it('leaves what is sent, and other places, to the browser', () => {
    const { keeper } = browser({})
    expect(answerTo(keeper, get('/api/bench/own/machines', { method: 'POST' }))).toBeNull()
    expect(answerTo(keeper, new Request('http://elsewhere.test/api/x'))).toBeNull()
    expect(answerTo(keeper, get('/service.js'))).toBeNull()
  })

  it('keeps every file of the pages, fetches one that never changes only once, and lets go of old ones', async () => {
    const { keeper, asked, stores } = browser(files)
    await keepFiles(keeper)
    await keepFiles(keeper)
    expect(asked.filter((path) => path === '/assets/a-1.js')).toHaveLength(1)
    stores.get('thrum-files')!.set('/assets/old-0.js', 'old')
    await keepFiles(keeper)
    expect([...stores.get('thrum-files')!.keys()].sort()).toEqual(['/assets/a-1.js', '/index.html'])
  })

  it('opens any page from the kept one when the network is gone', async () => {
    const { keeper, state } = browser({ ...files, '/machine/m1': 'page' })
    await keepFiles(keeper)
    state.cut = true
    expect(await text(answerTo(keeper, page('/machine/m1/proof')))).toBe('page')
    expect(await text(answerTo(keeper, get('/assets/a-1.js')))).toBe('code')
  })

  it('gives the newest answer of the bench while it answers, and the last one when it does not', async () => {
    const network: Record<string, string> = { '/api/settings': 'one' }
    const { keeper, state } = browser(network)
    expect(await text(answerTo(keeper, get('/api/settings')))).toBe('one')
    network['/api/settings'] = 'two'
    expect(await text(answerTo(keeper, get('/api/settings')))).toBe('two')
    state.cut = true
    expect(await text(answerTo(keeper, get('/api/settings')))).toBe('two')
    await expect(answerTo(keeper, get('/api/blueprints'))).rejects.toThrow('no network')
  })

  it('never keeps a refusal', async () => {
    const network: Record<string, string> = { '/api/x': 'good' }
    const { keeper, state } = browser(network)
    await answerTo(keeper, get('/api/x'))
    delete network['/api/x']
    expect((await answerTo(keeper, get('/api/x'))!).status).toBe(404)
    state.cut = true
    expect(await text(answerTo(keeper, get('/api/x')))).toBe('good')
  })
})
