import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { blueprintById } from '../../src/blueprint/library.ts'
import { gatesPassedWithCovers } from '../support/pass-gates.ts'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, phone } from './chromium.ts'
import { axeViolations, contrastViolations, settled, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const blueprint = blueprintById('bagged-upright-one-motor')!
const kind = { blueprint: blueprint.id, plate: blueprint.plate }
const firstRun: NoteContentInput = {
  kind: 'reading',
  check: 'run-first',
  result: { kind: 'grade', outcome: 'runs' },
  minutes: 1,
}

const row = (page: Page, id: string) => page.locator(`#function-${id}`)
const answer = (page: Page, id: string, name: string) =>
  row(page, id).getByRole('button', { name, exact: true }).click()
const verdict = (page: Page, words: RegExp) => page.locator('.verdict', { hasText: words }).waitFor()

describe.runIf(browserHere())('does it all work', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('goes down the list with one thumb, away from the bench too', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(page, kind)
    await page.goto(`/machine/${state.id}`)
    await page.getByRole('link', { name: 'Does it all work?' }).click()
    await verdict(page, /^0 of \d+ tried$/)
    // The first is unfolded; each answer unfolds the next.
    await answer(page, 'cord', 'Sheath whole, scuffs at most')
    await verdict(page, /^1 of/)
    await row(page, 'casing').getByText('Good: Closed, nothing live within reach.').waitFor()
    await row(page, 'tools')
      .getByRole('button', { name: /^Tools/ })
      .click()
    await answer(page, 'tools', 'As it should be')
    await row(page, 'switch')
      .getByRole('button', { name: /^Mains switch/ })
      .click()
    await row(page, 'switch').getByText('It must not be run yet. Not passed:').waitFor()

    await settled(page)
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await contrastViolations(page)).toEqual([])

    await page.context().setOffline(true)
    await row(page, 'wheels')
      .getByRole('button', { name: /^Wheels/ })
      .click()
    await answer(page, 'wheels', 'Not there')
    await verdict(page, /^3 of \d+ tried, 1 not there: wheels$/)
    await page.context().setOffline(false)
    await expect
      .poll(async () => (await machineOnBench(page, state.id)).state.missing, { timeout: 20_000 })
      .toEqual(['wheels'])
    await page.close()
  })

  it('a failure changes what may be wrong on the machine’s page', async () => {
    const page = await app.page(phone, 'dark')
    const { state } = await putOnBench(page, kind, ...gatesPassedWithCovers(blueprint), firstRun)
    await page.goto(`/machine/${state.id}/functions`)
    await row(page, 'brush-stops')
      .getByRole('button', { name: /^Brush stops/ })
      .click()
    await row(page, 'brush-stops')
      .getByText(/hands clear of all that turns.*well clear of the roll/)
      .waitFor()
    await answer(page, 'brush-stops', 'Not as it should be')
    await verdict(page, /1 not as it should be: brush stops$/)
    await row(page, 'brush-stops')
      .getByRole('button', { name: /^Brush stops/ })
      .click()
    await row(page, 'brush-stops').getByRole('link', { name: 'What may be wrong now' }).click()
    const suspects = page.getByRole('region', { name: 'Suspects' })
    await suspects.getByRole('button', { name: /^Belt lifter/ }).click()
    await suspects.getByText(/Tried: brush stops/).waitFor()
    await page.close()
  })
})
