import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { MachineDocument } from '../../src/bench/contract.ts'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { blueprintById } from '../../src/blueprint/library.ts'
import { gatesPassedWithCovers } from '../support/pass-gates.ts'
import { machineOnBench, noteOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { atRest, axeViolations, contrastViolations, openFolds, settled, sideways, watch } from './looks.ts'
import { putOnCard } from './page-writer.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { saidBeside } from './said-beside.ts'

/** Class II without an electronic control: insulation is asked for, the protective conductor is not. */
const doubleInsulated = blueprintById('bagless-upright')!
const earthed = blueprintById('tub-by-pass-earthed')!

const rules = { kind: 'rules', rules: { region: 'UK', profile: 'uk-cop-5.v1' } } as const
const seen = (step: 'visual' | 'polarity' | 'run', good = true): NoteContentInput => ({
  kind: 'proof',
  finding: { kind: 'look', step, good },
})
const insulated = {
  kind: 'proof',
  finding: {
    kind: 'reading',
    quantity: 'insulation',
    part: 'each metal part',
    value: 42e6,
    testVoltageV: 500,
    instrument: 'insulation-tester',
  },
} as const satisfies NoteContentInput
const proved = [rules, seen('visual'), insulated, seen('polarity'), seen('run')]

const findings = ({ notes, state }: MachineDocument) =>
  notes.flatMap(({ id, content }) => (content.kind === 'proof' && !state.struck.includes(id) ? [content.finding] : []))

describe.runIf(browserHere())('is one machine safe to sell', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const onBench = async (
    page: Page,
    blueprint: typeof earthed,
    ...notes: readonly NoteContentInput[]
  ): Promise<string> => {
    const machine = { blueprint: blueprint.id, plate: blueprint.plate }
    const { state } = await putOnBench(page, machine, ...gatesPassedWithCovers(blueprint), ...notes)
    return state.id
  }
  const openProof = async (page: Page, id: string): Promise<void> => {
    await page.goto(`/machine/${id}/proof`)
    await settled(page)
  }
  const verdict = (page: Page) => page.getByRole('region', { name: 'Verdict' })
  const step = (page: Page, title: string) => page.getByRole('region', { name: title, exact: true })
  const shows = (page: Page, title: string) => step(page, title).getByLabel('The instrument showed')
  const tap = async (page: Page, title: string, ...names: readonly string[]): Promise<void> => {
    for (const name of names) await step(page, title).getByRole('button', { name, exact: true }).click()
  }
  const saysGood = async (page: Page, title: string): Promise<void> => {
    await tap(page, title, 'Good')
    await step(page, title).getByRole('list', { name: 'Found' }).waitFor()
    await settled(page)
  }

  it('proves one of class II by thumb, check by check, until it is fit to sell', async () => {
    const page = await app.page(phone)
    const id = await onBench(page, doubleInsulated)
    await page.goto(`/machine/${id}`)
    await settled(page)
    await page.getByRole('link', { name: 'Is it safe to sell?' }).click()
    await page.waitForURL(`**/machine/${id}/proof`)
    await settled(page)
    expect(await verdict(page).innerText()).toMatch(/^Not proven\n/)
    expect(await step(page, 'Protective conductor').innerText()).toMatch(/does not apply\n*Class II/)
    expect(await step(page, 'Protective conductor').getByRole('button').count()).toBe(0)

    await step(page, 'Look it over').getByLabel('What you saw, in a word').fill('new lead')
    await saysGood(page, 'Look it over')
    // The next open check unfolds, with its cautions and its limit in sight, and the keyboard is led to it.
    const insulation = step(page, 'Insulation')
    expect(await insulation.innerText()).toMatch(/hands off, nobody else near/)
    // Code of practice for in-service inspection and testing, as test houses quote it: class II at least 2 MΩ, at 500 V.
    expect(await insulation.getByLabel('Limits').innerText()).toMatch(/at least 2 MΩ, tested at 500 V/)
    expect(await page.evaluate(() => document.activeElement?.closest('section')?.id)).toBe('step-insulation')

    // A multimeter on ohms finds nothing that breaks down at mains voltage.
    await insulation.getByLabel('Instrument', { exact: true }).selectOption({ label: 'Budget multimeter' })
    await tap(page, 'Insulation', 'beyond its range')
    await insulation.getByRole('list', { name: 'Found' }).waitFor()
    await settled(page)
    expect(await insulation.getByRole('list', { name: 'Found' }).innerText()).toMatch(
      /beyond its range, proves nothing\s[^]*tests at 1\.2 V; insulation is proved at 500 V DC[^]*Nothing is proved either way/,
    )
    expect(await verdict(page).innerText()).toMatch(
      /Not proven[^]*500 V DC[^]*Could be proved with: .*Insulation tester/,
    )

    await insulation
      .getByLabel('Instrument', { exact: true })
      .selectOption({ label: 'Insulation tester, 250 and 500 V' })
    await insulation.getByLabel('The instrument was last checked on').fill('2026-03-14')
    await tap(page, 'Insulation', '4', '2', 'MΩ', 'Enter')
    await expect
      .poll(() => insulation.getByRole('listitem').filter({ hasText: '42 MΩ at 500 V, passed' }).count())
      .toBe(1)
    await settled(page)
    // ±(3 % + 5 digits) on the range to 200 MΩ, whose last place is 0.2 MΩ, is rectangular: u = a/√3 (GUM, JCGM 100:2008, 4.3.7); k = 2.
    const expanded = (((0.03 * 42 + 5 * 0.2) / Math.sqrt(3)) * 2).toFixed(2)
    const passed = insulation.getByRole('listitem').filter({ hasText: '42 MΩ at 500 V, passed' })
    expect(await passed.innerText()).toContain(`Uncertainty ${expanded} MΩ (k = 2)`)
    expect(await passed.innerText()).toContain('last checked 2026-03-14')

    await saysGood(page, 'Polarity')
    expect(await step(page, 'Run').innerText()).toContain('behind an RCD of 30 mA or less')
    await saysGood(page, 'Run')
    expect(await verdict(page).innerText()).toMatch(/^Fit to sell\n[^]*Local rules and a competent person decide/)
    const record = page.getByRole('region', { name: 'Safety record to print' })
    expect(await record.getByRole('link', { name: 'Safety record (PDF)' }).getAttribute('href')).toBe(
      `/api/bench/own/machines/${id}/record.pdf`,
    )

    const all = (await machineOnBench(page, id)).notes
    // What was passed before running stands before them.
    const notes = all.slice(all.findIndex(({ content }) => content.kind === 'rules') - 1)
    expect(notes.slice(1).map(({ content }) => content.kind)).toEqual(['rules', ...Array<string>(5).fill('proof')])
    expect(notes[1].content).toEqual({ kind: 'rules', rules: { region: 'UK', profile: 'uk-cop-5.v1' } })
    expect(notes[2].content).toMatchObject({ finding: { step: 'visual', good: true, text: 'new lead' } })
    expect(notes[3].content).toMatchObject({ finding: { shown: 'above', value: null, testVoltageV: null } })
    expect(notes[4].content).toMatchObject({
      finding: { value: 42e6, testVoltageV: 500, checkedOn: '2026-03-14', part: 'each metal part', shown: 'figure' },
    })
    await page.close()
  })

  it('tells a slip at its field and loses nothing; takes an instrument by its specification', async () => {
    const page = await app.page(phone)
    const id = await onBench(page, doubleInsulated, rules, seen('visual'))
    await openProof(page, id)
    const insulation = step(page, 'Insulation')
    const instrument = insulation.getByLabel('Instrument', { exact: true })
    await shows(page, 'Insulation').fill('19')
    await tap(page, 'Insulation', 'Enter')
    expect(await saidBeside(instrument)).toMatch(/not said with which instrument/)
    // It lies far above the key: it is brought into sight.
    expect(await instrument.evaluate((field) => field === document.activeElement)).toBe(true)
    await instrument.selectOption({ label: 'Insulation tester, 250 and 500 V' })
    const refused = async (text: string, said: RegExp): Promise<void> => {
      await shows(page, 'Insulation').fill(text)
      await page.keyboard.press('Enter')
      expect(await saidBeside(shows(page, 'Insulation'))).toMatch(said)
      expect(await shows(page, 'Insulation').inputValue()).toBe(text)
    }
    await refused('', /^Nothing is entered yet/)
    await refused('lots', /is not a number/)
    await refused('12 mA', /mA is a unit of current, and this is resistance/)
    await refused('-3', /negative/)

    await instrument.selectOption({ label: 'Another, by its specification' })
    await shows(page, 'Insulation').fill('19')
    await page.keyboard.press('Enter')
    expect(await saidBeside(insulation.getByLabel('Name', { exact: true }))).toMatch(/has no name/)
    await insulation.getByLabel('Name', { exact: true }).fill('Hand-cranked tester')
    await insulation.getByLabel('± of the reading').fill('5')
    await insulation.getByLabel('+ digits').fill('2')
    await insulation.getByLabel('Range ends at').fill('20')
    await insulation.getByLabel('Last place').fill('50')
    await insulation.getByLabel('Tests at').fill('500')
    await tap(page, 'Insulation', 'Enter')
    expect(await saidBeside(insulation.getByLabel('Last place'))).toMatch(/not smaller than the range/)
    await insulation.getByLabel('Last place').fill('0.1')
    // What is typed stays when the check is folded away and opened again.
    const head = insulation.locator('.fold-head').first()
    await head.click()
    expect(await shows(page, 'Insulation').count()).toBe(0)
    await head.click()
    expect(await shows(page, 'Insulation').inputValue()).toBe('19')
    expect(findings(await machineOnBench(page, id))).toHaveLength(1)
    await tap(page, 'Insulation', 'Enter')
    await insulation.getByRole('list', { name: 'Found' }).waitFor()
    expect(findings(await machineOnBench(page, id)).at(-1)).toMatchObject({
      value: 19e6,
      testVoltageV: 500,
      instrument: { name: 'Hand-cranked tester', functions: [{ ranges: [{ maximum: 20e6, resolution: 1e5 }] }] },
    })
    await settled(page)
    // A finding is struck out in one tap, and the check is open again.
    await insulation.getByRole('button', { name: /^Strike out: insulation/ }).click()
    await expect.poll(() => insulation.getByRole('list', { name: 'Found' }).count()).toBe(0)
    expect(findings(await machineOnBench(page, id))).toHaveLength(1)
    // The instrument and its specification are remembered on this device.
    await page.reload()
    await settled(page)
    expect(await insulation.getByLabel('Name', { exact: true }).inputValue()).toBe('Hand-cranked tester')
    await page.close()
  })

  it('shows the verdict where it is sold, and is made void, visibly, by an opened cover', async () => {
    const page = await app.page(phone)
    const id = await onBench(page, doubleInsulated, ...proved)
    const reason = page.getByLabel('Reason for selling it unproved')
    const atSale = page.getByRole('group', { name: 'Is it safe to sell?' })
    const openSale = async (): Promise<void> => {
      await page.goto(`/machine/${id}`)
      await settled(page)
      await putOnCard(page, 'exit sell-working')
      await atSale.waitFor()
      await settled(page)
    }
    await openSale()
    expect(await atSale.innerText()).toMatch(/^Fit to sell\./)
    expect(await reason.count()).toBe(0)

    await noteOnBench(page, id, { kind: 'opened', cover: 'filter-cover', minutes: 1 })
    await openProof(page, id)
    expect(await verdict(page).innerText()).toMatch(/^Not proven/)
    const warning = page.getByRole('group', { name: 'The proof was made void' })
    expect(await warning.innerText()).toMatch(/Opened: /)
    await warning.getByRole('button', { name: '4 that count no longer' }).click()
    expect(await warning.innerText()).toContain('42 MΩ at 500 V')
    expect(await page.getByRole('group', { name: 'Covers are off' }).count()).toBe(1)
    expect(await page.getByRole('button', { name: 'Good', exact: true }).count()).toBe(0)

    await noteOnBench(page, id, { kind: 'closed', cover: 'filter-cover', minutes: 1 })
    await openSale()
    expect(await atSale.innerText()).toMatch(/^Not proven\. Still open: look it over, insulation, polarity, run\./)
    expect(await reason.count()).toBe(1)
    await atSale.getByRole('link').click()
    await settled(page)
    await saysGood(page, 'Look it over')
    expect(await verdict(page).innerText()).not.toContain('Look it over')
    await page.close()
  })

  it('asks one of class I for its earth, by its lead; rules changed later are judged anew', async () => {
    const page = await app.page(phone)
    const id = await onBench(page, earthed, rules, seen('visual'))
    await openProof(page, id)
    const earth = step(page, 'Protective conductor')
    const change = page.getByRole('form', { name: 'Rules and lead' })
    const noteRules = () => change.getByRole('button', { name: 'Prove it by these' }).click()
    await page.getByRole('button', { name: 'Other rules, or another lead' }).click()
    await change.getByLabel('Lead, each conductor').selectOption({ label: '0.75 mm²' })
    await change.getByLabel('Its length').fill('300')
    await noteRules()
    expect(await saidBeside(change.getByLabel('Its length'))).toMatch(/No appliance has a lead of 300 m/)
    await change.getByLabel('Its length').fill('8')
    await noteRules()
    // 0.1 Ω and the lead (code of practice, 5th edition): 8 m of 26.0 mΩ/m (IEC 60228, class 5, 0.75 mm²).
    await expect.poll(() => earth.getByLabel('Limits').innerText()).toContain('at most 0.308 Ω')

    await earth.getByLabel('Instrument', { exact: true }).selectOption({ label: 'Low-ohm continuity tester, 200 mA' })
    await earth.getByLabel('Taken at').fill('motor housing')
    await tap(page, 'Protective conductor', '0', 'point', '4', '2', 'Enter')
    await earth.getByRole('list', { name: 'Found' }).waitFor()
    await settled(page)
    expect(await earth.getByRole('list', { name: 'Found' }).innerText()).toMatch(/of motor housing: 0\.42 Ω, failed/)
    expect(await verdict(page).innerText()).toMatch(/^Not fit to sell/)

    // Of another region, with another mains: refused, and the finding stays.
    await page.getByRole('button', { name: 'Other rules, or another lead' }).click()
    expect(await change.innerText()).toContain('kept, and judged anew')
    await change.getByLabel('Region').selectOption({ label: 'The United States' })
    await noteRules()
    expect(await saidBeside(change.getByLabel('Region'))).toMatch(/sockets in the United States give 120 V/)
    await change.getByLabel('Region').selectOption({ label: 'The United Kingdom' })
    await change.getByLabel('Its length').fill('15')
    await noteRules()
    // 0.1 Ω + 15 m × 26.0 mΩ/m = 0.49 Ω.
    await expect.poll(() => earth.getByRole('list', { name: 'Found' }).innerText()).toMatch(/0\.42 Ω, passed/)
    await settled(page)
    expect(await verdict(page).innerText()).toMatch(/^Not proven/)
    await page.close()
  })

  it('says what lead it needs, and of each cable at hand whether it would do', async () => {
    const page = await app.page(phone)
    const id = await onBench(page, earthed)
    await openProof(page, id)
    const panel = page.getByRole('region', { name: 'Lead, plug and fuse' })
    expect(await panel.getByRole('group', { name: 'A motor that cannot turn' }).innerText()).toMatch(/13 A fuse/)
    await panel.getByRole('button', { name: 'Replacement lead' }).click()
    const length = panel.getByLabel('Length of the new lead')
    await length.fill('300')
    expect(await saidBeside(length)).toMatch(/No appliance has a lead of 300 m/)
    await length.fill('8')
    const answer = panel.getByRole('group', { name: 'The lead it needs' })
    // BS 1363 plugs: a BS 1362 fuse of 13 A above 700 W; harmonised colours of flexible cords (common trade tables).
    await expect.poll(() => answer.innerText()).toMatch(/fuse in the plug\s+13 A, brown/i)
    expect(await answer.innerText()).toMatch(/protective earth\s+green and yellow to E/i)
    await answer.getByRole('button', { name: /^.?\s*Each conductor/ }).click()
    expect(await answer.innerText()).toContain('IEC 60335-1')

    const form = panel.getByRole('form', { name: 'A cable to try' })
    const list = async (cores: string): Promise<void> => {
      await form.getByLabel('Size').selectOption({ label: '1 mm²' })
      await form.getByLabel('Type').selectOption('H05VV-F')
      await form.getByLabel('Number of cores').selectOption(cores)
      await form.getByLabel('Length of the cable').fill('9')
      await form.getByLabel('Condition').selectOption({ label: 'sound from end to end' })
      await form.getByRole('button', { name: 'Try this cable' }).click()
    }
    await list('2')
    await list('3')
    const cables = panel.getByRole('list', { name: 'Cables at hand' }).getByRole('listitem')
    await expect
      .poll(async () => (await cables.allInnerTexts()).join('\n'))
      .toMatch(/2 cores[^]*Would not do\s+2 cores, and 3 are needed[^]*3 cores[^]*Would do\s+Cut it to 8 m/)
    await page.close()
  })

  it('judges a cable’s copper by what it reads, in words, and tells a slip at its field', async () => {
    const page = await app.page(phone)
    const id = await onBench(page, earthed)
    await openProof(page, id)
    const panel = page.getByRole('region', { name: 'Lead, plug and fuse' })
    await panel.getByRole('button', { name: 'Replacement lead' }).click()
    await panel.getByRole('button', { name: 'Is a cable’s copper what it claims?' }).click()
    const form = panel.getByRole('form', { name: 'Is its copper what it claims' })
    const judge = () => form.getByRole('button', { name: 'Judge its copper' }).click()
    await form.getByLabel('Size it claims').selectOption({ label: '0.75 mm²' })
    await form.getByLabel('Meter').selectOption({ label: 'Low-ohm continuity tester, 200 mA' })
    await form.getByLabel('One conductor reads').fill('0.312')
    await judge()
    expect(await saidBeside(form.getByLabel('Length measured'))).toMatch(/missing/)
    await form.getByLabel('Length measured').fill('eight')
    await judge()
    await expect.poll(() => saidBeside(form.getByLabel('Length measured'))).toMatch(/not a number/)
    await form.getByLabel('Length measured').fill('8')
    await judge()
    // IEC 60228, class 5: 8 m of 0.75 mm² have at most 8 × 26.0 mΩ = 0.208 Ω; 8 m of 0.5 mm² 8 × 39.0 mΩ = 0.312 Ω.
    const answer = form.getByRole('group', { name: 'What its copper is' })
    await answer.waitFor()
    expect(await answer.innerText()).toMatch(/0\.312 Ω where 0\.208 Ω is the most[^]*thinner copper[^]*0\.5 mm²/)
    await form.getByLabel('One conductor reads').fill('0.2')
    expect(await answer.count()).toBe(0)
    await page.close()
  })

  it('asks for a look in the recall list, says what the law asks, and leads to the next check', async () => {
    const page = await app.page(phone)
    const id = await onBench(page, doubleInsulated, rules, seen('visual'))
    await openProof(page, id)
    expect(await verdict(page).innerText()).toMatch(/Recall check: not done/)
    await verdict(page).getByRole('button', { name: 'Go to: insulation' }).click()
    const head = step(page, 'Insulation').locator('.fold-head').first()
    expect(await head.evaluate((element) => element === document.activeElement)).toBe(true)
    expect(await head.evaluate((element) => element.getBoundingClientRect().top < window.innerHeight / 2)).toBe(true)

    const recall = step(page, 'Recall check')
    await recall.getByRole('button', { name: /Recall check/ }).click()
    expect(await recall.innerText()).toMatch(/Office for Product Safety and Standards/)
    await recall.getByRole('button', { name: 'In no list' }).click()
    await recall.getByRole('list', { name: 'Found' }).waitFor()
    await settled(page)
    expect(await verdict(page).innerText()).toMatch(/^Not proven[^]*Recall check: done, the plate was found in no list/)
    await recall.getByRole('button', { name: 'In a list' }).click()
    await expect.poll(() => verdict(page).innerText()).toMatch(/^Not fit to sell\n+Found in a recall list/)
    await settled(page)
    await recall.getByRole('button', { name: 'Strike out: recall check' }).click()
    await expect.poll(() => verdict(page).innerText()).toMatch(/^Not proven/)
    expect(findings(await machineOnBench(page, id)).at(-1)).toMatchObject({ step: 'recall', good: true })

    const selling = page.getByRole('region', { name: 'Selling it second-hand' })
    await selling.getByRole('button').click()
    expect(await selling.innerText()).toMatch(/General Product Safety Regulations 2005[^]*Local rules decide/)
    const visual = step(page, 'Look it over')
    await visual.locator('.fold-head').first().click()
    await visual.getByRole('button', { name: 'Drawn: what to look for' }).click()
    const drawn = visual.locator('.look-drawings').getByRole('img')
    expect(await drawn.count()).toBe(6)
    // IEC 60445: brown is line, blue neutral; a machine of class II has no third core.
    expect(await drawn.last().getAttribute('aria-label')).toBe('Cord with its cores: line brown, neutral blue')
    await page.close()
  })

  it('has no fault that axe-core sees, and fits the window, phone and laptop, light and dark', async () => {
    const first = await app.page(laptop)
    const id = await onBench(first, earthed, rules, seen('visual', false), {
      kind: 'proof',
      finding: { kind: 'reading', quantity: 'earth-continuity', value: 0.61, instrument: 'budget-multimeter' },
    })
    const isVoid = await onBench(first, doubleInsulated, ...proved, {
      kind: 'opened',
      cover: 'filter-cover',
      minutes: 1,
    })
    await first.close()
    const found: Record<string, readonly string[]> = {}
    const page = await app.page(phone)
    const { errors } = watch(page)
    for (const [name, machine] of Object.entries({ failed: id, void: isVoid })) {
      await openProof(page, machine)
      await openFolds(page)
      await settled(page)
      for (const choice of await page.getByLabel('Instrument', { exact: true }).all()) await choice.selectOption('own')
      for (const size of [phone, laptop]) {
        await page.setViewportSize(size)
        await atRest(page)
        found[`${name} ${size.width}`] = [...(await axeViolations(page)), ...(await outOfWindow(page)), ...errors]
        await page.emulateMedia({ colorScheme: 'dark' })
        await atRest(page)
        found[`${name} ${size.width} dark`] = await contrastViolations(page)
        await page.emulateMedia({ colorScheme: 'light' })
      }
      await page.setViewportSize(phone)
    }
    await page.close()
    expect(Object.keys(found)).toHaveLength(8)
    expect(Object.entries(found).filter(([, faults]) => faults.length > 0)).toEqual([])
  })
})

const outOfWindow = async (page: Page): Promise<readonly string[]> => {
  const { scrolledPx, sticksOut } = await sideways(page)
  return [...(scrolledPx === 0 ? [] : [`scrolls ${scrolledPx} px sideways`]), ...sticksOut]
}
