import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { faultRates, machineModel, resultText } from '../../src/machine/index.ts'
import { rateText } from '../../src/web/blueprints/of-part.ts'
import { upright } from '../story/bench-job.ts'
import { putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, openFolds, settled, sideways, watch } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const path = `/blueprints/${upright.id}`
const targetPx = 44

describe.runIf(browserHere())('blueprints', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const wrong = async (page: Page): Promise<readonly string[]> => {
    await settled(page)
    const { scrolledPx, sticksOut } = await sideways(page)
    return [...(await axeViolations(page)), ...(scrolledPx === 0 ? [] : [`scrolls ${scrolledPx} px`]), ...sticksOut]
  }

  /** Links and buttons of the page that a finger would miss. */
  const tooSmall = (page: Page): Promise<readonly string[]> =>
    page.evaluate(
      (least) =>
        [...document.querySelectorAll('nav a, main button, main a:not(.ledger-line)')]
          .filter((element) => element.getBoundingClientRect().height < least)
          .map((element) => element.outerHTML.slice(0, 80)),
      targetPx,
    )

  it('lists the architectures; one opens, a part of it opens', async () => {
    const page = await app.page(phone)
    const { errors } = watch(page)
    await page.goto('/')
    await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name: 'Blueprints' }).click()
    const entry = page.getByRole('list', { name: 'Blueprints' }).getByRole('listitem').filter({ hasText: upright.name })
    await entry.getByText(upright.recognise[0] ?? '').waitFor()
    expect(await entry.locator('svg path').count()).toBeGreaterThan(upright.circuit.length / 2)
    await page.getByRole('link', { name: upright.name }).click()
    expect(new URL(page.url()).pathname).toBe(path)

    await settled(page)
    const part = upright.parts.find(({ id }) => id === 'suction-motor')!
    const fault = upright.faults.find((one) => one.part === part.id)!
    const repair = upright.repairs.find(({ removes }) => removes.includes(fault.id))!
    const parts = page.getByRole('region', { name: 'Parts' })
    expect(await parts.getByText(fault.name).count()).toBe(0)
    await parts.getByRole('button', { name: new RegExp(`^[−+]?\\s*${part.name}`) }).click()
    await settled(page)
    await parts.getByRole('heading', { name: fault.name, exact: true }).waitFor()
    const shown = await parts.innerText()
    const rate = faultRates(upright).find((one) => one.fault === fault.id)!
    for (const text of [part.does, fault.how, rateText(rate), ...rate.sources, repair.name])
      expect(shown).toContain(text)
    for (const option of repair.options) expect(shown).toContain(option.name)
    expect(errors).toEqual([])
    await page.close()
  })

  it('says what a sound machine reads on every meter check, plug out', async () => {
    const page = await app.page(laptop)
    await page.goto(path)
    await settled(page)
    const table = page.getByRole('region', { name: 'What a sound machine reads' })
    expect(await table.innerText()).toContain('Plug out')
    const rows = await table
      .locator('tbody tr')
      .evaluateAll((found) => found.map((row) => [...row.children].map(({ textContent }) => textContent)))
    const model = machineModel(upright, upright.plate)
    const meter = upright.checks.filter(({ kind }) => kind === 'meter')
    expect(rows).toEqual(meter.map((check) => [check.name, resultText(model, check, 0)]))
    await page.close()
  })

  it('is reached from a machine and from adding one', async () => {
    const page = await app.page(laptop)
    const { state } = await putOnBench(page, {})
    for (const [start, fold, link] of [
      [`/machine/${state.id}`, 'What the money rests on', upright.name],
      ['/add', 'How to know one', 'The whole blueprint'],
    ] as const) {
      await page.goto(start)
      await page.getByRole('button', { name: fold }).click()
      await page.getByRole('link', { name: link }).click()
      await page.getByRole('heading', { level: 1, name: upright.name }).waitFor()
    }
    await page.close()
  })

  it('says so when there is no such blueprint', async () => {
    const page = await app.page(phone)
    await page.goto('/blueprints/none-such')
    await page.getByRole('alert').waitFor()
    expect(await page.getByRole('alert').innerText()).toContain('none-such')
    await page.close()
  })

  it.each([
    [phone.width, phone],
    [laptop.width, laptop],
  ] as const)(
    'have no fault that axe-core sees and fit window and finger at %i, light and dark',
    async (_width, size) => {
      const page = await app.page(size)
      const { errors, requests } = watch(page)
      const looked: string[] = []
      const lookBothWays = async (): Promise<void> => {
        await settled(page)
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.emulateMedia({ colorScheme })
          expect(await wrong(page)).toEqual([])
          looked.push(await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor))
        }
        expect(await tooSmall(page)).toEqual([])
      }
      await page.goto('/blueprints')
      await lookBothWays()
      await page.goto(path)
      await settled(page)
      // Every part and the key to the drawing.
      expect(await openFolds(page)).toBe(upright.parts.length + 1)
      await lookBothWays()
      expect(new Set(looked).size).toBe(2)
      expect(errors).toEqual([])
      expect(requests.filter((url) => !url.startsWith(`${app.address}/`))).toEqual([])
      await page.close()
    },
  )
})
