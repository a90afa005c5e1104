import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { browserHere, phone } from './chromium.ts'
import { settled } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

describe.runIf(browserHere())('looking further while somebody reads', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('leaves the card as it is, and says what is better when it is', { timeout: 60_000 }, async () => {
    const page = await app.page(phone)
    const blueprint = (await (await page.request.get('/api/blueprints/bagged-cylinder')).json()) as { plate: object }
    const content = {
      kind: 'added',
      name: 'Read',
      blueprint: 'bagged-cylinder',
      plate: blueprint.plate,
      paidMinor: 0,
      currency: 'GBP',
      complaints: ['dead'],
    }
    await page.request.post('/api/bench/own/machines', { data: { id: 'read', content } })
    await page.goto('/machine/read')
    await settled(page)
    const strip = page.locator('dl.strip')
    const before = { card: await page.locator('.move-head h2').first().innerText(), money: await strip.innerText() }
    // Either the figures of the same move get better, or another move is offered beside the card.
    await expect
      .poll(
        async () => (await page.locator('.looked-further').count()) > 0 || (await strip.innerText()) !== before.money,
        { timeout: 40_000 },
      )
      .toBe(true)
    expect(await page.locator('.move-head h2').first().innerText()).toBe(before.card)
  })
})
