import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const kind = 'bagged-upright-two-motors'
const patienceMs = 60_000

describe.runIf(browserHere())('Worth buying?', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  /** The page with a kind chosen, as the one weighed last. */
  const atAdvert = async (size: typeof phone | typeof laptop, theme: 'light' | 'dark'): Promise<Page> => {
    const page = await app.page(size, theme)
    await page.goto('/buy')
    await page.evaluate((id) => {
      localStorage.removeItem('thrum-buy')
      localStorage.setItem('thrum-kinds', JSON.stringify([id]))
    }, kind)
    await page.reload()
    await page.getByRole('group', { name: 'Weighed last' }).getByRole('button').first().click()
    return page
  }

  /** The answer once it has settled. */
  const answer = async (page: Page): Promise<string> => {
    const strip = page.locator('section.buy-strip[aria-busy="false"]')
    await page.waitForTimeout(300)
    await strip.waitFor({ timeout: patienceMs })
    return (await strip.locator('.buy-figure').innerText()).trim()
  }

  const type = async (page: Page): Promise<void> => {
    await page.getByLabel('What the seller says').fill('Just stopped, one minute fine the next nothing')
    await page.getByLabel('Asks').fill('15')
    await page.getByLabel('How far, one way').fill('4')
  }

  it('weighed, answered, kept, bought: the machine has what the seller said', { timeout: 240_000 }, async () => {
    const page = await atAdvert(phone, 'light')
    await type(page)
    const before = await answer(page)
    expect(before).toMatch(/^(£\d+\.\d\d|Not even for nothing)$/)
    await page.getByRole('button', { name: /^Dead/ }).first().waitFor()
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    const asks = page.getByRole('region', { name: 'Ask the seller' })
    await asks.getByRole('group').first().getByRole('button').first().click()
    await asks.getByRole('list', { name: 'Answered' }).waitFor()
    const after = await answer(page)
    await asks.getByRole('button', { name: /Take back/ }).click()
    expect(await answer(page)).toBe(before)
    await asks.getByRole('group').first().getByRole('button').first().click()
    expect(await answer(page)).toBe(after)
    await page.getByLabel('Name').fill('Grey one by the gate')
    await page.getByRole('button', { name: 'Keep this advert' }).click()
    await page.getByRole('heading', { name: 'Grey one by the gate' }).waitFor()
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    await page.getByLabel('For', { exact: true }).fill('12')
    await page.getByRole('button', { name: 'Put it on the bench' }).click()
    await page.waitForURL(/\/machine\//)
    const { state, notes } = await machineOnBench(page, page.url().split('/').at(-1) ?? '')
    expect(state).toMatchObject({ name: 'Grey one by the gate', paidMinor: 1200, source: 'classified' })
    expect(notes[0].content).toMatchObject({ kind: 'added', answers: [{}], complaints: ['dead'] })
    await page.close()
  })

  it(
    'says that it is not kept when the bench does not answer, and keeps what is typed',
    { timeout: 240_000 },
    async () => {
      const page = await atAdvert(laptop, 'dark')
      await type(page)
      const before = await answer(page)
      await page.context().setOffline(true)
      await page.getByLabel('How far, one way').fill('30')
      expect(await answer(page)).not.toBe(before)
      await page.getByRole('button', { name: 'Keep this advert' }).click()
      await page.getByText('Not kept yet').waitFor()
      expect(await axeViolations(page)).toEqual([])
      await page.context().setOffline(false)
      await page.reload()
      expect(await page.getByLabel('How far, one way').inputValue()).toBe('30')
      await page.close()
    },
  )
})
