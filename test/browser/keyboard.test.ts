import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { settled } from './looks.ts'
import { picturesOf, pressPictures } from './pick-on-page.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { focusUnseen, hasFocus, tabTo } from './tabbing.ts'
import { upright } from '../story/bench-job.ts'

/** What a hand does, counted by the page itself. */
type Hand = { taps: number; keys: number }

const countHand = async (page: Page): Promise<() => Promise<Hand>> => {
  await page.addInitScript(() => {
    const hand: Hand = { taps: 0, keys: 0 }
    Object.assign(window, { hand })
    addEventListener('touchstart', () => (hand.taps += 1), true)
    addEventListener('keydown', () => (hand.keys += 1), true)
  })
  return () => page.evaluate(() => (window as unknown as { hand: Hand }).hand)
}

describe.runIf(browserHere())('by hand', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('keyboard only: adds a machine, enters a reading, strikes it out', { timeout: 60_000 }, async () => {
    const page = await app.page(laptop)
    const button = (name: string | RegExp) => page.getByRole('button', { name })
    await page.goto('/')
    await settled(page)
    await tabTo(page, page.getByRole('link', { name: 'Add a machine' }))
    await page.keyboard.press('Enter')
    await settled(page)
    expect(await hasFocus(page.getByRole('heading', { level: 1 }))).toBe(true)

    await pressPictures(picturesOf(page, upright), async (picture) => {
      await tabTo(page, picture)
      await page.keyboard.press('Enter')
    })
    await tabTo(page, button(/^Dead/))
    await page.keyboard.press('Space')
    await tabTo(page, page.getByLabel('Paid'))
    await page.keyboard.type('4.50')
    await tabTo(page, page.getByLabel('What the seller said'))
    await page.keyboard.type('It just stopped')
    await tabTo(page, button('Put it on the bench'))
    await page.keyboard.press('Enter')
    await page.waitForURL(/\/machine\//)
    await settled(page)

    await tabTo(page, button('Other moves'))
    await page.keyboard.press('Enter')
    await tabTo(page, page.getByLabel('Anything in this blueprint'))
    await page.keyboard.type('Pin to pin, switched on')
    await tabTo(page, button('Put it on the card'))
    await page.keyboard.press('Space')
    await tabTo(page, page.getByLabel('The meter shows'), 'Shift+Tab')
    await page.keyboard.type('255')
    await page.keyboard.press('Enter')
    await page.getByRole('region', { name: 'Bench notes' }).getByText('Pin to pin, switched on: 255 Ω').waitFor()
    await settled(page)

    await tabTo(page, button(/^Strike out: Pin to pin, switched on: 255 Ω/))
    await page.keyboard.press('Space')
    await page.locator('s', { hasText: 'Pin to pin, switched on: 255 Ω' }).waitFor()
    const { state, lines } = await machineOnBench(page, new URL(page.url()).pathname.split('/').at(-1)!)
    expect(state).toMatchObject({ paidMinor: 450, claimed: { complaints: ['dead'], words: 'It just stopped' } })
    expect(lines.map((line) => [line.kind, line.struck])).toEqual([
      ['added', false],
      ['reading', true],
      ['struck', false],
    ])
    await page.close()
  })

  it('the way past the head is the first stop', async () => {
    const page = await app.page(laptop)
    await page.goto('/practice')
    await settled(page)
    await page.keyboard.press('Tab')
    expect(await hasFocus(page.getByRole('link', { name: 'Skip to the page' }))).toBe(true)
    expect(await focusUnseen(page)).toBeNull()
    await page.evaluate(() => ((document.activeElement as HTMLElement).style.outline = 'none'))
    expect(await focusUnseen(page)).toContain('Skip to the page')
    await page.keyboard.press('Enter')
    await tabTo(page, page.getByLabel('Blueprint'))
    await page.close()
  })

  it('phone: a machine is on the bench in at most twelve taps, in under a minute', async () => {
    const page = await app.browser.newPage({ viewport: phone, hasTouch: true, isMobile: true, baseURL: app.address })
    const hand = await countHand(page)
    await page.goto('/')
    await settled(page)
    await page.getByRole('link', { name: 'Add a machine' }).tap()
    await settled(page)
    await pressPictures(picturesOf(page, upright), (picture) => picture.tap())
    await page.getByRole('button', { name: /^Dead/ }).tap()
    await page.getByRole('button', { name: /^Smell/ }).tap()
    await page.getByLabel('Paid').tap()
    await page.keyboard.press('Backspace')
    await page.keyboard.type('4')
    await page.getByLabel('What the seller said').tap()
    await page.keyboard.type('stopped')
    await page.getByLabel('Name').tap()
    await page.keyboard.type('!')
    await page.getByRole('button', { name: 'Put it on the bench' }).tap()
    await page.waitForURL(/\/machine\//)
    const { taps, keys } = await hand()
    expect(taps).toBeGreaterThan(0)
    expect(taps).toBeLessThanOrEqual(12)
    // Keystroke-level model (Card, Moran, Newell, 1980; from memory): to make up one's mind 1.35 s, to point 1.1 s,
    // a key on a strange keyboard 1.2 s.
    expect(taps * (1.35 + 1.1 + 1.2) + keys * 1.2).toBeLessThan(60)
    const { state } = await machineOnBench(page, new URL(page.url()).pathname.split('/').at(-1)!)
    expect(state).toMatchObject({ paidMinor: 400, claimed: { complaints: ['dead', 'smell'], words: 'stopped' } })
    await page.close()
  })
})
