import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { blueprintEntry } from '../../src/blueprint/entry.ts'
import { blueprints } from '../../src/blueprint/library.ts'
import { meterSpec } from '../../src/facts/meters.ts'
import { faultRates, faultShows, machineModel, resultText } from '../../src/machine/index.ts'
import {
  costText,
  rateText,
  repairsThatRemove,
  replacementsOf,
  wholeMinutes,
} from '../../src/web/blueprints/of-part.ts'
import { kindsOf } from '../../src/web/blueprints/kinds.ts'
import { minutesText, percentText } from '../../src/web/words.ts'
import { upright } from '../story/bench-job.ts'
import { putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { atRest, axeViolations, contrastViolations, openFolds, settled, sideways, visit, watch } from './looks.ts'
import { withBlueprints } from './many-blueprints.ts'
import { pickOnPage, picturesOf, pressPictures } from './pick-on-page.ts'
import { startApp, type RunningApp } from './running-app.ts'

const path = `/blueprints/${upright.id}`
const targetPx = 44

describe.runIf(browserHere())('blueprints', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const wrong = async (page: Page, look = axeViolations): Promise<readonly string[]> => {
    await settled(page)
    const { scrolledPx, sticksOut } = await sideways(page)
    return [...(await look(page)), ...(scrolledPx === 0 ? [] : [`scrolls ${scrolledPx} px`]), ...sticksOut]
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

  it('shows the architectures; one opens, a part of it opens', async () => {
    const page = await app.page(phone)
    const { errors } = watch(page)
    await page.goto('/')
    await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name: 'Blueprints' }).click()
    await settled(page)
    await pressPictures(picturesOf(page, upright, { role: 'link' }), (picture) => picture.click())
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
    // What the part costs, what shows the fault near and far, every way to mend it with the covers' minutes.
    const { option } = replacementsOf(upright, part.id)[0]
    expect(shown).toContain(`: ${costText(option.costMinor)} (${option.name})`)
    const model = machineModel(upright, upright.plate)
    const shows = faultShows(model, meterSpec('budget-multimeter')).find((one) => one.fault === fault.id)!
    expect(shows.checks.length).toBeGreaterThan(0)
    const [surest] = shows.checks
    const check = upright.checks.find(({ id }) => id === surest.check)!
    expect(shown).toContain(`${check.name}: ${surest.text}, sound: ${surest.soundText}.`)
    for (const way of repairsThatRemove(upright, fault.id))
      for (const { minutes, breakRisk } of way.options) {
        expect(shown).toContain(`${minutesText(wholeMinutes(upright, way, minutes))} with covers`)
        expect(shown).toContain(`breaks something ${percentText(breakRisk)}`)
      }
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
      [`/machine/${state.id}`, 'What it is worth', upright.name],
      ['/add', 'How to know one', 'The whole blueprint'],
    ] as const) {
      await page.goto(start)
      await settled(page)
      if (start === '/add') await pickOnPage(page, upright)
      await page.getByRole('button', { name: fold }).click()
      await page.getByRole('link', { name: link }).last().click()
      await page.getByRole('heading', { level: 1, name: upright.name }).waitFor()
    }
    await page.close()
  })

  it('opens at an address with a dot in it', async () => {
    const page = await app.page(phone)
    const dotted = { ...upright, id: 'upright.of.mine', name: 'Upright of mine' }
    await withBlueprints(page, [upright, dotted])
    await page.goto(`/blueprints/${dotted.id}`)
    await page.getByRole('heading', { level: 1, name: dotted.name }).waitFor()
    await page.close()
  })

  it(
    'phone: every architecture fits the window, and its drawing is moved by key where it does not',
    { timeout: 120_000 },
    async () => {
      const page = await app.page(phone)
      await page.goto('/blueprints')
      await settled(page)
      for (const { entries } of kindsOf(blueprints.map(blueprintEntry))) {
        await visit(page, `/blueprints/${entries[0].id}`)
        const { scrolledPx } = await sideways(page)
        expect([entries[0].id, scrolledPx, await axeViolations(page)]).toEqual([entries[0].id, 0, []])
      }
      await page.close()
    },
  )

  it('says so when there is no such blueprint', async () => {
    const page = await app.page(phone)
    await page.goto('/blueprints/none-such')
    await page.getByRole('alert').waitFor()
    expect(await page.getByRole('alert').innerText()).toContain('none-such')
    await page.close()
  })

  it(
    'have no fault that axe-core sees and fit window and finger, phone and laptop, light and dark',
    { timeout: 120_000 },
    async () => {
      const page = await app.page(phone)
      const { errors, requests } = watch(page)
      const looked: string[] = []
      // In the shed by the rule that colours can break: all else is as it was by day.
      const lookBothWays = async (): Promise<void> => {
        for (const [colorScheme, look] of [
          ['light', axeViolations],
          ['dark', contrastViolations],
        ] as const) {
          await page.emulateMedia({ colorScheme })
          await atRest(page)
          expect(await wrong(page, look)).toEqual([])
          looked.push(await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor))
        }
        expect(await tooSmall(page)).toEqual([])
      }
      const lookInBothSizes = async (): Promise<void> => {
        for (const size of [phone, laptop]) {
          await page.setViewportSize(size)
          await settled(page)
          await lookBothWays()
        }
      }
      await page.goto('/blueprints')
      await settled(page)
      await lookInBothSizes()
      await visit(page, path)
      // Every part and the key to the drawing, and the checks beyond the first few of a fault.
      expect(await openFolds(page)).toBeGreaterThan(upright.parts.length + 1)
      await lookInBothSizes()
      expect(looked).toHaveLength(8)
      expect(new Set(looked).size).toBe(2)
      expect(errors).toEqual([])
      expect(requests.filter((url) => !url.startsWith(`${app.address}/`))).toEqual([])
      await page.close()
    },
  )
})
