import { createHash } from 'node:crypto'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, phone } from './chromium.ts'
import { axeViolations, settled } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const wayIn = (page: Page) => page.locator('input[type="file"][aria-label="Take or choose photographs"]')

const jpeg = (colour: string, widthPx = 3000, heightPx = 2000): Promise<Buffer> =>
  sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: colour } })
    .jpeg()
    .toBuffer()

const file = (name: string, buffer: Buffer) => ({ name, mimeType: 'image/jpeg', buffer })

describe.runIf(browserHere())('photographs where the bench does not answer', () => {
  let app: RunningApp
  let folder = ''
  beforeAll(async () => {
    app = await startApp()
    folder = await mkdtemp(join(tmpdir(), 'thrum-photographs-'))
  })
  afterAll(async () => {
    await app.stop()
    await rm(folder, { recursive: true, force: true })
  })

  const strip = (page: Page) => page.getByRole('complementary', { name: 'Not sent yet' })
  const begin = async (page: Page): Promise<string> => {
    const { state } = await putOnBench(page, {})
    await page.goto(`/machine/${state.id}/photos`)
    await page.getByText('No photographs yet.').waitFor()
    // What the pages fetch when they are first wanted is here before the bench goes away.
    await page.goto(`/machine/${state.id}`)
    await settled(page)
    await page.getByRole('link', { name: 'Photographs' }).click()
    await page.getByText('No photographs yet.').waitFor()
    return state.id
  }

  it('wait on the device with notes made between them, and arrive once, in order, with the time they were made', async () => {
    const page = await app.page(phone)
    const id = await begin(page)
    await page.context().setOffline(true)
    await wayIn(page).setInputFiles(file('first.jpg', await jpeg('sienna')))
    await strip(page).getByText('One has a photograph.').waitFor()
    await wayIn(page).setInputFiles(file('second.jpg', await jpeg('teal')))
    await page.getByRole('heading', { name: '2 photographs, newest first' }).waitFor()
    // Shown from the device itself.
    await page.waitForFunction(() => [...document.querySelectorAll<HTMLImageElement>('.photos img')].every((one) => one.src.startsWith('blob:') && one.naturalWidth > 0)) // prettier-ignore
    await page.getByRole('button', { name: 'Strike out: Photograph, before', exact: true }).last().click()
    await strip(page).getByText('3 notes are not sent yet.').waitFor()
    expect(await axeViolations(page)).toEqual([])
    const madeBy = new Date().toISOString()
    // The bench has the first photograph, and its answer is lost on the way.
    let lost = 0
    await page.route('**/api/photos', async (route) => {
      const answer = await route.fetch()
      if (lost++ < 1) await route.abort()
      else await route.fulfill({ response: answer })
    })
    await page.waitForTimeout(1100)
    await page.context().setOffline(false)
    await strip(page).waitFor({ state: 'detached', timeout: 40_000 })
    expect(lost).toBe(3)
    const { notes } = await machineOnBench(page, id)
    expect(notes.map(({ content }) => content.kind)).toEqual(['added', 'photo', 'photo', 'struck'])
    expect(notes.every(({ at }) => at <= madeBy)).toBe(true)
    const ids = notes.flatMap(({ content }) => (content.kind === 'photo' ? [content.photo] : []))
    expect(new Set(ids).size).toBe(2)
    for (const one of ids) {
      const got = await page.request.get(`/api/photos/${one}`)
      const { width, height } = await sharp(await got.body()).metadata()
      // Made smaller on the device: 2048 on the longest side, as the bench would.
      expect([width, height]).toEqual([2048, 1365])
    }
    await page.close()
  })

  it('are refused by name, at once or by the bench, and nothing else is lost', async () => {
    const page = await app.page(phone)
    const id = await begin(page)
    const whole = await jpeg('olive', 900, 600)
    await page.context().setOffline(true)
    // As files on the disk: a film of 31 megabytes is not sent to the browser through its debugger.
    const files = { 'film.mp4.jpg': Buffer.alloc(31 * 1024 * 1024, 1), 'broken.jpg': whole.subarray(0, Math.floor(whole.length / 2)), 'good.jpg': whole } // prettier-ignore
    for (const [name, bytes] of Object.entries(files)) await writeFile(join(folder, name), bytes)
    await wayIn(page).setInputFiles(Object.keys(files).map((name) => join(folder, name)))
    await page.getByText('“film.mp4.jpg”: This file is larger than 30 megabytes').waitFor()
    await strip(page).getByText('2 have photographs.').waitFor()
    await page.context().setOffline(false)
    await strip(page).getByRole('button', { name: 'The bench did not take one note' }).click({ timeout: 40_000 })
    await strip(page).getByText('“broken.jpg”: This photograph is broken').waitFor()
    await page.getByRole('heading', { name: 'One photograph, newest first' }).waitFor()
    await strip(page).getByRole('status').waitFor({ state: 'detached', timeout: 20_000 })
    const { notes } = await machineOnBench(page, id)
    const photos = notes.flatMap(({ content }) => (content.kind === 'photo' ? [content.photo] : []))
    // Small enough already: sent as it was, so under the name of the same bytes.
    expect(photos).toEqual([createHash('sha256').update(whole).digest('hex')])
    await strip(page).getByRole('button', { name: 'Leave it out' }).click()
    await strip(page).waitFor({ state: 'detached' })
    await page.close()
  })

  it('wait where the disk of the bench is full, and a browser without room says so at once', async () => {
    const page = await app.page(phone)
    const id = await begin(page)
    const full = { problems: [{ code: 'disk-full', where: 'photo', what: 'The disk is full, so the photograph was not kept', mend: 'Make room' }] } // prettier-ignore
    await page.route('**/api/photos', (route) => route.fulfill({ status: 507, json: full }))
    await wayIn(page).setInputFiles(file('kept.jpg', await jpeg('gold', 800, 600)))
    await strip(page).getByText('“kept.jpg”: The disk is full').waitFor({ timeout: 20_000 })
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError')
      }
    })
    await wayIn(page).setInputFiles(file('no-room.jpg', await jpeg('navy', 800, 600)))
    await page.getByText('“no-room.jpg”: The bench does not answer, and this browser has no room').waitFor()
    await page.unroute('**/api/photos')
    await strip(page).getByRole('button', { name: 'Try now' }).click()
    await strip(page).waitFor({ state: 'detached', timeout: 20_000 })
    expect((await machineOnBench(page, id)).notes.map(({ content }) => content.kind)).toEqual(['added', 'photo'])
    await page.close()
  })
})
