import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Hono } from 'hono'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readStaticFiles, servePages } from '../../../src/server/static-files.ts'

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'thrum-pages-'))
  await mkdir(join(folder, 'web', 'assets'), { recursive: true })
  await writeFile(join(folder, 'secret.txt'), 'secret')
  await writeFile(join(folder, 'web', 'index.html'), '<title>Thrum</title>')
  await writeFile(join(folder, 'web', 'assets', 'index-1a2b.js'), 'run()')
})
afterAll(() => rm(folder, { recursive: true }))

const pages = async (name: string) => {
  const app = new Hono()
  app.get('*', servePages(await readStaticFiles(join(folder, name))))
  return app
}

describe('the pages', () => {
  it('start from index.html at every address of their own, asked anew each time', async () => {
    const app = await pages('web')
    for (const path of ['/', '/machines/m1', '/practice', '/blueprints/upright.120', '/demo/machine/a.js']) {
      const response = await app.request(path)
      expect(await response.text()).toContain('Thrum')
      expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8')
      expect(response.headers.get('cache-control')).toBe('no-cache')
    }
  })

  it('have files with a hash in their name, kept by the browser for good', async () => {
    const response = await (await pages('web')).request('/assets/index-1a2b.js')
    expect(await response.text()).toBe('run()')
    expect(response.headers.get('content-type')).toBe('text/javascript; charset=utf-8')
    expect(response.headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
  })

  it('answer a missing file with not found, never with a page', async () => {
    for (const path of ['/assets/index-old.js', '/assets/none', '/favicon.ico'])
      expect((await (await pages('web')).request(path)).status).toBe(404)
  })

  it.each(['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/assets/..%5c..%5csecret.txt', '//secret.txt'])(
    'give nothing from outside their folder: %s',
    async (path) => {
      expect(await (await (await pages('web')).request(path)).text()).not.toContain('secret')
    },
  )

  it('that are not built say how to build them', async () => {
    const response = await (await pages('nowhere')).request('/')
    expect(response.status).toBe(404)
    expect(await response.text()).toContain('npm run build')
  })
})
