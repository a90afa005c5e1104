import { existsSync } from 'node:fs'
import { chromium, type Browser } from 'playwright-core'

const places = [process.env['CHROMIUM'], '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']

/** Where a browser is installed, or null. */
export const chromiumPath = places.find((path) => path !== undefined && path !== '' && existsSync(path)) ?? null

/** Whether browser tests run here. In CI a missing browser is a failure, elsewhere a printed reason. */
export const browserHere = (): boolean => {
  if (chromiumPath !== null) return true
  if (process.env['CI'] !== undefined) throw new Error('browser tests need Chromium, and none is installed')
  console.log(
    'Browser tests are left out: no Chromium found (set CHROMIUM to its path, or install the package chromium).',
  )
  return false
}

/** A browser of its own, without anything that reaches for the network. */
export const launchBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: chromiumPath ?? undefined,
    args: [
      '--headless',
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  })

export const phone = { width: 360, height: 780 } as const
export const laptop = { width: 1280, height: 860 } as const
