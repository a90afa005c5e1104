import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { tempFolder } from '../../support/filled-store.ts'

const program = fileURLToPath(new URL('../../../bin/thrum.mjs', import.meta.url))

describe.skipIf(process.platform === 'win32')('thrum serve, asked to end', () => {
  it('ends with 0 within five seconds, though somebody still hears what changes', async () => {
    const { folder, remove } = await tempFolder()
    const child = spawn(process.execPath, [program, 'serve', '--port', '0', '--keep', '0'], {
      env: { ...process.env, THRUM_DATA: join(folder, 'data') },
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    let address = ''
    for await (const chunk of child.stdout.setEncoding('utf8')) {
      address = /http:\/\/\S+/.exec(chunk as string)?.[0] ?? ''
      if (address !== '') break
    }
    const hears = await fetch(new URL('/api/bench/own/changes', address))
    expect(hears.status).toBe(200)
    const heard = hears.text().catch(() => '')
    const ended = once(child, 'exit')
    const start = performance.now()
    child.kill('SIGTERM')
    expect(await ended).toEqual([0, null])
    expect(performance.now() - start).toBeLessThan(5000)
    await heard
    await remove()
  })
})
