import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, phone } from './chromium.ts'
import { axeViolations, settled, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const patienceMs = 60_000

describe.runIf(browserHere())('cleaning', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const atCleaning = async (theme: 'light' | 'dark') => {
    const page = await app.page(phone, theme)
    const { state } = await putOnBench(page, { name: 'Heather grey upright' })
    await page.goto(`/machine/${state.id}/clean`)
    await page.getByRole('heading', { name: /^Then, best money first/ }).waitFor({ timeout: patienceMs })
    return { page, id: state.id }
  }
  const looksRight = async (page: Page): Promise<void> => {
    await settled(page)
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
  }
  const first = (page: Page) => page.getByRole('list', { name: 'First' })

  it(
    'is noted on a phone, dries on, is remembered on the machine’s page and found dry',
    { timeout: 120_000 },
    async () => {
      const { page, id } = await atCleaning('light')
      await looksRight(page)
      await first(page)
        .getByRole('button', { name: /New pre-motor filter/ })
        .click()
      await first(page).getByRole('button', { name: 'Or: wash the pre-motor filter' }).click()
      const form = page.getByRole('form', { name: 'Done: Wash the pre-motor filter' })
      await form.getByRole('button', { name: 'Cold or damp: 48 h' }).click()
      await form.getByRole('button', { name: /^Done: / }).click()
      const drying = page.getByRole('region', { name: 'Drying' })
      await drying.getByText(/^dry at \d\d:\d\d on /).waitFor()
      // Done in the place of a new one, so neither is left to do.
      await first(page)
        .getByRole('button', { name: /New pre-motor filter/ })
        .waitFor({ state: 'detached' })
      const [, note] = (await machineOnBench(page, id)).notes
      expect(note?.content).toMatchObject({ kind: 'cleaned', task: 'wash-filter', minutes: 5, dryHours: 48 })
      const download = page.waitForEvent('download')
      await drying.getByRole('link', { name: 'Remind me: into the calendar' }).click()
      expect((await download).suggestedFilename()).toBe('drying.ics')
      await looksRight(page)

      await page.goto(`/machine/${id}`)
      await page.getByRole('region', { name: 'Drying' }).getByText('Not dry yet').waitFor({ timeout: patienceMs })
      await page.getByRole('link', { name: 'Say that it is dry' }).click()
      await page.getByRole('button', { name: /^It is dry: / }).click()
      await drying.waitFor({ state: 'detached' })
      expect((await machineOnBench(page, id)).state.drying).toEqual([])
      await page.close()
    },
  )

  it('keeps notes here where the bench does not answer, and goes on by them', { timeout: 120_000 }, async () => {
    const { page, id } = await atCleaning('dark')
    await page.context().setOffline(true)
    await first(page)
      .getByRole('button', { name: /Empty it and blow it out/ })
      .click()
    const form = page.getByRole('form', { name: 'Done: Empty it and blow it out, outside' })
    await form.getByLabel('Materials').fill('little')
    await form.getByRole('button', { name: /^Done: / }).click()
    await form.getByText(/not an amount of money/).waitFor()
    await form.getByLabel('Materials').fill('0.35')
    await form.getByRole('button', { name: /^Done: / }).click()
    await page.getByText('One note is not sent yet.').waitFor()
    await first(page)
      .getByRole('button', { name: /Empty it and blow it out/ })
      .waitFor({ state: 'detached' })
    await page.getByRole('button', { name: /Done: 1, 8 min, £0\.35/ }).waitFor()
    await looksRight(page)
    await page.context().setOffline(false)
    await page.getByText('One note is not sent yet.').waitFor({ state: 'detached', timeout: 20_000 })
    const looks = page.getByRole('form', { name: 'Grade a part' })
    await looks.getByRole('button', { name: 'Before', exact: true }).click()
    await looks.getByRole('button', { name: 'C', exact: true }).click()
    await looks.getByRole('button', { name: 'Note the grade' }).click()
    // A worn casing brings the polish onto the list.
    await page.getByRole('button', { name: /Rub out scuffs, polish/ }).waitFor()
    const { state, notes } = await machineOnBench(page, id)
    expect(state.spentMinor).toBe(35)
    expect(notes.map(({ content }) => content.kind)).toEqual(['added', 'cleaned', 'graded'])
    await page.close()
  })
})
