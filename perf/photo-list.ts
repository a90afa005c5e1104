import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { valueOf } from '../src/base/result.ts'
import { blueprints } from '../src/blueprint/library.ts'
import { startServer } from '../src/server/serve.ts'
import { launchBrowser } from '../test/browser/chromium.ts'

const photographs = 200
const times = 5
/** How much longer than an empty page of the same app a page of so many photographs may take until it is painted. */
export const barMs = 100

/** The same photograph would be kept once, so each has a width and a colour of its own. */
const picture = (at: number): Promise<Buffer> =>
  sharp({ create: { width: 640 + at, height: 480, channels: 3, background: { r: at, g: 255 - at, b: 120 } } })
    .jpeg()
    .toBuffer()

type Numbered = { readonly id: string }

const machineWith = async (page: Page, count: number): Promise<string> => {
  const [blueprint] = blueprints
  if (blueprint === undefined) throw new Error('there is no blueprint')
  const content = { kind: 'added', name: `With ${count}`, blueprint: blueprint.id, plate: blueprint.plate, paidMinor: 0, currency: 'GBP' } // prettier-ignore
  const id = `photographs-${count}`
  await page.request.post('/api/bench/own/machines', { data: { id, content } })
  for (let at = 0; at < count; at++) {
    const headers = { 'content-type': 'application/octet-stream' }
    const sent = await page.request.post('/api/photos', { headers, data: await picture(at) })
    const { id: photo } = (await sent.json()) as Numbered
    const note = { kind: 'photo', photo, text: `Number ${at}` }
    const noted = await page.request.post(`/api/bench/own/machines/${id}/notes`, {
      data: { version: at + 1, content: note },
    })
    if (!noted.ok()) throw new Error(await noted.text())
  }
  return id
}

type Seen = { readonly paintedMs: number; readonly images: number; readonly fetched: number }

/** From asking for the page until what it has to show is painted, with what it fetched until then. Nothing is kept from a visit before. */
const look = async (page: Page, id: string, heading: string): Promise<Seen> => {
  await page.goto('about:blank')
  await page.addInitScript((wanted) => {
    const painted = (): void => {
      const there = [...document.querySelectorAll('h2, p')].some((one) => one.textContent?.startsWith(wanted))
      if (!there) return
      watching.disconnect()
      // What is in the page now is painted before the second frame from here.
      requestAnimationFrame(() => requestAnimationFrame(() => performance.mark('painted')))
    }
    const watching = new MutationObserver(painted)
    watching.observe(document, { childList: true, subtree: true, characterData: true })
  }, heading)
  await page.goto(`/machine/${id}/photos`)
  await page.waitForFunction(() => performance.getEntriesByName('painted').length > 0)
  const all = heading.startsWith('No') ? 0 : photographs
  await page.waitForFunction((count) => document.querySelectorAll('.photos img').length === count, all)
  return page.evaluate(() => ({
    paintedMs: performance.getEntriesByName('painted')[0]?.startTime ?? 0,
    images: document.querySelectorAll('.photos img').length,
    fetched: performance.getEntriesByType('resource').filter(({ name }) => name.includes('/api/photos/')).length,
  }))
}

/** In a window of its own, alone: one behind another is not painted. */
const looked = async (newPage: () => Promise<Page>, id: string, heading: string): Promise<Seen> => {
  const page = await newPage()
  const seen = await look(page, id, heading)
  await page.close()
  return seen
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0

/**
 * How long the page of a machine with so many photographs takes until it is painted, against that page of a machine with none, in one
 * run. Throws when the difference is over the bar or when photographs out of sight are fetched. Needs the built pages.
 */
export const run = async () => {
  const folder = await mkdtemp(join(tmpdir(), 'thrum-perf-'))
  const server = valueOf(await startServer({ folder, port: 0, host: '127.0.0.1', print: () => undefined }))
  const browser = await launchBrowser()
  try {
    const newPage = (): Promise<Page> =>
      browser.newPage({ viewport: { width: 1280, height: 800 }, baseURL: server.address, serviceWorkers: 'block' })
    const first = await newPage()
    const [full, empty] = [await machineWith(first, photographs), await machineWith(first, 0)]
    await first.close()
    const seen: { readonly full: Seen; readonly empty: Seen }[] = []
    for (let at = 0; at <= times; at++) {
      const bare = await looked(newPage, empty, 'No photographs yet')
      const laden = await looked(newPage, full, `${photographs} photographs`)
      if (laden.images !== photographs) throw new Error(`the page shows ${laden.images} of ${photographs} photographs`)
      if (laden.fetched > photographs / 2) throw new Error(`${laden.fetched} photographs were fetched at once`)
      // The first of each warms up the server.
      if (at > 0) seen.push({ full: laden, empty: bare })
    }
    const ours = median(seen.map((one) => one.full.paintedMs))
    const theirs = median(seen.map((one) => one.empty.paintedMs))
    const more = median(seen.map((one) => one.full.paintedMs - one.empty.paintedMs))
    if (more > barMs)
      throw new Error(`${photographs} photographs took ${more.toFixed(0)} ms more than none, over ${barMs}`)
    return [
      {
        name: `the page of ${photographs} photographs until it is painted, against the same page with none`,
        ours,
        theirs,
        ratio: theirs / ours,
      },
    ]
  } finally {
    await browser.close()
    await server.stop()
    await rm(folder, { recursive: true, force: true })
  }
}
