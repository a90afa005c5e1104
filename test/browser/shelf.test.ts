import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { blueprintById } from '../../src/blueprint/library.ts'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { atRest, axeViolations, contrastViolations, openFolds, settled, sideways } from './looks.ts'
import { putOnCard } from './page-writer.ts'
import { startApp, type RunningApp } from './running-app.ts'

const blueprint = blueprintById('bagged-upright-two-motors')!

describe.runIf(browserHere())('the shelf', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const looksWell = async (page: Page): Promise<void> => {
    await openFolds(page)
    await settled(page)
    await atRest(page)
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    await page.emulateMedia({ colorScheme: 'dark' })
    await atRest(page)
    expect(await contrastViolations(page)).toEqual([])
    await page.emulateMedia({ colorScheme: 'light' })
  }

  it('takes in a part by thumb, describes it, and sells it', async () => {
    const page = await app.page(phone)
    await page.goto('/shelf')
    await settled(page)
    await page.getByRole('button', { name: 'Put a part on the shelf' }).click()
    const form = page.getByRole('form', { name: 'Put a part on the shelf' })
    await form.getByLabel('What to call it').fill('Motor from the yard')
    await form.getByLabel('Power').fill('1080')
    await form.getByLabel('Bought where').fill('a yard')
    await form.getByLabel('Cost, all together').fill('2.10')
    await form.getByLabel('One would fetch').fill('6')
    await form.getByRole('button', { name: 'Put it on the shelf' }).click()
    await page.getByRole('link', { name: 'Motor from the yard' }).waitFor()
    await looksWell(page)
    await page.setViewportSize(laptop)
    await looksWell(page)
    await page.setViewportSize(phone)
    await page.getByRole('list', { name: 'Parts' }).getByRole('link', { name: 'Motor from the yard' }).click()
    await page.waitForURL('**/shelf/part-*')
    await settled(page)
    await looksWell(page)
    expect(await page.locator('main').innerText()).toContain('£2.10')
    await page.getByRole('form', { name: 'Sold' }).getByLabel('Money received').fill('7')
    await page.getByRole('form', { name: 'Sold' }).getByRole('button', { name: 'Sold' }).click()
    await page.getByText('None of it is left.').waitFor()
    await page.close()
  })

  it('a machine is broken for parts in the order of the list; the shares are its cost', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(page, { blueprint: blueprint.id, plate: blueprint.plate, paidMinor: 1001 })
    await page.goto(`/machine/${state.id}`)
    await settled(page)
    await putOnCard(page, 'exit break-for-parts')
    await page.getByRole('list', { name: 'Parts, best first' }).waitFor()
    await settled(page)
    const ticked = await page
      .getByRole('list', { name: 'Parts, best first' })
      .getByRole('checkbox', { checked: true })
      .count()
    expect(ticked).toBeGreaterThan(2)
    await looksWell(page)
    await page.getByRole('button', { name: `Break it: ${ticked} to the shelf` }).click()
    await page.getByRole('heading', { name: 'Broken for parts' }).waitFor()
    const { notes } = await machineOnBench(page, state.id)
    const shares = notes.flatMap(({ content }) => (content.kind === 'took-off' ? [content.costMinor] : []))
    expect(shares).toHaveLength(ticked)
    expect(shares.reduce((sum, one) => sum + one, 0)).toBe(1001)
    await page.close()
  })

  it('its motor is offered to the next machine', async () => {
    const page = await app.page(laptop)
    const { state } = await putOnBench(page, { blueprint: blueprint.id, plate: blueprint.plate })
    await page.goto(`/machine/${state.id}`)
    await settled(page)
    await putOnCard(page, 'repair suction-motor-swap new')
    await page.getByRole('group', { name: 'From the shelf' }).waitFor()
    await page.getByRole('radio', { name: /^Suction motor/ }).check()
    expect(await page.getByText('what it stands at on the shelf').count()).toBe(1)
    await page.close()
  })
})
