import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { valueOf } from '../../src/base/result.ts'
import { startServer } from '../../src/server/serve.ts'
import { launchBrowser } from './chromium.ts'

/** The program on a port of its own over an empty data folder, and a browser to look at it with. */
export type RunningApp = {
  readonly address: string
  readonly browser: Browser
  /** A page of this size, which keeps nothing for later unless said; fails the test at its end if the console showed an error. */
  readonly page: (
    size: { width: number; height: number },
    theme?: 'light' | 'dark',
    keepsPages?: boolean,
  ) => Promise<Page>
  readonly stop: () => Promise<void>
}

export const startApp = async (): Promise<RunningApp> => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-browser-'))
  const server = valueOf(await startServer({ folder, port: 0, host: '127.0.0.1', print: () => undefined }))
  const browser = await launchBrowser()
  const faults: string[] = []
  const page: RunningApp['page'] = async (size, theme = 'light', keepsPages = false) => {
    const opened = await browser.newPage({
      viewport: size,
      colorScheme: theme,
      baseURL: server.address,
      serviceWorkers: keepsPages ? 'allow' : 'block',
    })
    opened.on('pageerror', (error) => faults.push(error.message))
    return opened
  }
  const stop = async (): Promise<void> => {
    await browser.close()
    await server.stop()
    await rm(folder, { recursive: true, force: true })
    if (faults.length > 0) throw new Error(`the page threw: ${faults.join('; ')}`)
  }
  return { address: server.address, browser, page, stop }
}
