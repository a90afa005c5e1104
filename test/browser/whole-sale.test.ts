import type { Locator, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { functionsView } from '../../src/bench/functions/functions-view.ts'
import { jobOf } from '../../src/bench/job.ts'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { gatesPassedOf } from '../support/pass-gates.ts'
import { upright } from '../story/bench-job.ts'
import { machineOnBench, noteOnBench, putOnBench } from './bench.ts'
import { browserHere, phone } from './chromium.ts'
import { axeViolations, settled, sideways } from './looks.ts'
import { putOnCard } from './page-writer.ts'
import { startApp, type RunningApp } from './running-app.ts'

const patienceMs = 60_000

const picture = async (background: string) => ({
  name: `${background}.jpg`,
  mimeType: 'image/jpeg',
  buffer: await sharp({ create: { width: 800, height: 600, channels: 3, background } })
    .jpeg()
    .toBuffer(),
})

/** The camera's way in beside its button. */
const wayIn = (page: Page, name: string): Locator => page.locator(`input[type="file"][aria-label="${name}"]`)
const button = (place: Page | Locator, name: string | RegExp): Locator =>
  place.getByRole('button', { name, exact: true })
const idOf = (page: Page): string => new URL(page.url()).pathname.split('/')[2] ?? ''

/** Goes from one page of the machine to another, by its links. */
const follow = async (page: Page, link: string): Promise<void> => {
  await settled(page, patienceMs)
  const back = page.getByRole('link', { name: 'Back to the machine' })
  if (await back.isVisible()) await back.tap()
  await page.getByRole('link', { name: link, exact: true }).tap()
  await back.waitFor()
  await settled(page, patienceMs)
}

const looksRight = async (page: Page): Promise<void> => {
  await settled(page, patienceMs)
  expect(await axeViolations(page)).toEqual([])
  expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
}

/** What must be passed before running, each with the covers off that it needs; by other tests through the page. */
const gates = (): readonly NoteContentInput[] =>
  gatesPassedOf(upright).flatMap((gate) => {
    const covers = gate.kind === 'reading' ? upright.checks.find(({ id }) => id === gate.check)!.coversOff : []
    const noted = (kind: 'opened' | 'closed') => covers.map((cover) => ({ kind, cover, minutes: 1 }) as const)
    return [...noted('opened'), gate, ...noted('closed').toReversed()]
  })

const graded = (check: string, outcome: string): NoteContentInput => ({
  kind: 'reading',
  check,
  result: { kind: 'grade', outcome },
  minutes: 1,
})

describe.runIf(browserHere())('a whole job, from the advert to the sale', () => {
  let app: RunningApp
  const faults: string[] = []
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(async () => {
    await app.stop()
    expect(faults).toEqual([])
  })

  const thumbPage = async (): Promise<Page> => {
    const page = await app.browser.newPage({
      viewport: phone,
      hasTouch: true,
      isMobile: true,
      baseURL: app.address,
      serviceWorkers: 'block',
    })
    page.setDefaultTimeout(20_000)
    page.on('pageerror', ({ message }) => faults.push(message))
    return page
  }

  const buy = async (page: Page): Promise<void> => {
    await page.goto('/buy')
    await page.evaluate((id) => localStorage.setItem('thrum-kinds', JSON.stringify([id])), upright.id)
    await page.reload()
    await page.getByRole('group', { name: 'Weighed last' }).getByRole('button').first().tap()
    await page.getByLabel('What the seller says').fill('Just stopped, dead')
    await page.getByLabel('Asks').fill('15')
    await page.getByLabel('How far, one way').fill('4')
    await button(page, /^Dead/).first().waitFor()
    await page.locator('section.buy-strip[aria-busy="false"]').waitFor({ timeout: patienceMs })
    await page.getByLabel('Name').fill('Green upright')
    await looksRight(page)
    await button(page, 'Keep this advert').tap()
    await page.getByRole('heading', { name: 'Green upright' }).waitFor()
    await looksRight(page)
    await page.getByLabel('For', { exact: true }).fill('12')
    await button(page, 'Put it on the bench').tap()
    await page.waitForURL(/\/machine\//)
    await settled(page, patienceMs)
  }

  /** The handle cover off with a photograph, the flex mended, and the cover on again with every screw. */
  const mend = async (page: Page, id: string): Promise<void> => {
    await noteOnBench(page, id, { kind: 'reading', check: 'pins-on', result: { kind: 'open' }, minutes: 2 })
    await follow(page, 'Strip-down')
    await page.getByLabel('The fixings go in').fill('pot 1')
    await button(page, 'Off, as it says: Handle cover').tap()
    await page.getByText('4 × TX15 plastic 3.5 × 16 in pot 1').waitFor()
    await wayIn(page, 'Photograph this step: Handle cover').setInputFiles(await picture('sienna'))
    await page.getByRole('list', { name: 'Photographs: Handle cover' }).getByRole('img').waitFor()
    await looksRight(page)
    await noteOnBench(page, id, { kind: 'confirmed', fault: 'flex-entry-line-open' })
    const mended = { repair: 'flex-shorten-entry', option: 'refit', minutes: 20, costMinor: 0 }
    await noteOnBench(page, id, { kind: 'repaired', ...mended })
    await page.reload()
    await settled(page, patienceMs)
    await button(page, 'Put back').tap()
    const back = page.getByRole('form', { name: 'Put back: Handle cover' })
    await back.getByRole('img').waitFor()
    await back.getByRole('checkbox', { name: '4 × TX15 plastic 3.5 × 16' }).check()
    await button(back, 'Back on, all 4 fixings').tap()
    await page.getByText('Nothing is off or out.').waitFor()
    await looksRight(page)
  }

  const clean = async (page: Page): Promise<void> => {
    await follow(page, 'Clean')
    const grade = async (when: string, letter: string): Promise<void> => {
      const looks = page.getByRole('form', { name: 'Grade a part' })
      await button(looks, when).tap()
      await button(looks, letter).tap()
      await button(looks, 'Note the grade').tap()
      await page.getByRole('region', { name: 'Looks' }).getByRole('cell', { name: letter, exact: true }).waitFor()
      await settled(page, patienceMs)
    }
    await grade('Before', 'C')
    const first = page.getByRole('list', { name: 'First' })
    await button(first, /^.?\s*New pre-motor filter/).tap()
    await button(first, /Or: wash the pre-motor filter/).tap()
    const form = page.getByRole('form', { name: 'Done: Wash the pre-motor filter' })
    await form.getByLabel('Materials').fill('0.25')
    await button(form, /^Done: /).tap()
    const drying = page.getByRole('region', { name: 'Drying' })
    await drying.getByText(/^dry at \d\d:\d\d /).waitFor()
    await looksRight(page)
    await button(page, /^It is dry: /).tap()
    await drying.waitFor({ state: 'detached' })
    await grade('After', 'B')
  }

  const tryFunctions = async (page: Page, id: string): Promise<void> => {
    await follow(page, 'Does it all work?')
    for (const name of ['tools', 'handle-lock', 'bag-door']) {
      const row = page.locator(`#function-${name}`)
      const head = row.getByRole('button', { expanded: false })
      if ((await head.count()) > 0) await head.first().tap()
      await row.getByRole('group').getByRole('button').first().tap()
      await row.locator('.function-state.good').waitFor()
      await row.getByRole('group').waitFor({ state: 'detached' })
      await settled(page, patienceMs)
    }
    await looksRight(page)
    // What is left is answered as good, past the page; what must be opened for it is left out.
    const { state, notes } = await machineOnBench(page, id)
    const open = functionsView(jobOf(state, notes, upright)).rows.filter((row) => row.state.kind !== 'told' && row.group !== 'opened') // prettier-ignore
    for (const row of open) await noteOnBench(page, id, row.answers[0].note)
    await page.reload()
    await page.locator('.verdict', { hasText: /tried/ }).waitFor()
  }

  const prove = async (page: Page): Promise<void> => {
    await follow(page, 'Is it safe to sell?')
    const step = (title: string): Locator => page.getByRole('region', { name: title, exact: true })
    const good = async (title: string): Promise<void> => {
      const folded = step(title).locator('.fold-head[aria-expanded=false]').first()
      if ((await button(step(title), 'Good').count()) === 0) await folded.tap()
      await button(step(title), 'Good').tap()
      await step(title).getByRole('list', { name: 'Found' }).waitFor()
      await settled(page, patienceMs)
    }
    await good('Look it over')
    const leakage = step('Leakage current')
    await leakage.getByLabel('Instrument', { exact: true }).selectOption({ value: 'leakage-tester' })
    for (const key of ['0', 'point', '0', '5', 'mA', 'Enter']) await button(leakage, key).tap()
    await leakage.getByRole('list', { name: 'Found' }).waitFor()
    await settled(page, patienceMs)
    await good('Polarity')
    // That it runs was shown by the full run at the bench.
    expect(await page.getByRole('region', { name: 'Verdict' }).innerText()).toMatch(/^Fit to sell\n/)
    await looksRight(page)
  }

  const photograph = async (page: Page): Promise<void> => {
    await follow(page, 'Photographs')
    await button(page, /Shots that sell it: 0 of/).tap()
    for (const shot of ['Front', 'Tube and tools laid out']) {
      await wayIn(page, `Take: ${shot}`).setInputFiles(await picture('teal'))
      await wayIn(page, `Again: ${shot}`).waitFor({ state: 'attached' })
    }
    await looksRight(page)
  }

  const describeIt = async (page: Page): Promise<void> => {
    await follow(page, 'What to ask')
    const offered = page.getByRole('form', { name: 'It is offered' })
    await offered.getByLabel('It is listed at').fill('85')
    await button(offered, 'Note that it is listed').tap()
    await page.getByText(/^Offered at £85\.00/).waitFor({ timeout: patienceMs })
    await follow(page, 'Sale sheet')
    const opening = page.getByRole('region', { name: 'What it is', exact: true })
    await button(opening, 'Edit: What it is').tap()
    await opening.getByRole('textbox').fill('Safety tested, in good working order. New belt.')
    await button(opening, 'Put it so').tap()
    await opening.locator('mark').waitFor()
    expect(await opening.locator('mark').innerText()).toMatch(/^New belt \(/)
    await button(opening, 'Edit: What it is').tap()
    await opening.getByRole('textbox').fill('Safety tested, in good working order.')
    await button(opening, 'Put it so').tap()
    await opening.locator('mark').waitFor({ state: 'detached' })
    expect(await page.locator('main mark').count()).toBe(0)
    expect(await page.getByRole('region', { name: 'Price' }).innerText()).toContain('£85.00')
    await looksRight(page)
  }

  it(
    'by thumb: weighed, bought, mended, cleaned, tried, proved, described and sold',
    { timeout: 180_000 },
    async () => {
      const page = await thumbPage()
      await buy(page)
      const id = idOf(page)
      await mend(page, id)
      await clean(page)
      for (const gate of gates()) await noteOnBench(page, id, gate)
      await noteOnBench(page, id, graded('run-first', 'runs'))
      await noteOnBench(page, id, graded('run-full', 'works'))
      await page.reload()
      await tryFunctions(page, id)
      await prove(page)
      await photograph(page)
      await describeIt(page)

      await page.getByRole('link', { name: 'Back to the machine' }).tap()
      await settled(page, patienceMs)
      await putOnCard(page, 'exit sell-working')
      const exit = page.getByRole('form', { name: 'Note that it leaves' })
      await exit.getByLabel('Money received').fill('82')
      await exit.getByLabel('Fee of selling').fill('5')
      await button(exit, 'Sold working').tap()
      const ended = page.getByRole('region', { name: 'How it ended' })
      await ended.waitFor({ timeout: patienceMs })
      const { state, lines, notes } = await machineOnBench(page, id)
      const travelMinor = notes[0].content.kind === 'added' ? (notes[0].content.travelMinor ?? 0) : NaN
      expect(state.left).toMatchObject({ exit: 'sell-working', receivedMinor: 8200, safety: '' })
      expect(state.left?.profitMinor).toBe(8200 - 500 - 1200 - 25 - travelMinor)
      expect(await ended.innerText()).toContain(`profit £${((state.left?.profitMinor ?? 0) / 100).toFixed(2)}`)
      const story = ['added', 'opened', 'photo', 'confirmed', 'repaired', 'closed', 'graded', 'cleaned', 'dried', 'tried', 'rules', 'proof', 'listed', 'worded', 'left'] // prettier-ignore
      expect([...new Set(lines.map(({ kind }) => kind))].filter((kind) => story.includes(kind))).toEqual(story)
      await looksRight(page)
      await follow(page, 'Story and film')
      await looksRight(page)
      await page.goto('/books')
      await settled(page, patienceMs)
      expect(await page.locator('main').innerText()).toContain('£82.00')
      await looksRight(page)
      await page.close()
    },
  )

  it(
    'the middle of it away from the bench: all of it arrives once, in order, as it was made',
    { timeout: 180_000 },
    async () => {
      const page = await app.page(phone, 'light', true)
      const { state } = await putOnBench(page, {})
      const waiting = page.getByRole('complementary', { name: 'Not sent yet' })
      await page.goto(`/machine/${state.id}`)
      await page.evaluate(async () => (await navigator.serviceWorker.ready).scope)
      // Once more with the pages kept, so that the answers of the bench are kept too.
      for (const part of ['', '/strip', '/clean', '/functions']) {
        await page.goto(`/machine/${state.id}${part}`)
        await settled(page, patienceMs)
      }
      await page.context().setOffline(true)

      await page.goto(`/machine/${state.id}/strip`)
      await button(page, 'Off, nothing held it: Bag door').click()
      await waiting.getByText('One note is not sent yet.').waitFor()
      await wayIn(page, 'Photograph this step: Bag door').setInputFiles(await picture('gold'))
      await page.getByRole('list', { name: 'Photographs: Bag door' }).getByRole('img').waitFor()
      await page.reload()
      await page.getByRole('list', { name: 'Photographs: Bag door' }).getByRole('img').waitFor()
      await page.waitForFunction(() => [...document.querySelectorAll('img')].every((one) => one.naturalWidth > 0))
      await page.goto(`/machine/${state.id}/clean`)
      const first = page.getByRole('list', { name: 'First' })
      await button(first, /Empty it and blow it out/).click()
      await button(page.getByRole('form', { name: /^Done: Empty it/ }), /^Done: /).click()
      await button(first, /Empty it and blow it out/).waitFor({ state: 'detached' })
      await page.goto(`/machine/${state.id}/functions`)
      await button(page.locator('#function-tools'), /^Tools/).click()
      await button(page.locator('#function-tools'), 'As it should be').click()
      await page.locator('.verdict', { hasText: /^1 of/ }).waitFor()
      await page.goto(`/machine/${state.id}/strip`)
      await button(page, 'Put back').click()
      await button(page.getByRole('form', { name: 'Put back: Bag door' }), 'Back on').click()
      await waiting.getByText('5 notes are not sent yet.').waitFor()
      await settled(page)
      expect(await axeViolations(page)).toEqual([])
      const madeBy = new Date().toISOString()
      await page.waitForTimeout(1100)
      await page.context().setOffline(false)
      await waiting.waitFor({ state: 'detached', timeout: 40_000 })

      const { notes } = await machineOnBench(page, state.id)
      expect(notes.map(({ content }) => content.kind)).toEqual([
        'added',
        'opened',
        'photo',
        'cleaned',
        'tried',
        'closed',
      ])
      expect(new Set(notes.map(({ id }) => id)).size).toBe(notes.length)
      expect(notes.map(({ at }) => at)).toEqual(notes.map(({ at }) => at).toSorted())
      expect(notes.at(-1)!.at <= madeBy).toBe(true)
      // The photograph is of the step, which did not stand on the bench yet when it was taken.
      expect(notes[2].content).toMatchObject({ about: { kind: 'note', note: notes[1].id } })
      await page.close()
    },
  )
})
