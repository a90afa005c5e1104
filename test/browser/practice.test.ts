import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { complaints } from '../../src/facts/complaints.ts'
import { hiddenTruth, machineModel, virtualComplaints } from '../../src/machine/index.ts'
import { upright } from '../story/bench-job.ts'
import { machineOnBench } from './bench.ts'
import { browserHere, phone } from './chromium.ts'
import { settled } from './looks.ts'
import { putOnCard } from './page-writer.ts'
import { startApp, type RunningApp } from './running-app.ts'

const seed = 20_260

/** Starts a virtual machine with this seed. Gives its id. */
const start = async (page: Page): Promise<string> => {
  await page.goto('/practice')
  await settled(page)
  await page.getByLabel('Seed').fill(String(seed))
  await page.getByRole('button', { name: 'Start' }).click()
  await page.waitForURL(/\/machine\//)
  await settled(page)
  return new URL(page.url()).pathname.split('/').at(-1)!
}

describe.runIf(browserHere())('practice', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('refuses what is no seed, beside its field', async () => {
    const page = await app.page(phone)
    await page.goto('/practice')
    await settled(page)
    const offered = await page.getByLabel('Seed').inputValue()
    expect(offered).toMatch(/^\d+$/)
    await page.getByRole('button', { name: 'Another seed' }).click()
    expect(await page.getByLabel('Seed').inputValue()).not.toBe(offered)
    await page.getByLabel('Seed').fill('seven')
    await page.getByRole('button', { name: 'Start' }).click()
    await page.getByText('“seven” is not a seed. Write a whole number from 0 to 4294967295.').waitFor()
    expect(await page.getByLabel('Seed').inputValue()).toBe('seven')
    await page.close()
  })

  it('hides a fault by its seed, reads for you, and shows at the end what it was', { timeout: 150_000 }, async () => {
    const page = await app.page(phone)
    const id = await start(page)
    const said = page.locator('.machine-title p').first()
    const complaint = await said.innerText()
    const { state } = await machineOnBench(page, id)
    expect(state.practiceSeed).toBe(seed)
    expect(state.claimed.complaints).toEqual(virtualComplaints(upright, upright.plate, seed))
    expect(complaint.toLowerCase()).toContain(complaints[state.claimed.complaints[0]].replace(/:.*/, '').toLowerCase())

    for (const check of ['pins-on', 'look-flex']) {
      await putOnCard(page, `check ${check}`)
      await page.getByRole('button', { name: 'Take the reading' }).click()
      await expect
        .poll(async () => (await machineOnBench(page, id)).notes.at(-1)?.content)
        .toMatchObject({ kind: 'reading', check })
      await settled(page)
    }
    await putOnCard(page, 'exit scrap')
    await page.getByRole('button', { name: 'Scrapped', exact: true }).click()
    const hidden = page.getByRole('group', { name: 'What was hidden' })
    // The plan plays the whole machine meanwhile.
    await hidden.waitFor({ timeout: 90_000 })
    const model = machineModel(upright, upright.plate)
    const faults = model.sets[hiddenTruth(model, seed).suspect].map((fault) => upright.faults[fault].name)
    expect(faults.length).toBeGreaterThan(0)
    for (const fault of faults) expect((await hidden.innerText()).toLowerCase()).toContain(fault.toLowerCase())
    expect(await hidden.innerText()).toContain(`Seed ${seed}`)
    expect(await hidden.getByRole('row').allInnerTexts()).toEqual([
      expect.stringMatching(/minutes\s+money/) as string,
      expect.stringMatching(/^you\s+\d.*min\s+−?£\d/) as string,
      expect.stringMatching(/^the plan alone\s+.*(min|h)\s+−?£\d/) as string,
    ])
    await hidden.getByRole('button', { name: 'Move by move' }).click()
    expect(await hidden.getByRole('listitem').allInnerTexts()).toEqual(expect.arrayContaining(['Scrap']))

    await start(page)
    expect(await said.innerText()).toBe(complaint)
    await page.close()
  })
})
