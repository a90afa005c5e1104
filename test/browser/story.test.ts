import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { noteOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, settled, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const picture = (colour: string): Promise<Buffer> =>
  sharp({ create: { width: 1200, height: 900, channels: 3, background: colour } })
    .jpeg()
    .toBuffer()

describe.runIf(browserHere())('the story of a machine and its film', () => {
  let app: RunningApp
  let folder = ''
  beforeAll(async () => {
    app = await startApp()
    folder = await mkdtemp(join(tmpdir(), 'thrum-story-'))
  })
  afterAll(async () => {
    await app.stop()
    await rm(folder, { recursive: true, force: true })
  })

  it('goes from the camera to a file that opens without the bench', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(page, { name: 'Green <b>one</b>', claim: '<script>window.bad = 1</script>' })
    for (const [colour, when] of [
      ['sienna', 'before'],
      ['teal', 'after'],
    ] as const) {
      // prettier-ignore
      const sent = await page.request.post('/api/photos', { headers: { 'content-type': 'application/octet-stream' }, data: await picture(colour) }) // prettier-ignore
      await noteOnBench(page, state.id, { kind: 'photo', photo: ((await sent.json()) as { id: string }).id, when })
    }
    await page.goto(`/machine/${state.id}`)
    await page.getByRole('link', { name: 'Story and film' }).click()
    await page.getByRole('button', { name: 'Start the film clock' }).click()
    await page.getByRole('timer').waitFor()
    await page.getByText(/^0:00:0[1-9]$/).waitFor()
    await noteOnBench(page, state.id, { kind: 'said', text: 'The belt is off' })
    // What another page writes comes to this one by itself.
    const list = page.getByRole('list', { name: 'Chapters of the film' })
    await list.getByText('The belt is off').waitFor()
    await page.getByRole('button', { name: 'Stop the film clock' }).click()
    await page.getByRole('button', { name: 'Start the film clock' }).waitFor()
    expect(await list.getByRole('listitem').allInnerTexts()).toEqual(['0:00:00 Start; The belt is off'])
    await settled(page)
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Keep it as a file' }).click(),
    ])
    const path = join(folder, 'story.html')
    await download.saveAs(path)
    const chapters = await page.request.get(`/api/bench/own/machines/${state.id}/chapters.txt`)
    expect(await chapters.text()).toBe('0:00:00 Start; The belt is off')
    await page.close()

    // As a file in a browser: no request leaves it, nothing runs, its photographs and its style are there.
    const opened = await app.page(laptop, 'dark')
    const asked: string[] = []
    const refusedByPolicy: string[] = []
    opened.on('request', (request) => asked.push(request.url().slice(0, 30)))
    opened.on('console', (message) => refusedByPolicy.push(message.text()))
    await opened.goto(pathToFileURL(path).href)
    await opened.getByRole('heading', { level: 1, name: 'Green <b>one</b>' }).waitFor()
    expect(await opened.locator('img').evaluateAll((all) => all.map((one) => (one as HTMLImageElement).naturalWidth))).toEqual([1200, 1200]) // prettier-ignore
    expect(await opened.evaluate(() => ['bad' in window, document.scripts.length])).toEqual([false, 0])
    expect(await opened.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(13, 16, 17)')
    expect(asked.filter((url) => !url.startsWith('file:') && !url.startsWith('data:'))).toEqual([])
    expect(refusedByPolicy).toEqual([])
    expect(await axeViolations(opened)).toEqual([])
    await opened.close()
  })

  it('opens from the bench with its own style, and with money only where it is asked for', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(page, { paidMinor: 1234 })
    const address = `/api/bench/own/machines/${state.id}/story.html`
    await page.goto(address)
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(244, 245, 240)')
    expect(await page.getByText('£12.34').count()).toBe(0)
    await page.goto(`${address}?money=yes`)
    await page.getByText('£12.34').first().waitFor()
    // A circuit wider than the window moves within its frame, by key too.
    expect((await sideways(page)).scrolledPx).toBe(0)
    expect(await axeViolations(page)).toEqual([])
    await page.close()
  })
})
