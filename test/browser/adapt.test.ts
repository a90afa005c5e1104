import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Blueprint } from '../../src/blueprint/schema.ts'
import { upright } from '../story/bench-job.ts'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, settled, sideways, visit, watch } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const named = <T extends { readonly id: string }>(items: readonly T[], id: string): T =>
  items.find((item) => item.id === id)!

const cutOut = named(upright.parts, 'cut-out')
const mainsSwitch = named(upright.parts, 'mains-switch')
const handleCover = named(upright.covers, 'handle-cover')
const solePlate = named(upright.covers, 'sole-plate')

const wrong = async (page: Page): Promise<readonly string[]> => {
  await settled(page)
  const { scrolledPx, sticksOut } = await sideways(page)
  return [...(await axeViolations(page)), ...(scrolledPx === 0 ? [] : [`scrolls ${scrolledPx} px`]), ...sticksOut]
}

const sayForm = (page: Page) => page.getByRole('form', { name: 'Say what is different' })
const addToList = (page: Page) => sayForm(page).getByRole('button', { name: 'Add to the list' }).click()

const sayNotThere = async (page: Page, part: string): Promise<void> => {
  await sayForm(page).getByLabel('Which', { exact: true }).selectOption({ label: part })
  await addToList(page)
}

const sayBehind = async (page: Page, part: string, cover: string): Promise<void> => {
  await sayForm(page).getByLabel('Which', { exact: true }).selectOption({ label: part })
  await sayForm(page).getByRole('button', { name: 'Behind another cover' }).click()
  await sayForm(page).getByLabel('Behind', { exact: true }).selectOption({ label: cover })
  await addToList(page)
}

const sayTwoFixings = async (page: Page, cover: string): Promise<void> => {
  await sayForm(page).getByLabel('What is different').selectOption({ label: 'A cover' })
  await sayForm(page).getByLabel('Which', { exact: true }).selectOption({ label: cover })
  await sayForm(page).getByLabel('How many').fill('2')
  await sayForm(page).getByLabel('To open').fill('2.5')
  await addToList(page)
}

/** What is asked of the variant: no cut-out, the switch behind the sole plate, two screws in the handle. */
const expectAsSaid = (variant: Blueprint): void => {
  expect(variant.parts.map(({ id }) => id)).not.toContain(cutOut.id)
  expect(named(variant.parts, mainsSwitch.id).behind).toBe(solePlate.id)
  expect(named(variant.points, 'switch.in').behind).toBe(solePlate.id)
  expect(named(variant.covers, handleCover.id)).toMatchObject({
    fixings: [{ count: 2, kind: handleCover.fixings[0]?.kind }],
    openMin: 2.5,
  })
}

