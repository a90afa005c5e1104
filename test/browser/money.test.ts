import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { blueprints } from '../../src/blueprint/library.ts'
import { putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { atRest, axeViolations, settled, sideways, visit } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { saidBeside } from './said-beside.ts'

const upright = blueprints.find(({ id }) => id === 'bagged-upright-two-motors')!
const patienceMs = 60_000

/** `−£3.49` → −349. */
const minorOf = (text: string): number => {
  const [, sign = '', pounds = ''] = /(−?)£([\d.]+)/.exec(text) ?? []
  return (sign === '' ? 1 : -1) * Math.round(Number(pounds) * 100)
}

/** The lines of the sum that is open inside this part of the page, and its total. */
const sumIn = async (page: Page, inside: string) => {
  const amounts = (await page.locator(`${inside} .sum-lines > li > .figure`).allInnerTexts()).map(minorOf)
  return { lines: amounts.slice(0, -1), total: amounts.at(-1) ?? NaN }
}

/** Lines are rounded one by one, each by half a penny at most. */
const addsUp = ({ lines, total }: { readonly lines: readonly number[]; readonly total: number }): void => {
  expect(lines.length).toBeGreaterThan(1)
  expect(Math.abs(lines.reduce((sum, one) => sum + one, 0) - total)).toBeLessThanOrEqual(Math.ceil(lines.length / 2))
}

describe.runIf(browserHere())('money on the Machine page', () => {
  let app: RunningApp
  let opened: Page
  let machine = ''
  beforeAll(async () => {
    app = await startApp()
    opened = await app.page(phone)
    const plate = upright.plate
    const added = { blueprint: upright.id, plate, complaints: ['dead' as const], missing: ['hose'] }
    machine = (await putOnBench(opened, added)).state.id
    await opened.goto('/practice')
    await settled(opened)
  })
  afterAll(() => app.stop())

  /** The page of the machine come to anew, with everything folded; what was worked out for it before is kept. */
  const atMachine = async (size: typeof phone | typeof laptop, colorScheme: 'light' | 'dark'): Promise<Page> => {
    await opened.setViewportSize(size)
    await opened.emulateMedia({ colorScheme })
    await visit(opened, '/practice')
    await visit(opened, `/machine/${machine}`, patienceMs)
    await atRest(opened)
    return opened
  }

  it('a tap on a figure opens its grounds, which add up to it', { timeout: 120_000 }, async () => {
    const page = await atMachine(phone, 'light')
    const carryOn = page.getByRole('button', { name: /why\?$/ }).last()
    const shown = minorOf(await carryOn.innerText())
    await carryOn.click()
    const sum = await sumIn(page, '.strip-why')
    addsUp(sum)
    expect(sum.total).toBe(shown)
    await page.getByText(/put in so far taken off/).waitFor()
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
  })

  it('each worth and each runner-up can be asked why', { timeout: 120_000 }, async () => {
    const page = await atMachine(phone, 'dark')
    await page.getByRole('button', { name: 'What it is worth' }).click()
    const worths = page.getByRole('list', { name: 'What it is worth' }).getByRole('button')
    const names = await worths.allInnerTexts()
    expect(names.map((name) => name.split('\n')[0])).toEqual([
      'If you carry on',
      'Repaired',
      'Sell working',
      'Sell for spares or repair',
      'Break for parts',
      'Scrap',
    ])
    const figures = await page.locator('.worth-line-head > .figure').allInnerTexts()
    for (const [at, figure] of figures.entries()) {
      await worths.nth(at).click()
      const inside = `.worth-lines > li:nth-child(${at + 1})`
      const sum = await sumIn(page, inside)
      expect(sum.total).toBe(minorOf(figure))
      if (sum.lines.length > 1) addsUp(sum)
      expect(await page.locator(`${inside} .sum-sources li`).count()).toBeGreaterThan(0)
    }
    await page.getByRole('button', { name: 'Other moves' }).click()
    const why = page.getByRole('button', { name: /^Why does it cost that/ }).first()
    await why.click()
    const less = await sumIn(page, '.less-sum')
    expect(less.total).toBeLessThan(0)
    expect(Math.abs(less.lines.reduce((total, one) => total + one, 0) - less.total)).toBeLessThanOrEqual(1)
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
  })

  it(
    'a price is changed by a note, holds at once, and is struck out like any other',
    { timeout: 120_000 },
    async () => {
      const page = await atMachine(phone, 'light')
      await page.getByRole('button', { name: 'What it is worth' }).click()
      const repaired = page.getByRole('list', { name: 'What it is worth' }).getByRole('button', { name: /^Repaired/ })
      const before = minorOf(await repaired.innerText())
      await page.getByRole('button', { name: 'Change prices or your hour' }).click()
      const form = page.getByRole('form', { name: 'Prices and your hour' })
      await form.getByRole('button', { name: 'Note it' }).click()
      await form.getByText(/Neither a price nor the worth of an hour is given/).waitFor()
      await form.getByLabel('Sold working').fill('a lot')
      await form.getByRole('button', { name: 'Note it' }).click()
      await form.getByText(/“a lot” is not an amount of money/).waitFor()
      await form.getByLabel('Sold working').fill('200.00')
      await form.getByLabel('One part on its own').selectOption('suction-motor')
      await form.getByLabel('That part fetches').fill('33.00')
      await form.getByRole('button', { name: 'Note it' }).click()
      await page.getByText('Reckoned with: sold working £200.00; suction motor £33.00').first().waitFor()
      await settled(page, patienceMs)
      const after = minorOf(await repaired.innerText())
      expect(after).toBeGreaterThan(before)
      await repaired.click()
      await page
        .getByText(/^Price set by you on \d+ \w+ \d{4}$/)
        .first()
        .waitFor()
      await page.getByText(/^£200.00, set by you on/).waitFor()
      await page.getByRole('button', { name: /^Strike out: Reckoned with/ }).click()
      await page.getByText(/^£200.00, set by you on/).waitFor({ state: 'detached' })
      await settled(page, patienceMs)
      expect(minorOf(await repaired.innerText())).toBe(before)
    },
  )
})

describe.runIf(browserHere())('settings', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('are kept, and a new machine takes them over', async () => {
    const page = await app.page(phone)
    await page.goto('/')
    await page.getByRole('link', { name: 'Settings' }).click()
    const hour = page.getByLabel('Your hour is worth')
    expect(await hour.inputValue()).toBe('8.00')
    await hour.fill('9,5x')
    await page.getByRole('button', { name: 'Keep these' }).click()
    await page.getByText(/“9,5x” is not an amount of money/).waitFor()
    await hour.fill('9,50')
    await page.getByLabel('Money', { exact: true }).selectOption('EUR')
    await page.getByRole('button', { name: 'At most one machine in five may lose money' }).click()
    await page.getByText(/It costs you: less money on average/).waitFor()
    expect(await page.getByLabel('Region').inputValue()).toBe('UK')
    await page.getByLabel('Region').selectOption({ label: 'The European Union' })
    const name = page.getByLabel('Your name, for safety records')
    await name.fill('x'.repeat(121))
    await page.getByRole('button', { name: 'Keep these' }).click()
    expect(await saidBeside(name)).toContain('a name has 120 letters at most')
    await name.fill(' A. Tester ')
    await page.getByRole('button', { name: 'Keep these' }).click()
    await page.getByText('Kept.', { exact: true }).waitFor()
    expect(await (await page.request.get('/api/settings')).json()).toEqual({
      hourMinor: 950,
      currency: 'EUR',
      attitude: 'cautious',
      region: 'EU',
      checkedBy: 'A. Tester',
      costs: {},
      keepOriginals: false,
    })
    await page.goto('/add')
    await page.getByLabel('Your hour').waitFor()
    await page.waitForFunction(() => document.querySelector('select:has(option)') !== null)
    expect(await page.getByLabel('Your hour').inputValue()).toBe('9.50')
    expect(await page.getByLabel('Money', { exact: true }).inputValue()).toBe('EUR')
    await page.close()
  })

  it('say what things cost with the source, take another figure, and put it back', async () => {
    const page = await app.page(phone)
    const kept = async () => ((await (await page.request.get('/api/settings')).json()) as { costs: unknown }).costs
    const keep = () => page.getByRole('button', { name: 'Keep these' }).click()
    await page.request.patch('/api/settings', { data: { currency: 'GBP', region: 'UK' } })
    await page.goto('/settings')
    await page.getByRole('button', { name: 'What things cost' }).click()
    // The tax office's 45p a mile over the international mile of 1.609344 km: 28p.
    expect(await page.getByRole('textbox', { name: 'Driving a kilometre' }).inputValue()).toBe('0.28')
    await page.getByText(/45p a mile up to 10,000 miles a year \(retrieved\)/).waitFor()
    const postage = page.getByRole('textbox', { name: 'Postage of a part, where you pay it' })
    await postage.fill('dear')
    await keep()
    expect(await saidBeside(postage)).toContain('“dear” cannot be read. Write an amount such as 0.45.')
    await postage.fill('3.50')
    await page.getByRole('textbox', { name: 'Fee of selling a part by post' }).fill('12.5')
    await page.getByRole('textbox', { name: 'Sound machines sold that come back' }).fill('101')
    await keep()
    expect(await saidBeside(page.getByRole('textbox', { name: 'Sound machines sold that come back' }))).toContain(
      '“101” cannot be read. Write percent from 0 to 100, such as 12.5.',
    )
    await page.getByRole('button', { name: /^Put back to 6 %/ }).click()
    await keep()
    await page.getByText('Kept.', { exact: true }).waitFor()
    expect(await kept()).toEqual({ postageMinor: 350, partFeeShare: 0.125 })
    await page.reload()
    await page.getByRole('button', { name: 'What things cost' }).click()
    expect(await postage.inputValue()).toBe('3.50')
    await page.getByRole('button', { name: /^Put back to £0\.00/ }).click()
    expect(await postage.evaluate((field) => field === document.activeElement)).toBe(true)
    await keep()
    await page.getByText('Kept.', { exact: true }).waitFor()
    expect(await kept()).toEqual({ partFeeShare: 0.125 })
    await page.close()
  })

  it.each([
    ['light at 360', phone, 'light'],
    ['dark at 1280', laptop, 'dark'],
  ] as const)('have no fault that axe-core sees and fit the window, %s', async (_name, size, theme) => {
    const page = await app.page(size, theme)
    await page.goto('/settings')
    await page.getByLabel('Your hour is worth').waitFor()
    await page.getByRole('button', { name: 'What things cost' }).click()
    await page.getByRole('textbox', { name: 'Driving a kilometre' }).waitFor()
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    await page.close()
  })
})
