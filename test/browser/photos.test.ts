import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, settled, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

/** The camera's way in beside its button. */
const wayIn = (page: Page, name: string) => page.locator(`input[type="file"][aria-label="${name}"]`)

const shot = async (colour: string) => ({
  name: `${colour}.jpg`,
  mimeType: 'image/jpeg',
  buffer: await sharp({ create: { width: 1600, height: 1200, channels: 3, background: colour } })
    .jpeg()
    .toBuffer(),
})

describe.runIf(browserHere())('photographs of a machine', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('are taken on a phone, paired, ticked and struck out', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(page, {})
    await page.goto(`/machine/${state.id}/photos`)
    await page.getByText('No photographs yet.').waitFor()
    await page.getByRole('button', { name: 'Before', exact: true }).click()
    await wayIn(page, 'Take or choose photographs').setInputFiles([await shot('sienna'), await shot('teal')])
    await page.getByRole('heading', { name: '2 photographs, newest first' }).waitFor()
    await page.getByRole('button', { name: 'After', exact: true }).click()
    await wayIn(page, 'Take or choose photographs').setInputFiles(await shot('gold'))
    await page.getByRole('region', { name: 'Before and after' }).waitFor()

    await page.getByRole('button', { name: /^Shots that sell it: 0 of/ }).click()
    await wayIn(page, 'Take: Rating plate, the last digits of the serial number covered').setInputFiles(await shot('gray')) // prettier-ignore
    await page.getByRole('button', { name: /^Shots that sell it: 1 of/ }).waitFor()
    await settled(page)
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    const { notes } = await machineOnBench(page, state.id)
    expect(notes.filter(({ content }) => content.kind === 'photo')).toHaveLength(4)

    await page.getByRole('button', { name: 'Strike out: Photograph, after', exact: true }).click()
    await page.getByRole('region', { name: 'Before and after' }).waitFor({ state: 'detached' })
    await page.close()
  })

  it('that are none are refused by name, and the others are kept', async () => {
    const page = await app.page(laptop, 'dark')
    const { state } = await putOnBench(page, {})
    await page.goto(`/machine/${state.id}/photos`)
    const text = { name: 'film.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no photograph') }
    await wayIn(page, 'Take or choose photographs').setInputFiles([text, await shot('olive')])
    await page.getByText('“film.jpg”: This is no photograph that can be read').waitFor()
    await page.getByRole('heading', { name: 'One photograph, newest first' }).waitFor()
    expect(await axeViolations(page)).toEqual([])
    await page.close()
  })
})