describe.runIf(browserHere())('a machine that is different', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const added = async (page: Page, name: string): Promise<string> => {
    const { state } = await putOnBench(page, { name })
    await page.goto(`/machine/${state.id}`)
    await settled(page)
    return state.id
  }
  const blueprintOf = async (page: Page, machine: string): Promise<Blueprint> => {
    const { state } = await machineOnBench(page, machine)
    return (await (await page.request.get(`/api/blueprints/${state.blueprint}`)).json()) as Blueprint
  }

  it('is adapted on its own page, saved, handed on as a file, and comes back the same', async () => {
    const page = await app.page(phone)
    const { errors } = watch(page)
    const machine = await added(page, 'Foot switch')
    const figures = await page.getByText('if you carry on').locator('..').innerText()

    // What is being typed elsewhere on the page is not touched.
    await page.getByRole('textbox', { name: 'Remark' }).fill('smells of dog')
    await page.getByRole('button', { name: 'This machine is different' }).click()
    await sayNotThere(page, cutOut.name)
    await sayBehind(page, mainsSwitch.name, solePlate.name)
    await sayTwoFixings(page, handleCover.name)
    const region = page.getByRole('region', { name: 'This machine is different' })
    await region.getByText(`${cutOut.name}: not there`).waitFor()
    expect(await region.getByRole('listitem').count()).toBe(3)
    expect(await wrong(page)).toEqual([])

    await page.getByRole('button', { name: 'Use for this machine' }).click()
    await page.getByText('This machine is different, read by “Foot switch”').waitFor()
    await settled(page)
    expect(new URL(page.url()).pathname).toBe(`/machine/${machine}`)
    expect(await page.getByRole('textbox', { name: 'Remark' }).inputValue()).toBe('smells of dog')
    const variant = await blueprintOf(page, machine)
    expectAsSaid(variant)
    // The plan is worked out anew: opening the handle got cheaper and a suspect went.
    expect(await page.getByText('if you carry on').locator('..').innerText()).not.toBe(figures)
    expect(await wrong(page)).toEqual([])

    await visit(page, `/blueprints/${variant.id}`)
    expect(await wrong(page)).toEqual([])
    await page.getByText('Made from').waitFor()
    await page.getByText(`${mainsSwitch.name}: behind “${solePlate.name}”`).waitFor()
    const waiting = page.waitForEvent('download')
    await page.getByRole('link', { name: 'Save as file' }).click()
    const file = await (await waiting).path()
    expect(JSON.parse(await readFile(file, 'utf8'))).toEqual(variant)

    await visit(page, '/blueprints')
    await page.getByRole('region', { name: 'Your own' }).getByRole('link', { name: 'Foot switch' }).waitFor()
    expect(await wrong(page)).toEqual([])
    await page.getByLabel('Blueprint file').setInputFiles(file)
    await page.waitForURL(`**/blueprints/${variant.id}`)
    expect(errors).toEqual([])
  })

  it('takes a difference back, keeps the list over a reload, and says what cannot be', async () => {
    const page = await app.page(phone, 'dark')
    await added(page, 'Odd')
    await page.getByRole('button', { name: 'This machine is different' }).click()
    await sayNotThere(page, cutOut.name)
    await sayNotThere(page, named(upright.parts, 'suction-motor').name)
    await page.getByRole('alert').getByText('no check is left that shows that it works').waitFor()
    expect(await page.getByRole('button', { name: 'Use for this machine' }).isDisabled()).toBe(true)
    expect(await wrong(page)).toEqual([])
    await page.getByRole('button', { name: 'Take back: Suction motor: not there' }).click()
    // Closed and opened again, what was half said is still there.
    await sayForm(page).getByLabel('Which', { exact: true }).selectOption({ label: mainsSwitch.name })
    await page.getByRole('button', { name: 'Close this' }).click()
    await page.getByRole('button', { name: 'This machine is different' }).click()
    expect(await sayForm(page).getByLabel('Which', { exact: true }).inputValue()).toBe(mainsSwitch.id)
    await page.reload()
    await settled(page)
    await page.getByRole('button', { name: 'This machine is different' }).click()
    await page.getByText(`${cutOut.name}: not there`).waitFor()
    expect(await page.getByText('Suction motor: not there').count()).toBe(0)
  })

  it('goes back to the blueprint before when the note is struck out', async () => {
    const page = await app.page(laptop)
    const machine = await added(page, 'Taken back')
    await page.getByRole('button', { name: 'This machine is different' }).click()
    await sayNotThere(page, cutOut.name)
    await page.getByRole('button', { name: 'Use for this machine' }).click()
    await page.getByText('This machine is different, read by').waitFor()
    // Loaded again, only the variant is known to the page; the blueprint before is fetched without taking anything down.
    await page.reload()
    await settled(page)
    await page.getByRole('textbox', { name: 'Remark' }).fill('half a remark')
    await page.getByRole('button', { name: /^Strike out: This machine is different/ }).click()
    await page.getByText('Struck out: This machine is different').first().waitFor()
    expect((await machineOnBench(page, machine)).state.blueprint).toBe(upright.id)
    await settled(page)
    expect(await page.getByRole('textbox', { name: 'Remark' }).inputValue()).toBe('half a remark')
  })

  it('is described by a variant made on the Blueprint page', async () => {
    const page = await app.page(laptop, 'dark')
    await page.goto(`/blueprints/${upright.id}`)
    await settled(page)
    await page.getByRole('button', { name: 'Adapt', exact: true }).click()
    await sayNotThere(page, cutOut.name)
    await page.getByLabel('Name of the variant').fill('Without a cut-out')
    await page.getByRole('button', { name: 'Save the variant' }).click()
    await page.waitForURL('**/blueprints/own-without-a-cut-out-1')
    await page.getByRole('heading', { level: 1, name: 'Without a cut-out' }).waitFor()
    expect(await wrong(page)).toEqual([])
  })
})

describe.runIf(browserHere())('a file that is no sound blueprint', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const openOn = async (page: Page, content: string): Promise<void> => {
    await page.goto('/blueprints')
    await settled(page)
    const file = { name: 'mine.json', mimeType: 'application/json', buffer: Buffer.from(content) }
    await page.getByLabel('Blueprint file').setInputFiles(file)
    await page.getByText(/^Not opened/).waitFor()
  }

  it('is not taken in; each mistake is shown with its place and the mend', async () => {
    const page = await app.page(phone)
    const broken = structuredClone(upright)
    broken.supply.line = 'plug.lime'
    named(broken.parts, cutOut.id).behind = 'motor-covr'
    await openOn(page, JSON.stringify(broken))
    const mistakes = page.getByRole('region', { name: 'Open a file' })
    expect(await mistakes.innerText()).toContain('Not opened: 2 mistakes.')
    expect(await mistakes.innerText()).toContain('parts.cut-out.behind')
    expect(await mistakes.innerText()).toContain('Write “motor-cover”')
    expect(await wrong(page)).toEqual([])
    await openOn(page, 'no JSON at all')
    expect(await mistakes.innerText()).toContain('This file is not JSON')
  })
})
