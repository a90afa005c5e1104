import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { saidBeside } from './said-beside.ts'

const patienceMs = 60_000

const poundsOf = (text: string): number => Number(/£([\d.]+)/.exec(text)?.[1] ?? NaN)

describe.runIf(browserHere())('what to ask', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const atAsking = async (size: typeof phone | typeof laptop, theme: 'light' | 'dark') => {
    const page = await app.page(size, theme)
    const { state } = await putOnBench(page, { missing: ['hose'] })
    await page.goto(`/machine/${state.id}/asking`)
    await page.locator('.asking-price .figure').waitFor({ timeout: patienceMs })
    return { page, state }
  }
  const price = async (page: Page): Promise<number> => {
    await page.locator('[aria-busy=true]').first().waitFor({ state: 'detached', timeout: patienceMs })
    return poundsOf(await page.locator('.asking-price .figure').innerText())
  }
  const movesFrom = async (page: Page, before: number): Promise<number> => {
    await page.waitForFunction(
      (was) => {
        const text = document.querySelector('.asking-price .figure')?.textContent ?? ''
        return Number(/£([\d.]+)/.exec(text)?.[1]) !== was
      },
      before,
      { timeout: patienceMs },
    )
    return price(page)
  }

  it('ticks and grades move the price', { timeout: 120_000 }, async () => {
    const { page } = await atAsking(phone, 'light')
    const start = await price(page)
    await page.getByRole('checkbox', { name: /Hose.*which is missing/ }).check()
    const whole = await movesFrom(page, start)
    expect(whole).toBeGreaterThan(start)
    await page.getByRole('button', { name: 'D', exact: true }).first().click()
    expect(await movesFrom(page, whole)).toBeLessThan(whole)
    await page.close()
  })

  it('a price seen counts, is listed with what it counted, and is struck out', { timeout: 120_000 }, async () => {
    const { page } = await atAsking(phone, 'dark')
    await page.getByText("No sale to compare with yet: this is the blueprint's range alone").waitFor()
    await page.getByRole('button', { name: 'A price seen' }).click()
    const form = page.getByRole('form', { name: 'A price seen' })
    await form.getByRole('button', { name: 'Enter this price' }).click()
    expect(await saidBeside(form.getByLabel('Price'))).toContain('Nothing is entered here. Write it like 45.00.')
    await form.getByLabel('Price').fill('180')
    await form.getByLabel('Where', { exact: true }).fill('market stall')
    await form.getByRole('button', { name: 'Enter this price' }).click()
    await page.getByText('From 1 price you entered.').waitFor({ timeout: patienceMs })
    await page.getByText(/^Speaks for its kind/).waitFor()
    await page.getByRole('button', { name: 'Strike out: market stall' }).click()
    await page.getByText('None yet. Enter one that you saw').waitFor({ timeout: patienceMs })
    await page.close()
  })

  it('a listing and the price to reckon with are noted', { timeout: 120_000 }, async () => {
    const { page, state } = await atAsking(phone, 'light')
    const form = page.getByRole('form', { name: 'It is offered' })
    await form.getByLabel('It is listed at').fill('95')
    await form.getByLabel('Where it is listed').fill('shed door')
    await form.getByRole('button', { name: 'Note that it is listed' }).click()
    await page.getByText(/^Offered at £95\.00, shed door, since/).waitFor()
    const reckon = page.getByRole('button', { name: /^Reckon with £/ })
    const reckoned = poundsOf(await reckon.innerText())
    await reckon.click()
    await expect
      .poll(async () => (await machineOnBench(page, state.id)).state.prices.working?.minor, { timeout: 20_000 })
      .toBe(Math.round(reckoned * 100))
    expect((await machineOnBench(page, state.id)).state.listed).toMatchObject([{ priceMinor: 9500, to: null }])
    await page.getByRole('link', { name: 'Back to the machine' }).click()
    await page.getByRole('link', { name: 'What to ask' }).waitFor()
    await page.close()
  })

  it.each([
    ['light at 360', phone, 'light'],
    ['dark at 1280', laptop, 'dark'],
  ] as const)(
    'has no fault that axe-core sees and fits the window, %s',
    { timeout: 120_000 },
    async (_n, size, theme) => {
      const { page } = await atAsking(size, theme)
      for (const fold of ['The same in figures', 'A price seen', 'Where these come from', 'What this rests on'])
        await page.getByRole('button', { name: fold }).click()
      await page.locator('.asking-plot').nth(1).waitFor({ timeout: patienceMs })
      expect(await axeViolations(page)).toEqual([])
      expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
      await page.close()
    },
  )
})
