import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { jobOf } from '../../src/bench/job.ts'
import type { MachineDocument } from '../../src/bench/contract.ts'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { airView, virtualGauge } from '../../src/machine/index.ts'
import { upright } from '../story/bench-job.ts'
import { machineOnBench, noteOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { atRest, axeViolations, contrastViolations, openFolds, settled, sideways, watch } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { saidBeside } from './said-beside.ts'

/** What must be passed before the machine is run, passed with the covers off that it takes, all on again after. */
const gates: readonly NoteContentInput[] = upright.checks
  .filter((check) => check.beforeRunning)
  .flatMap((check): NoteContentInput[] => {
    const result =
      check.kind !== 'meter'
        ? ({ kind: 'grade', outcome: check.outcomes[0].id } as const)
        : check.id === 'pins-on'
          ? ({ kind: 'ohms', resistanceOhm: 6.4 } as const)
          : ({ kind: 'open' } as const)
    return [
      ...opened(check.coversOff),
      { kind: 'reading', check: check.id, minutes: 1, result },
      ...closed(check.coversOff),
    ]
  })

function opened(covers: readonly string[]): NoteContentInput[] {
  return covers.map((cover) => ({ kind: 'opened', cover, minutes: 1 }))
}
function closed(covers: readonly string[]): NoteContentInput[] {
  return covers.toReversed().map((cover) => ({ kind: 'closed', cover, minutes: 1 }))
}

const gauge = 'digital-manometer-5-psi'

const read = (holeMm: number, suctionPa: number): NoteContentInput => ({
  kind: 'gauge',
  reading: {
    way: 'hose-end',
    opening: { kind: 'hole', diameterM: holeMm / 1000 },
    read: { measure: 'suction', suctionPa },
    instrument: gauge,
  },
})

/** Suction at holes of 13, 19 and 32 mm: low at the wide ones, as behind a blocked filter; and of the same machine mended. */
const asFound = [read(13, 9960), read(19, 5120), read(32, 1080)]
const mended = [read(13, 10_500), read(19, 5760), read(32, 1340)]
const filterCovers = ['bag-door', 'filter-cover']
const filterCleaned: readonly NoteContentInput[] = [
  ...opened(filterCovers),
  { kind: 'repaired', repair: 'pre-motor-filter-new', option: 'clean', minutes: 5, costMinor: 0 },
  ...closed(filterCovers),
]

const viewOf = ({ state, notes }: MachineDocument) => valueOf(airView(jobOf(state, notes, upright)))

const gaugeNotes = ({ notes, state }: MachineDocument) =>
  notes.flatMap(({ id, content }) => (content.kind === 'gauge' && !state.struck.includes(id) ? [content] : []))

describe.runIf(browserHere())('the air of one machine', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const openAir = async (page: Page, ...notes: readonly NoteContentInput[]): Promise<string> => {
    const { state } = await putOnBench(page, { complaints: ['weak-suction'] }, ...notes)
    await page.goto(`/machine/${state.id}/air`)
    await settled(page)
    return state.id
  }
  const shows = (page: Page) => page.getByLabel('The gauge shows')
  const card = (page: Page) => page.locator('.move')
  const tap = (page: Page, name: string) => card(page).getByRole('button', { name, exact: true }).click()
  /** Taps an opening and a number, and enters it. */
  const enter = async (page: Page, opening: string, keys: string): Promise<void> => {
    await tap(page, opening)
    for (const key of keys) await tap(page, key === '.' ? 'point' : key)
    await tap(page, 'Enter')
    await expect.poll(() => shows(page).inputValue()).toBe('')
    await settled(page)
  }

  it('takes three readings by thumb, one in inches of water, and says what is wrong and what to read next', async () => {
    const page = await app.page(phone)
    const id = await openAir(page, ...gates)
    expect(await page.locator('.air-nothing').innerText()).toContain('Three readings answer already')
    await enter(page, '12.5 mm', '10.3')
    await tap(page, 'inH2O')
    await enter(page, '20 mm', '18.4')
    expect(await card(page).locator('.field-unit').first().innerText()).toBe('inH2O')
    await page.reload()
    await settled(page)
    // The unit last used stays on this device, also over what the readings are expected to be.
    expect(await card(page).locator('.field-unit').first().innerText()).toBe('inH2O')
    expect(await card(page).getByLabel('What it would show').innerText()).toMatch(/ inH2O/)
    await tap(page, 'kPa')
    await enter(page, '26 mm', '2.11')

    const document = await machineOnBench(page, id)
    const suctions = gaugeNotes(document).map(({ reading }) => reading.read)
    // Conventional inch of water: 249.0889 Pa (NIST SP 811, appendix B.8; from memory).
    const inchesPa = 18.4 * 249.0889
    expect(suctions[0]).toEqual({ measure: 'suction', suctionPa: 10_300 })
    expect(suctions[1].measure === 'suction' && Math.abs(suctions[1].suctionPa / inchesPa - 1)).toBeLessThan(1e-6)
    expect(suctions[2]).toEqual({ measure: 'suction', suctionPa: 2110 })

    const view = viewOf(document)
    const [lead] = view.sets[0].explanations
    expect(await page.locator('.air-verdict').innerText()).toContain(
      `${lead.name}, ${Math.round(lead.probability * 100)} %`,
    )
    const said = page.getByRole('region', { name: 'What the readings say' })
    expect((await said.innerText()).toLowerCase()).toContain(lead.figure?.toLowerCase() ?? lead.name)
    const next = page.getByRole('region', { name: 'Next reading' })
    expect(await next.getByRole('heading', { level: 2 }).innerText()).toBe(view.next[0].name)
    expect(await next.innerText()).toContain(view.next[0].tells)
    expect(await page.locator('.curve-frame circle').count()).toBeGreaterThanOrEqual(3)
    const { peak } = view.sets[0].curve
    const picture = await page.getByRole('img', { name: /^Air power against airflow/ }).getAttribute('aria-label')
    expect(peak.kind === 'peak' && picture).toContain(
      `at most ${peak.kind === 'peak' ? peak.airPowerW.toPrecision(3) : ''} W`,
    )
    await page.close()
  })

  it('tells a slip at its field, whoever finds it, and loses nothing', async () => {
    const page = await app.page(phone)
    const id = await openAir(page, ...gates)
    await tap(page, 'Sealed')
    const refused = async (text: string, said: RegExp): Promise<void> => {
      await shows(page).fill(text)
      await page.keyboard.press('Enter')
      expect(await saidBeside(shows(page))).toMatch(said)
      expect(await shows(page).inputValue()).toBe(text)
    }
    await refused('', /^Nothing is entered yet/)
    await refused('lots', /^“lots” is not a number/)
    await refused('-12', /below zero/)
    await refused('12 L/s', /“L\/s” is not a unit known here for a pressure/)
    // What only the bench knows: the page asks it, and puts its answer beside the field.
    await refused('0', /^A reading of 0 says that nothing is drawn at all/)
    await refused('19400', /more than the fan of any vacuum cleaner gives.*Check the unit/)
    await page.getByLabel('Gauge', { exact: true }).selectOption({ label: 'Digital manometer to 13.8 kPa' })
    expect(await card(page).innerText()).toContain('Saturates: it ends at 13.8 kPa')
    await refused('13.9', /^The gauge is at its end \(13\.8 kPa\)/)
    // A slip in a field that is folded away opens its fold.
    await page.getByRole('button', { name: /^More/ }).click()
    await page.getByLabel('Temperature').fill('18')
    await page.getByRole('button', { name: /^More/ }).click()
    await shows(page).fill('13.1')
    await page.keyboard.press('Enter')
    expect(await saidBeside(page.getByLabel('Barometer'))).toMatch(/barometer is missing/)
    expect(await page.getByLabel('Temperature').inputValue()).toBe('18')
    expect(gaugeNotes(await machineOnBench(page, id))).toEqual([])
    await page.getByLabel('Barometer').fill('1013')
    await tap(page, 'Enter')
    await expect.poll(() => shows(page).inputValue()).toBe('')
    expect(gaugeNotes(await machineOnBench(page, id)).at(-1)?.reading).toMatchObject({
      opening: { kind: 'sealed' },
      read: { suctionPa: 13_100 },
      room: { barometerPa: 101_300, temperatureC: 18, relativeHumidity: 0.5 },
    })
    await page.close()
  })

  it('strikes a reading out, and sets what it was after a repair against what it was before', async () => {
    const page = await app.page(phone)
    const id = await openAir(page, ...gates, ...asFound, read(26, 9000))
    const readings = page.getByRole('region', { name: 'Readings', exact: true })
    expect(await readings.getByRole('listitem').count()).toBe(4)
    const odd = page.getByRole('group', { name: 'Readings that contradict each other' })
    expect(await odd.innerText()).toContain('26 mm hole')
    await readings.getByRole('button', { name: /^Strike out: 26 mm hole/ }).click()
    await expect.poll(() => readings.getByRole('listitem').count()).toBe(3)
    await settled(page)
    expect(gaugeNotes(await machineOnBench(page, id))).toHaveLength(3)
    expect(await odd.count()).toBe(0)
    expect(await page.getByRole('region', { name: 'Before and after' }).count()).toBe(0)

    for (const note of filterCleaned) await noteOnBench(page, id, note)
    await page.reload()
    await settled(page)
    expect(await page.locator('.air-old').innerText()).toContain('It was repaired since')
    for (const note of mended) await noteOnBench(page, id, note)
    await page.reload()
    await settled(page)
    expect(await page.locator('.air-old').count()).toBe(0)
    const both = page.getByRole('region', { name: 'Before and after' })
    expect(await both.innerText()).toContain(viewOf(await machineOnBench(page, id)).beforeAfter!.text)
    // Through one sharp hole airflow goes as the root of the suction, so air power as its power of 1.5 (orifice law, from memory).
    const row = both.getByRole('row', { name: /^19 mm hole/ })
    const shown = /([\d.]+) ×[^×]*?([\d.]+) ×/.exec(await row.innerText())
    expect(Number(shown?.[1])).toBeCloseTo(5760 / 5120, 2)
    expect(Math.abs(Number(shown?.[2]) - (5760 / 5120) ** 1.5)).toBeLessThan(0.015)
    expect(await page.locator('.curve-key').innerText()).toMatch(/After 1 repair\s+As found\s+A sound machine/)
    await page.close()
  })

  it('lets nothing be entered before the machine may be run, and leads there and back', async () => {
    const page = await app.page(phone)
    const id = await openAir(page)
    const barred = page.getByRole('group', { name: 'Not to be run yet' })
    for (const { name } of upright.checks.filter((check) => check.beforeRunning))
      expect(await barred.innerText()).toContain(name)
    expect(await page.getByRole('form').count()).toBe(0)
    await page.getByRole('link', { name: 'Back to the machine' }).click()
    await page.waitForURL(`**/machine/${id}`)
    await page.getByRole('link', { name: 'How it breathes' }).click()
    await page.waitForURL(`**/machine/${id}/air`)
    await page.close()
  })

  it('reads the virtual gauge of a practice machine', async () => {
    const page = await app.page(phone)
    const setUp = { way: 'hose-end', opening: { kind: 'sealed' as const }, out: [], instrument: gauge }
    for (let seed = 1; ; seed++) {
      const { state } = await putOnBench(page, { complaints: ['weak-suction'], practiceSeed: seed })
      const reading = virtualGauge(jobOf(state, [], upright), seed, setUp)
      if (reading === null || reading.read.measure !== 'suction') continue
      for (const note of gates) await noteOnBench(page, state.id, note)
      await page.goto(`/machine/${state.id}/air`)
      await settled(page)
      await tap(page, 'Sealed')
      await tap(page, 'Read the virtual gauge')
      await expect
        .poll(() => shows(page).inputValue())
        .toBe(String(Number((reading.read.suctionPa / 1000).toPrecision(4))))
      await tap(page, 'Enter')
      await expect.poll(async () => gaugeNotes(await machineOnBench(page, state.id)).length).toBe(1)
      break
    }
    await page.close()
  })

  it('has no fault that axe-core sees, fits the window, and is large enough to read and to tap', async () => {
    const first = await app.page(laptop)
    const id = await openAir(first, ...gates, ...asFound, ...filterCleaned, ...mended)
    await first.close()
    const found: Record<string, readonly string[]> = {}
    const page = await app.page(phone)
    const { errors } = watch(page)
    await page.goto(`/machine/${id}/air`)
    await settled(page)
    await openFolds(page)
    for (const size of [phone, laptop]) {
      await page.setViewportSize(size)
      await page.emulateMedia({ colorScheme: 'light' })
      await settled(page)
      await atRest(page)
      found[`light ${size.width}`] = [
        ...(await axeViolations(page)),
        ...(await outOfWindow(page)),
        ...(await tooSmall(page)),
        ...errors,
      ]
      const template = page.getByRole('link', { name: 'Drilling template to print' })
      const printed = await page.request.get((await template.getAttribute('href'))!)
      expect(printed.headers()['content-type']).toContain('image/svg+xml')
      await page.emulateMedia({ colorScheme: 'dark' })
      await atRest(page)
      found[`dark ${size.width}`] = [...(await contrastViolations(page)), ...(await outOfWindow(page))]
    }
    await page.close()
    expect(found).toEqual({ 'light 360': [], 'light 1280': [], 'dark 360': [], 'dark 1280': [] })
  })
})

const outOfWindow = async (page: Page): Promise<readonly string[]> => {
  const { scrolledPx, sticksOut } = await sideways(page)
  return [...(scrolledPx === 0 ? [] : [`scrolls ${scrolledPx} px sideways`]), ...sticksOut]
}

/** Texts under 14 px, and buttons and fields less high than a finger (44 px). */
const tooSmall = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const inSight = [...document.querySelectorAll('main *')].filter((one) => one.getBoundingClientRect().height > 1)
    const written = inSight.filter((one) =>
      [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()),
    )
    return [
      ...written
        .filter((one) => parseFloat(getComputedStyle(one).fontSize) < 14 && one.closest('.unseen') === null)
        .map((one) => `small text: ${one.textContent}`),
      ...inSight
        .filter((one) => one.matches('button, select, input, .on-its-own') && one.getBoundingClientRect().height < 43.5)
        .map((one) => `small target: ${one.outerHTML.slice(0, 120)}`),
    ]
  })
