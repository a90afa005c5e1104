import type { Locator, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { settled } from './looks.ts'
import { picturesOf, pressPictures } from './pick-on-page.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { focusUnseen, hasFocus, tabTo } from './tabbing.ts'
import { upright } from '../story/bench-job.ts'

/** What a hand does, counted by the page itself. */
type Hand = { taps: number; keys: number }

const countHand = async (page: Page): Promise<() => Promise<Hand>> => {
  await page.addInitScript(() => {
    const hand: Hand = { taps: 0, keys: 0 }
    Object.assign(window, { hand })
    addEventListener('touchstart', () => (hand.taps += 1), true)
    addEventListener('keydown', () => (hand.keys += 1), true)
  })
  return () => page.evaluate(() => (window as unknown as { hand: Hand }).hand)
}

describe.runIf(browserHere())('by hand', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('keyboard only: adds a machine, enters a reading, strikes it out', { timeout: 60_000 }, async () => {
    const page = await app.page(laptop)
    const button = (name: string | RegExp) => page.getByRole('button', { name })
    await page.goto('/')
    await settled(page)
    await tabTo(page, page.getByRole('link', { name: 'Add a machine' }))
    await page.keyboard.press('Enter')
    await settled(page)
    expect(await hasFocus(page.getByRole('heading', { level: 1 }))).toBe(true)

    await pressPictures(picturesOf(page, upright), async (picture) => {
      await tabTo(page, picture)
      await page.keyboard.press('Enter')
    })
    await tabTo(page, button(/^Dead/))
    await page.keyboard.press('Space')
    await tabTo(page, page.getByLabel('Paid'))
    await page.keyboard.type('4.50')
    await tabTo(page, page.getByLabel('What the seller said'))
    await page.keyboard.type('It just stopped')
    await tabTo(page, button('Put it on the bench'))
    await page.keyboard.press('Enter')
    await page.waitForURL(/\/machine\//)
    await settled(page)

    await tabTo(page, button('Other moves'))
    await page.keyboard.press('Enter')
    await tabTo(page, page.getByLabel('Anything in this blueprint'))
    await page.keyboard.type('Pin to pin, switched on')
    await tabTo(page, button('Put it on the card'))
    await page.keyboard.press('Space')
    await tabTo(page, page.getByLabel('The meter shows'), 'Shift+Tab')
    await page.keyboard.type('255')
    await page.keyboard.press('Enter')
    await page.getByRole('region', { name: 'Bench notes' }).getByText('Pin to pin, switched on: 255 Ω').waitFor()
    await settled(page)

    await tabTo(page, button(/^Strike out: Pin to pin, switched on: 255 Ω/))
    await page.keyboard.press('Space')
    await page.locator('s', { hasText: 'Pin to pin, switched on: 255 Ω' }).waitFor()
    const { state, lines } = await machineOnBench(page, new URL(page.url()).pathname.split('/').at(-1)!)
    expect(state).toMatchObject({ paidMinor: 450, claimed: { complaints: ['dead'], words: 'It just stopped' } })
    expect(lines.map((line) => [line.kind, line.struck])).toEqual([
      ['added', false],
      ['reading', true],
      ['struck', false],
    ])
    await page.close()
  })

  it(
    'keyboard only: a step of each page on the way to the sale, and the keyboard goes on from where it was',
    { timeout: 90_000 },
    async () => {
      const page = await app.page(laptop)
      const { state } = await putOnBench(page, {})
      const button = (place: Page | Locator, name: string | RegExp) => place.getByRole('button', { name, exact: true })
      const kinds = async () => (await machineOnBench(page, state.id)).notes.map(({ content }) => content.kind)
      /** By its links, as one without a mouse goes. */
      const follow = async (link: string): Promise<void> => {
        const back = page.getByRole('link', { name: 'Back to the machine' })
        if ((await back.count()) > 0) {
          await tabTo(page, back, 'Shift+Tab')
          await page.keyboard.press('Enter')
          await settled(page)
        }
        await tabTo(page, page.getByRole('link', { name: link, exact: true }))
        await page.keyboard.press('Enter')
        await back.waitFor()
        await settled(page)
        expect(await hasFocus(page.getByRole('heading', { level: 1 }))).toBe(true)
      }
      const press = async (
        target: Locator,
        key: 'Enter' | 'Space',
        way: 'Tab' | 'Shift+Tab' = 'Tab',
      ): Promise<void> => {
        await tabTo(page, target, way)
        await page.keyboard.press(key)
      }
      /** What was pressed is done, and something in sight has the focus. */
      const goesOn = async (place: Locator): Promise<void> => {
        await settled(page)
        await expect.poll(() => hasFocus(place), { timeout: 5_000 }).toBe(true)
        expect(await focusUnseen(page)).toBeNull()
      }
      /** What was pressed is gone: the keyboard is somewhere on the page, not before it. */
      const staysOnPage = (): Promise<void> =>
        expect
          .poll(() => page.evaluate(() => document.querySelector('main')?.contains(document.activeElement) === true), {
            timeout: 5_000,
          })
          .toBe(true)
      await page.goto(`/machine/${state.id}`)
      await settled(page)

      await follow('Strip-down')
      await tabTo(page, page.getByLabel('The fixings go in'))
      await page.keyboard.type('pot 1')
      await press(button(page, 'Off, as it says: Handle cover'), 'Enter')
      await page.getByText('4 × TX15 plastic 3.5 × 16 in pot 1').waitFor()
      await staysOnPage()
      await press(button(page, 'Put back'), 'Space', 'Shift+Tab')
      const back = page.getByRole('form', { name: 'Put back: Handle cover' })
      await press(back.getByRole('checkbox'), 'Space')
      await press(button(back, 'Back on, all 4 fixings'), 'Enter')
      await page.getByText('Nothing is off or out.').waitFor()
      await staysOnPage()
      expect(await kinds()).toEqual(['added', 'opened', 'closed'])

      await follow('Clean')
      const first = page.getByRole('list', { name: 'First' })
      await press(button(first, /Empty it and blow it out/), 'Enter')
      await press(button(first, /^Done: /), 'Enter')
      await button(first, /Empty it and blow it out/).waitFor({ state: 'detached' })
      await goesOn(first.getByRole('button').first())
      await press(button(page.getByRole('form', { name: 'Grade a part' }), 'C'), 'Space')
      await press(button(page, 'Note the grade'), 'Enter')
      await goesOn(button(page, 'Note the grade'))

      await follow('Does it all work?')
      const tools = page.locator('#function-tools')
      await press(button(tools, /^Tools/), 'Enter')
      await press(button(tools, 'As it should be'), 'Space')
      await tools.locator('.function-state', { hasText: 'As it should be' }).waitFor()
      // The next one that can be tried is unfolded, and the keyboard is at its head.
      await goesOn(page.locator('.function-head[aria-expanded=true]'))

      await follow('Photographs')
      await tabTo(page, page.getByLabel('Of what'))
      await page.keyboard.press('ArrowDown')
      await tabTo(page, button(page, 'Take or choose photographs'))
      const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.keyboard.press('Enter')])
      await chooser.setFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: await picture() })
      await page.getByRole('heading', { name: 'One photograph, newest first' }).waitFor()
      await goesOn(button(page, 'Take or choose photographs'))
      await press(button(page, /^Strike out: Photograph/), 'Enter')
      await page.getByText('No photographs yet.').waitFor()
      await staysOnPage()

      await follow('Sale sheet')
      const opening = page.getByRole('region', { name: 'What it is', exact: true })
      await press(button(opening, 'Edit: What it is'), 'Enter')
      // The words to put in own words are at hand.
      await goesOn(opening.getByRole('textbox'))
      await page.keyboard.press('ControlOrMeta+A')
      await page.keyboard.type('A good old upright.')
      await press(button(opening, 'Put it so'), 'Space')
      await opening.getByText('A good old upright.').waitFor()
      await goesOn(button(opening, 'Edit: What it is'))

      await follow('Story and film')
      await press(button(page, 'Start the film clock'), 'Enter')
      await page.getByRole('timer').waitFor()
      await goesOn(button(page, 'Stop the film clock'))
      await page.keyboard.press('Space')
      await goesOn(button(page, 'Start the film clock'))
      expect((await kinds()).slice(3)).toEqual(['cleaned', 'graded', 'tried', 'photo', 'struck', 'worded', 'camera', 'camera']) // prettier-ignore
      await page.close()
    },
  )

  it('the way past the head is the first stop', async () => {
    const page = await app.page(laptop)
    await page.goto('/practice')
    await settled(page)
    await page.keyboard.press('Tab')
    expect(await hasFocus(page.getByRole('link', { name: 'Skip to the page' }))).toBe(true)
    expect(await focusUnseen(page)).toBeNull()
    await page.evaluate(() => ((document.activeElement as HTMLElement).style.outline = 'none'))
    expect(await focusUnseen(page)).toContain('Skip to the page')
    await page.keyboard.press('Enter')
    await tabTo(page, page.getByLabel('Blueprint'))
    await page.close()
  })

  it('phone: a machine is on the bench in at most twelve taps, in under a minute', async () => {
    const page = await app.browser.newPage({ viewport: phone, hasTouch: true, isMobile: true, baseURL: app.address })
    const hand = await countHand(page)
    await page.goto('/')
    await settled(page)
    await page.getByRole('link', { name: 'Add a machine' }).tap()
    await settled(page)
    await pressPictures(picturesOf(page, upright), (picture) => picture.tap())
    await page.getByRole('button', { name: /^Dead/ }).tap()
    await page.getByRole('button', { name: /^Smell/ }).tap()
    await page.getByLabel('Paid').tap()
    await page.keyboard.press('Backspace')
    await page.keyboard.type('4')
    await page.getByLabel('What the seller said').tap()
    await page.keyboard.type('stopped')
    await page.getByLabel('Name').tap()
    await page.keyboard.type('!')
    await page.getByRole('button', { name: 'Put it on the bench' }).tap()
    await page.waitForURL(/\/machine\//)
    const { taps, keys } = await hand()
    expect(taps).toBeGreaterThan(0)
    expect(taps).toBeLessThanOrEqual(12)
    // Keystroke-level model (Card, Moran, Newell, 1980; from memory): to make up one's mind 1.35 s, to point 1.1 s,
    // a key on a strange keyboard 1.2 s.
    expect(taps * (1.35 + 1.1 + 1.2) + keys * 1.2).toBeLessThan(60)
    const { state } = await machineOnBench(page, new URL(page.url()).pathname.split('/').at(-1)!)
    expect(state).toMatchObject({ paidMinor: 400, claimed: { complaints: ['dead', 'smell'], words: 'stopped' } })
    await page.close()
  })
})

const picture = (): Promise<Buffer> =>
  sharp({ create: { width: 800, height: 600, channels: 3, background: 'sienna' } })
    .jpeg()
    .toBuffer()
