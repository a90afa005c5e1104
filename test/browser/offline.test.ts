import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { blueprintById } from '../../src/blueprint/library.ts'
import { gatesPassedWithCovers } from '../support/pass-gates.ts'
import { machineOnBench, noteOnBench, putOnBench } from './bench.ts'
import { browserHere, phone } from './chromium.ts'
import { axeViolations, settled } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const blueprint = blueprintById('bagless-upright')!
const rules: NoteContentInput = { kind: 'rules', rules: { region: 'UK', profile: 'uk-cop-5.v1' } }

describe.runIf(browserHere())('where the bench does not answer', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const strip = (page: Page) => page.getByRole('complementary', { name: 'Not sent yet' })
  const begin = async (page: Page): Promise<string> => {
    const machine = { blueprint: blueprint.id, plate: blueprint.plate }
    const { state } = await putOnBench(page, machine, ...gatesPassedWithCovers(blueprint), rules)
    await page.goto(`/machine/${state.id}/proof`)
    await settled(page)
    return state.id
  }
  const passLook = async (page: Page): Promise<void> => {
    const card = page.getByRole('region', { name: 'Look it over', exact: true })
    await card.getByRole('button', { name: 'Good', exact: true }).click()
  }
  const kinds = async (page: Page, id: string): Promise<readonly string[]> =>
    (await machineOnBench(page, id)).notes.map(({ content }) => content.kind)

  it('the page of the proof keeps findings here, shows them, and sends them once, with the time they were made', async () => {
    const page = await app.page(phone)
    const id = await begin(page)
    const before = (await machineOnBench(page, id)).notes.length
    await page.context().setOffline(true)
    await passLook(page)
    await strip(page).getByText('One note is not sent yet.').waitFor()
    // The page goes on with it: the finding stands in its list, and the next check is asked for.
    await page.getByText('Look it over: good, passed').waitFor()
    expect(await axeViolations(page)).toEqual([])
    const madeBy = new Date().toISOString()
    await page.waitForTimeout(1200)
    await page.context().setOffline(false)
    await strip(page).waitFor({ state: 'detached', timeout: 20_000 })
    const { notes } = await machineOnBench(page, id)
    expect(notes).toHaveLength(before + 1)
    const last = notes.at(-1)
    expect(last?.content).toMatchObject({ kind: 'proof', finding: { kind: 'look', step: 'visual', good: true } })
    expect(last!.at <= madeBy).toBe(true)
    await page.close()
  })

  it('a note goes behind what somebody else wrote meanwhile', async () => {
    const page = await app.page(phone)
    const id = await begin(page)
    await page.context().setOffline(true)
    await passLook(page)
    await strip(page).getByText('One note is not sent yet.').waitFor()
    await noteOnBench(page, id, { kind: 'said', text: 'Written from another bench' })
    await page.context().setOffline(false)
    await strip(page).waitFor({ state: 'detached', timeout: 20_000 })
    expect((await kinds(page, id)).slice(-2)).toEqual(['said', 'proof'])
    await page.close()
  })

  it('a note that the bench refuses stays here with its reason, and can be left out', async () => {
    const page = await app.page(phone)
    const id = await begin(page)
    await page.context().setOffline(true)
    await passLook(page)
    await strip(page).getByText('One note is not sent yet.').waitFor()
    await noteOnBench(page, id, { kind: 'left', exit: 'scrap', receivedMinor: 0 })
    await page.context().setOffline(false)
    await strip(page).getByRole('button', { name: 'The bench did not take one note' }).click({ timeout: 20_000 })
    await strip(page).getByText('This machine was scrapped').waitFor()
    expect(await axeViolations(page)).toEqual([])
    await strip(page).getByRole('button', { name: 'Leave it out' }).click()
    await strip(page).waitFor({ state: 'detached' })
    expect((await kinds(page, id)).at(-1)).toBe('left')
    await page.close()
  })

  it('the page opens again without the bench, with what waits still there', async () => {
    const page = await app.page(phone, 'light', true)
    const id = await begin(page)
    await page.evaluate(async () => (await navigator.serviceWorker.ready).scope)
    // Once more with the pages kept, so that the answers of the bench are kept too.
    await page.reload()
    await settled(page)
    await page.context().setOffline(true)
    await passLook(page)
    await strip(page).getByText('One note is not sent yet.').waitFor()
    await page.reload()
    await strip(page).getByText('One note is not sent yet.').waitFor()
    await page.getByRole('region', { name: 'Verdict' }).waitFor()
    await page.context().setOffline(false)
    await strip(page).waitFor({ state: 'detached', timeout: 20_000 })
    expect((await kinds(page, id)).at(-1)).toBe('proof')
    await page.close()
  })
})
