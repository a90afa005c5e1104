import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../src/bench/contract.ts'
import { wattsChecks } from '../../src/blueprint/library/shared/watts-checks.ts'
import { tinyBlueprint } from '../support/tiny-blueprint.ts'
import { browserHere, phone } from './chromium.ts'
import { axeViolations, settled, sideways } from './looks.ts'
import { putOnCard } from './page-writer.ts'
import { startApp, type RunningApp } from './running-app.ts'

/** The tiny machine with a power meter; nothing waits for the dead checks, since only the entry is looked at here. */
const blueprint = {
  ...tinyBlueprint,
  checks: [
    ...tinyBlueprint.checks.map((check) =>
      check.kind === 'meter'
        ? { ...check, beforeRunning: false, passesAtLeastOhm: undefined }
        : { ...check, beforeRunning: false },
    ),
    ...(wattsChecks({ hose: true, suctionMotor: 'motor-coil', runControls: { handle: 'on' } }).checks ?? []).map(
      (check) => ({
        ...check,
        under: {},
      }),
    ),
  ],
}

describe.runIf(browserHere())('watts on the card', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('shows what the number stands for on this plate, and enters both', async () => {
    const page = await app.page(phone)
    const kept = await page.request.post('/api/blueprints', { data: blueprint })
    const { id } = (await kept.json()) as { id: string }
    const content = {
      kind: 'added',
      name: 'Tiny',
      blueprint: id,
      plate: { ...blueprint.plate, powerW: 1200 },
      paidMinor: 0,
      currency: 'GBP',
      complaints: ['weak-suction'],
    }
    await page.request.post('/api/bench/own/machines', { data: { id: 'tiny', content } })
    await page.goto('/machine/tiny')
    await settled(page)
    await putOnCard(page, 'check run-watts-open')
    const form = page.getByRole('form', { name: 'Enter the watts' })
    for (const key of ['7', '0', '0']) await form.getByRole('button', { name: key, exact: true }).click()
    const marked = form.locator('[aria-current=true]')
    expect(await marked.innerText()).toMatch(/Below the plate\s+24 to 840 W/)
    expect(await axeViolations(page)).toEqual([])
    expect((await sideways(page)).scrolledPx).toBe(0)
    await form.getByRole('button', { name: 'Enter', exact: true }).click()
    await page.getByText('700 W, below the plate').first().waitFor()
    const answer = await page.request.get('/api/bench/own/machines/tiny')
    const { notes } = (await answer.json()) as MachineDocument
    expect(notes.at(-1)?.content).toMatchObject({
      result: { kind: 'grade', outcome: 'low', watts: 700 },
      instrument: 'plug-in-power-meter',
    })
    await page.close()
  })
})
