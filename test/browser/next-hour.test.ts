import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tinyBlueprint } from '../support/tiny-blueprint.ts'
import { gatesPassed, runsWell } from '../support/notes.ts'
import { putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, settled, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

describe.runIf(browserHere())('the next hour', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
    const page = await app.page(laptop)
    // One that pays well to repair, one that hardly does, one that has been proved to work.
    const tiny = async (name: string, workingMinor: { low: number; high: number }) => {
      const data = { ...tinyBlueprint, id: name, name, worth: { ...tinyBlueprint.worth, workingMinor } }
      const { id } = (await (await page.request.post('/api/blueprints', { data })).json()) as { id: string }
      return { name, blueprint: id, plate: tinyBlueprint.plate }
    }
    await putOnBench(page, { ...(await tiny('dear', { low: 9000, high: 11_000 })), complaints: ['dead'] })
    await putOnBench(page, await tiny('works', { low: 3000, high: 5000 }), ...gatesPassed, runsWell)
    await putOnBench(page, { ...(await tiny('fair', { low: 3000, high: 5000 })), complaints: ['dead'] })
    await page.close()
  })
  afterAll(() => app.stop())

  it.each([
    ['light', phone.width, phone],
    ['dark', laptop.width, laptop],
  ] as const)('orders the bench, %s at %i', async (theme, _width, size) => {
    const page = await app.page(size, theme)
    await page.goto('/')
    await settled(page, 60_000)
    const hour = page.getByRole('region', { name: 'The next hour' })
    expect(await hour.getByRole('heading').innerText()).toMatch(/What should I do\s+with the next hour\?/)
    expect(await hour.locator('.ledger-name').allInnerTexts()).toEqual(['dear', 'fair'])
    const rates = (await hour.locator('.ledger').innerText()).matchAll(/an hour brings £([\d.]+)/g)
    const [first, second] = [...rates].map(([, figure]) => Number(figure))
    expect(first).toBeGreaterThan(second)
    expect(await hour.locator('> p').innerText()).toMatch(/^dear: /)
    const ready = page.getByRole('region', { name: 'Ready to go' })
    expect(await ready.locator('.ledger-name').allInnerTexts()).toEqual(['works'])
    expect(await ready.innerText()).toContain('Next: Sell working')
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    await page.close()
  })

  it('shows the machines as they came in until all answers are there', async () => {
    const page = await app.page(phone)
    let letGo: () => void = () => undefined
    const held = new Promise<void>((resolve) => (letGo = resolve))
    // The document of one machine is kept back: its answer cannot be there.
    const { machines } = (await (await page.request.get('/api/bench/own/machines')).json()) as {
      machines: readonly { id: string; name: string }[]
    }
    const fair = machines.find(({ name }) => name === 'fair')!
    await page.route(`**/api/bench/own/machines/${fair.id}`, async (route) => {
      await held
      await route.continue()
    })
    await page.goto('/')
    const inHand = page.getByRole('list', { name: 'In hand' })
    await page.getByRole('button', { name: 'Order what is worked out' }).waitFor()
    expect(await inHand.locator('.ledger-name').allInnerTexts()).toEqual(['fair', 'works', 'dear'])
    await page.getByRole('button', { name: 'Order what is worked out' }).click()
    expect(await page.getByRole('region', { name: 'The next hour' }).locator('.ledger-name').allInnerTexts()).toEqual([
      'dear',
    ])
    expect(await inHand.locator('.ledger-name').allInnerTexts()).toEqual(['fair'])
    letGo()
    await settled(page, 60_000)
    expect(await inHand.count()).toBe(0)
    await page.close()
  })
})
