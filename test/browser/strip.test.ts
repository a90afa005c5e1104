import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, contrastViolations, settled, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true })
const form = (page: Page, name: string) => page.getByRole('form', { name })

/** Looks at the page as it stands: no fault by axe-core in either theme, and nothing to scroll to sideways. */
const looksRight = async (page: Page): Promise<void> => {
  await settled(page)
  expect(await axeViolations(page)).toEqual([])
  expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await contrastViolations(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'light' })
}

describe.runIf(browserHere())('stripping a machine down', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('takes covers and a part off on a phone, puts them back, and says which screw is left over', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(page, {})
    await page.goto(`/machine/${state.id}/strip`)
    await page.getByLabel('The fixings go in').fill('pot 1')
    await button(page, 'Off, nothing held it: Bag door').click()
    await button(page, 'Off, as it says: Back cover').click()
    await page.getByText('5 × TX15 plastic 4 × 20 in pot 1').waitFor()
    await page
      .locator('input[type="file"][aria-label="Photograph this step: Back cover"]')
      .setInputFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: await picture() })
    await page.getByRole('list', { name: 'Photographs: Back cover' }).getByRole('img').waitFor()

    // The blueprint says two screws.
    await button(page, 'Otherwise: Board cover').click()
    await button(page, 'One fewer').click()
    await button(page, 'Another kind of fixing').click()
    await page.getByLabel('Kind', { exact: true }).nth(1).fill('felt washer')
    await looksRight(page)
    await button(page, 'Off, like this').click()
    await button(page, 'Out, nothing held it: Control board').click()
    await page.getByText('Taken out: control board').waitFor()
    await page
      .getByText('one TX15 plastic screw 3.5 × 12 and a felt washer here, where the blueprint says two')
      .waitFor()

    await button(page, 'Put back').click()
    await form(page, 'Put back: Control board').getByRole('button', { name: 'Back in' }).click()
    const board = form(page, 'Put back: Board cover')
    await board.getByRole('checkbox', { name: '1 × TX15 plastic 3.5 × 12' }).check()
    await board.getByRole('button', { name: 'Back on, 1 of 2 fixings' }).click()
    const back = form(page, 'Put back: Back cover')
    await back.getByRole('img').waitFor()
    await back.getByRole('checkbox').check()
    await back.getByRole('button', { name: 'One fewer' }).click()
    await looksRight(page)
    await back.getByRole('button', { name: 'Back on, 4 of 5 fixings' }).click()
    await form(page, 'Put back: Bag door').getByRole('button', { name: 'Back on' }).click()
    await page.getByText('One TX15 plastic screw 4 × 20 and a felt washer are left over.').waitFor()

    await page.goto(`/machine/${state.id}`)
    await page.getByRole('region', { name: 'Not all is back' }).getByText('are left over.').waitFor()
    await page.getByRole('link', { name: 'Look at the strip-down' }).click()
    await button(page, 'Went back in after all: Back cover').click()
    await page.getByText('One felt washer is left over.').waitFor()
    const { notes } = await machineOnBench(page, state.id)
    expect(notes.findLast(({ content }) => content.kind === 'closed')?.content).toMatchObject({
      cover: 'back-cover',
      fixings: [
        { count: 4, place: 'pot 1' },
        { count: 1, place: 'pot 1' },
      ],
    })
    await page.close()
  })

  it('offers what is different to the blueprint, and shows the way down to a part', async () => {
    const page = await app.page(laptop)
    const fixings = [{ count: 2, kind: 'TX15 plastic 4 × 20' }]
    const { state } = await putOnBench(
      page,
      { name: 'Two screws' },
      { kind: 'opened', cover: 'bag-door', minutes: 0.2 },
      { kind: 'opened', cover: 'back-cover', minutes: 6, fixings },
    )
    await page.goto(`/machine/${state.id}/strip`)
    await page.getByLabel('Down to').selectOption({ label: 'Suction motor' })
    await page.getByRole('region', { name: 'On the way to it: 3' }).getByText('Motor cover', { exact: true }).waitFor()
    await looksRight(page)
    await button(page, 'Offer to the blueprint').click()
    await page.getByRole('region', { name: 'Different on this one' }).waitFor({ state: 'detached' })
    const { state: after } = await machineOnBench(page, state.id)
    const kept = await (await page.request.get(`/api/blueprints/${after.blueprint}`)).json() as { covers: { id: string; fixings: unknown }[] } // prettier-ignore
    expect(kept.covers.find(({ id }) => id === 'back-cover')?.fixings).toEqual(fixings)
    await page.close()
  })
})

const picture = (): Promise<Buffer> =>
  sharp({ create: { width: 800, height: 600, channels: 3, background: 'sienna' } })
    .jpeg()
    .toBuffer()
