import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../src/bench/contract.ts'
import { blueprints } from '../../src/blueprint/library.ts'
import { putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { atRest, axeViolations, settled, sideways, visit } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { tabTo } from './tabbing.ts'

const upright = blueprints.find(({ id }) => id === 'bagged-upright-one-motor')!
const patienceMs = 60_000

describe.runIf(browserHere())('what then', () => {
  let app: RunningApp
  let machine: MachineDocument
  let opened: Page
  beforeAll(async () => {
    app = await startApp()
    opened = await app.page(laptop)
    machine = await putOnBench(opened, { blueprint: upright.id, plate: upright.plate, complaints: ['dead'] })
    await opened.goto('/practice')
    await settled(opened)
  })
  afterAll(() => app.stop())

  /** The page of the machine come to anew, with everything folded; what was worked out for it before is kept. */
  const atMachine = async (size: typeof phone | typeof laptop, colorScheme: 'light' | 'dark'): Promise<Page> => {
    await opened.setViewportSize(size)
    await opened.emulateMedia({ colorScheme })
    await visit(opened, '/practice')
    await visit(opened, `/machine/${machine.state.id}`, patienceMs)
    await atRest(opened)
    return opened
  }
  const tree = (page: Page) => page.getByRole('list', { name: /^What may come of: / })
  const percents = async (page: Page): Promise<number> => {
    const texts = await tree(page).first().locator('> li .then-result .figure').allInnerTexts()
    return texts.reduce((sum, text) => sum + (text.includes('under') ? 0.5 : parseInt(text, 10)), 0)
  }

  it.each([
    ['light', phone.width, phone],
    ['dark', laptop.width, laptop],
  ] as const)('unfolds by keyboard, %s at %i', { timeout: 120_000 }, async (theme, _width, size) => {
    const page = await atMachine(size, theme)
    expect(await tree(page).count()).toBe(0)
    await tabTo(page, page.getByRole('button', { name: 'What then?' }))
    await page.keyboard.press('Enter')
    await settled(page, patienceMs)
    // Whole numbers of per cent: each may be half a per cent off.
    expect(Math.abs((await percents(page)) - 100)).toBeLessThanOrEqual(3)
    expect(await page.locator('.then-stop').count()).toBeGreaterThan(0)

    const branch = page.locator('button.then-next').first()
    await tabTo(page, branch)
    await page.keyboard.press('Enter')
    await settled(page, patienceMs)
    expect(await branch.getAttribute('aria-expanded')).toBe('true')
    expect(await page.getByRole('listitem').locator('.then').count()).toBeGreaterThan(0)
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    await branch.press('Space')
    expect(await page.getByRole('listitem').locator('.then').count()).toBe(0)
  })

  it('is worked out aside, and left when a note comes in', { timeout: 120_000 }, async () => {
    const page = await app.page(phone)
    const other = await putOnBench(page, { complaints: ['dead'] })
    await page.goto(`/machine/${other.state.id}`)
    await settled(page, patienceMs)
    expect(page.workers()).toHaveLength(1)
    await page.getByRole('button', { name: 'What then?' }).click()
    await tree(page).waitFor()
    // A worker of its own: the view never waits behind it.
    expect(page.workers()).toHaveLength(2)
    await page.getByRole('button', { name: 'open', exact: true }).click()
    await page.locator('.last-note').waitFor()
    await settled(page, patienceMs)
    expect(await page.getByRole('button', { name: 'What then?' }).getAttribute('aria-expanded')).toBe('false')
    await page.close()
  })

  it('says how sure the figure is, and what it means on tap', async () => {
    const page = await atMachine(phone, 'light')
    const sure = page.getByRole('button', { name: /^certain to within £\d+\.\d\d$/ })
    const [, gap] = /£([\d.]+)/.exec(await sure.innerText()) ?? []
    await sure.click()
    const words = await page.getByText('is what this plan brings on average').innerText()
    const [lower, upper] = [...words.matchAll(/£(\d+\.\d\d)/g)].map(([, figure]) => Number(figure))
    expect(Math.abs(upper - lower - Number(gap))).toBeLessThan(0.011)
    expect(await axeViolations(page)).toEqual([])
    expect((await sideways(page)).scrolledPx).toBe(0)
  })

  it('tells the next move that the card shows once that result is entered', { timeout: 120_000 }, async () => {
    const page = await atMachine(phone, 'light')
    await page.getByRole('button', { name: 'What then?' }).click()
    await settled(page, patienceMs)
    const first = tree(page)
      .first()
      .locator('> li')
      .filter({ hasText: /reads open/ })
      .first()
    const told = await first.locator('.then-name').first().innerText()
    await page.getByRole('button', { name: 'open', exact: true }).click()
    await page.locator('.last-note').waitFor()
    await settled(page, patienceMs)
    const shown = page.getByRole('region', { name: 'Next move' }).getByRole('heading', { level: 2 })
    expect(told.split(':')[0]).toBe((await shown.innerText()).trim())
    expect(await tree(page).count()).toBe(0)
  })
})
