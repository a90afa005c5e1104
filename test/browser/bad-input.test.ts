import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { complaintIds } from '../../src/facts/complaints.ts'
import type { MachineView } from '../../src/machine/view.ts'
import { machineOnBench, noteOnBench, putOnBench } from './bench.ts'
import { browserHere, phone } from './chromium.ts'
import { settled, visit } from './looks.ts'
import { putOnCard } from './page-writer.ts'
import { pickOnPage } from './pick-on-page.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { saidBeside } from './said-beside.ts'
import { upright } from '../story/bench-job.ts'

describe.runIf(browserHere())('bad input on the page', () => {
  let app: RunningApp
  let page: Page
  beforeAll(async () => {
    app = await startApp()
    page = await app.page(phone)
    await page.goto('/practice')
    await settled(page)
  })
  afterAll(() => app.stop())

  /** A new machine's page, all worked out. Gives the machine's id. */
  const openMachine = async (): Promise<string> => {
    const { state } = await putOnBench(page, { complaints: ['dead'] })
    await visit(page, `/machine/${state.id}`)
    return state.id
  }
  let untouched = ''
  /** The page of a machine that has no note but its first: one for all tests that write none, so that it is worked out once. */
  const openUntouched = async (): Promise<string> => {
    if (untouched === '') untouched = await openMachine()
    await visit(page, '/practice')
    await visit(page, `/machine/${untouched}`)
    return untouched
  }
  const meterShows = (on: Page): Locator => on.getByLabel('The meter shows')
  const noted = async (id: string): Promise<readonly string[]> =>
    (await machineOnBench(page, id)).notes.map((note) => note.content.kind)

  it('adding: each field says what is wrong with it, and nothing is lost', async () => {
    await page.goto('/add')
    await pickOnPage(page, upright)
    const put = page.getByRole('button', { name: 'Put it on the bench' })
    await page.getByRole('button', { name: /^Dead/ }).click()
    await page.getByLabel('Paid').fill('abc')
    await page.getByLabel('What the seller said').fill('It just stopped')
    await page.getByLabel('Voltage').fill('20')
    await put.click()
    expect(await saidBeside(page.getByLabel('Paid'))).toBe('“abc” is not an amount of money. Write it like 12.50.')
    await expect.poll(() => page.getByLabel('Paid').evaluate((field) => field === document.activeElement)).toBe(true)

    await page.getByLabel('Paid').fill('4.50')
    await put.click()
    // What only the bench knows: the page asks it, and puts its answer beside the field.
    expect(await saidBeside(page.getByLabel('Voltage'))).toBe(
      '20 is not right: a mains machine has 50 V or more on its plate. Write a number from 50 to 480, in volts.',
    )
    expect(await page.getByLabel('Voltage').inputValue()).toBe('20')
    expect(await page.getByLabel('Paid').inputValue()).toBe('4.50')
    expect(await page.getByLabel('What the seller said').inputValue()).toBe('It just stopped')
    expect(await page.getByRole('button', { name: /^Dead/, pressed: true }).count()).toBe(1)
    await page.reload()
    await settled(page)
    expect(await page.getByLabel('What the seller said').inputValue()).toBe('It just stopped')

    await page.getByLabel('Voltage').fill('230 W')
    await put.click()
    expect(await saidBeside(page.getByLabel('Voltage'))).toMatch(/W is a unit of power, and this is voltage/)
    await page.getByLabel('Voltage').fill('230')
    await put.click()
    await page.waitForURL(/\/machine\//)
  })

  it.each([
    ['12 V', 'V is a unit of voltage, and this is resistance. Use one of Ω,'],
    ['', 'Nothing is entered yet. Type what the meter shows.'],
    ['1..2', 'is not a number. Write a number with its unit'],
    ['-4.7', '-4.7 Ω is negative. Write zero or more.'],
  ])('a reading “%s” is refused beside its field and stays there', async (typed, says) => {
    const id = await openUntouched()
    await putOnCard(page, 'check pins-on')
    await page.getByRole('button', { name: 'Ω', exact: true }).click()
    await meterShows(page).fill(typed)
    await meterShows(page).press('Enter')
    expect(await saidBeside(meterShows(page))).toContain(says)
    expect(await meterShows(page).inputValue()).toBe(typed)
    expect(await noted(id)).toEqual(['added'])
  })

  it('the keypad passes over a second point', async () => {
    await openUntouched()
    await putOnCard(page, 'check pins-on')
    await meterShows(page).fill('')
    for (const key of ['1', 'point', 'point', '2']) await page.getByRole('button', { name: key, exact: true }).click()
    expect(await meterShows(page).inputValue()).toBe('1.2')
  })

  it('a reading behind closed covers says which come off, and notes them with it', async () => {
    const id = await openMachine()
    await putOnCard(page, 'check motor-at-leads')
    const form = page.getByRole('form', { name: 'Enter the reading' })
    const covers = ['Bag door', 'Back cover', 'Pre-motor filter frame', 'Motor cover']
    expect(await form.innerText()).toContain(`Noted with this as off: ${covers.join(', ')}.`)
    await meterShows(page).fill('8')
    await meterShows(page).press('Enter')
    await page.getByRole('region', { name: 'Bench notes' }).getByText('Suction motor at its own leads: 8.0 Ω').waitFor()
    const { state } = await machineOnBench(page, id)
    expect(state.off).toEqual(['bag-door', 'back-cover', 'filter-cover', 'motor-cover'])
    expect(await noted(id)).toEqual(['added', ...covers.map(() => 'opened'), 'reading'])
  })

  it('a note for a machine that has been sold meanwhile is not written, and the page shows the sale', async () => {
    const id = await openMachine()
    await deafToOthers(page)
    await page.reload()
    await settled(page)
    await putOnCard(page, 'check pins-on')
    await meterShows(page).fill('255')
    await noteOnBench(page, id, { kind: 'left', exit: 'sell-for-spares', receivedMinor: 1500 })
    await meterShows(page).press('Enter')
    const ended = page.getByRole('region', { name: 'How it ended' })
    await ended.waitFor()
    expect(await ended.innerText()).toMatch(/Sold for spares or repair[^]*Received £15\.00/i)
    expect(await noted(id)).toEqual(['added', 'left'])
    await page.unroute(changesOfOthers)
  })

  it('exit and repair forms say what is wrong beside the field', async () => {
    const id = await openUntouched()
    await putOnCard(page, 'exit sell-working')
    await page.getByLabel('Money received').fill('lots')
    await page.getByLabel('Minutes selling').fill('5 Ω')
    await page.getByRole('button', { name: 'Sold working', exact: true }).click()
    expect(await saidBeside(page.getByLabel('Money received'))).toContain('No amount of money is entered')
    expect(await saidBeside(page.getByLabel('Minutes selling'))).toContain(
      'Ω is a unit of resistance, and this is time',
    )
    expect(await saidBeside(page.getByLabel('Reason for selling it unproved'))).toContain(
      'It is not proved fit to sell',
    )
    await page.getByLabel('Money received').fill('85')
    await page.getByLabel('Minutes selling').fill('5')
    await page.getByLabel('Reason for selling it unproved').fill('A. Tester')
    await page.getByRole('button', { name: 'Sold working', exact: true }).click()
    // Refused by the rules of the bench: said beneath the form.
    const form = page.getByRole('form', { name: 'Note that it leaves' })
    expect(await form.getByRole('alert').innerText()).toContain('No check made since the last work on it shows')
    expect(await page.getByLabel('Reason for selling it unproved').inputValue()).toBe('A. Tester')

    await putOnCard(page, 'repair fuse-new new')
    await page.getByLabel('Parts cost').fill('abc')
    await page.getByRole('button', { name: 'Repair done' }).click()
    expect(await saidBeside(page.getByLabel('Parts cost'))).toContain('“abc” is not an amount of money')
    expect(await page.getByLabel('Parts cost').inputValue()).toBe('abc')
    expect(await noted(id)).toEqual(['added'])
  })

  it.each(['chosen', 'offered as the next move'])(
    'two pages on one machine: the note from the older is refused and kept, a check %s',
    async (how) => {
      const id = how === 'chosen' ? await openMachine() : await offeredMeterCheck(page)
      const other = await app.page(phone)
      await deafToOthers(other)
      await other.goto(`/machine/${id}`)
      await settled(other)
      if (how === 'chosen') await putOnCard(other, 'check pins-on')
      await meterShows(other).fill('255')
      await noteOnBench(page, id, { kind: 'reading', check: 'pins-on', result: { kind: 'open' }, minutes: 1 })
      await noteOnBench(page, id, { kind: 'said', text: 'from the first page' })
      await meterShows(other).press('Enter')
      await other.getByText('Someone else wrote about this machine meanwhile').waitFor()
      await other.getByText('from the first page').waitFor()
      await settled(other)
      expect(await meterShows(other).inputValue()).toBe('255')
      expect(await noted(id)).toEqual(['added', 'reading', 'said'])
      // Looked at, it still holds: entered again, it is taken.
      await meterShows(other).press('Enter')
      await expect.poll(async () => (await noted(id)).slice(3).at(-1)).toBe('reading')
      await other.close()
    },
  )

  it('a slip struck out gives back the suspects that there were', async () => {
    await openMachine()
    const suspects = page.getByRole('region', { name: 'Suspects' }).getByRole('list')
    const before = await suspects.innerText()
    expect(before).toMatch(/\d+ %/)
    await putOnCard(page, 'check pins-on')
    await page.getByRole('button', { name: 'open', exact: true }).click()
    await page.getByRole('region', { name: 'Bench notes' }).getByText('Pin to pin, switched on: open').waitFor()
    await settled(page)
    expect(await suspects.innerText()).not.toBe(before)
    await page.getByRole('button', { name: /^Strike out: Pin to pin, switched on/ }).click()
    await page.locator('s', { hasText: 'Pin to pin, switched on' }).waitFor()
    await settled(page)
    expect(await suspects.innerText()).toBe(before)
  })
})

const changesOfOthers = '**/api/bench/*/changes'

/** What others write comes to a page within a second; here it comes too late. */
const deafToOthers = async (page: Page): Promise<void> => {
  await page.route(changesOfOthers, (route) => route.abort())
}

/** A machine whose best next move is a meter check. Gives its id. */
const offeredMeterCheck = async (page: Page): Promise<string> => {
  for (const complaint of complaintIds) {
    const { state } = await putOnBench(page, { complaints: [complaint] })
    const answer = await page.request.get(`/api/bench/own/machines/${state.id}/view`)
    const { next } = (await answer.json()) as MachineView
    if (next.kind === 'check' && next.checkKind === 'meter') return state.id
  }
  throw new Error('no complaint leads to the meter first')
}
