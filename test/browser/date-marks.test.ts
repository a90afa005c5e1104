import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { atRest, axeViolations, settled, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

/** Enters one mark in the form: fields by their labels. */
const enterMark = async (page: Page, part: string, kind: string, fields: Readonly<Record<string, string>>) => {
  const form = page.getByRole('form', { name: 'Enter a date mark' })
  await form.getByLabel('On which part').selectOption(part)
  await form.getByLabel('What it looks like').selectOption(kind)
  for (const [label, value] of Object.entries(fields)) await form.getByLabel(label, { exact: true }).fill(value)
  const marks = page.getByRole('list', { name: 'Marks and what they say' }).getByRole('listitem')
  const before = await marks.count()
  await form.getByRole('button', { name: 'Enter the mark' }).click()
  await marks.nth(before).waitFor()
}

describe.runIf(browserHere())('date marks on the Machine page', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('marks make a window, a late part is flagged, the age is offered, and striking out takes a mark away', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(page, { complaints: ['weak-suction'] })
    await page.goto(`/machine/${state.id}`)
    await settled(page)
    await page.getByRole('button', { name: 'Date marks' }).click()
    await enterMark(page, 'plug', 'three-rings', { Day: '17', Month: '12', 'Year, if seen': '2005' })
    await enterMark(page, 'suction-motor', 'two-rings', { Month: '11', Year: '05' })
    await enterMark(page, 'bag', 'week', { Year: '2005', Week: '50' })
    await enterMark(page, 'flex', 'written', { Year: '2014', 'Month, if seen': '3' })
    const panel = page.getByRole('region', { name: 'Date marks' })
    await panel.getByText('Dec 2005 to Jun 2006').waitFor()
    await panel.getByText('Later than the others: likely a replacement').waitFor()
    await panel.getByRole('button', { name: /^Take it as \d+ years old$/ }).click()
    await page
      .getByText(/^Known of it: about \d+ years old$/)
      .first()
      .waitFor()
    await panel.getByRole('button', { name: 'Strike out the mark on Flex' }).click()
    await panel.getByText('likely a replacement').waitFor({ state: 'detached' })
    await page.close()
  })

  it('opened, has no fault that axe-core sees and fits the window, light at 360 and dark at 1280', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(
      page,
      { complaints: ['weak-suction'], ageYears: 12, wear: 'heavy' },
      { kind: 'stamp', part: 'plug', reading: { kind: 'two-rings', seen: { month: 4, year: 2009 } } },
    )
    await page.goto(`/machine/${state.id}`)
    await settled(page)
    await page.getByRole('button', { name: /^.?\s*Date marks/ }).click()
    await page.getByText('Apr 2009', { exact: true }).first().waitFor()
    await page.getByLabel('What it looks like').selectOption('plate')
    for (const [size, colorScheme] of [
      [phone, 'light'],
      [laptop, 'dark'],
    ] as const) {
      await page.setViewportSize(size)
      await page.emulateMedia({ colorScheme })
      await atRest(page)
      expect([colorScheme, await axeViolations(page)]).toEqual([colorScheme, []])
      expect([colorScheme, (await sideways(page)).scrolledPx]).toEqual([colorScheme, 0])
    }
    await page.close()
  })
})
