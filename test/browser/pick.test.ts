import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { plateText } from '../../src/blueprint/entry.ts'
import type { Blueprint } from '../../src/blueprint/schema.ts'
import { upright } from '../story/bench-job.ts'
import { tenBlueprints } from '../support/ten-blueprints.ts'
import { machineOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, settled, sideways, watch } from './looks.ts'
import { withBlueprints } from './many-blueprints.ts'
import { picturesOf, pressPictures } from './pick-on-page.ts'
import { startApp, type RunningApp } from './running-app.ts'
import { hasFocus, tabTo } from './tabbing.ts'

const blueprints = tenBlueprints(upright, 'upright-belt-bag-other-mains')
const named = (id: string) => blueprints.find((one) => one.id === id)!
const mains120 = named(upright.id)

describe.runIf(browserHere())('picking an architecture', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  const wrong = async (page: Page): Promise<readonly string[]> => {
    await settled(page)
    const { scrolledPx, sticksOut } = await sideways(page)
    return [...(await axeViolations(page)), ...(scrolledPx === 0 ? [] : [`scrolls ${scrolledPx} px`]), ...sticksOut]
  }
  const answer = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click()
  const question = (page: Page) => page.locator('h2.pick-question').innerText()
  const pictures = (page: Page) => page.getByRole('list', { name: 'Blueprints' }).locator('> li strong').allInnerTexts()

  const press = (page: Page, blueprint: Blueprint, role: 'button' | 'link' = 'button') =>
    pressPictures(picturesOf(page, blueprint, { blueprints, role }), (picture) => picture.click())

  it('phone: by questions, the rating plate last, and the machine is on the bench with it', async () => {
    const page = await app.page(phone)
    const { errors } = watch(page)
    await withBlueprints(page, blueprints)
    await page.goto('/add')
    await settled(page)
    expect(await question(page)).toBe('How does it stand?')
    expect(await pictures(page)).toHaveLength(10)
    expect(await wrong(page)).toEqual([])

    await answer(page, 'Upright: body and floor head in one, pushed by a handle')
    expect(await question(page)).toBe('Where does the dust go?')
    expect(await hasFocus(page.locator('h2.pick-question'))).toBe(true)
    expect(await pictures(page)).toHaveLength(4)
    await answer(page, 'Into a bag inside the body')
    expect(await question(page)).toBe('Where is the switch?')
    await answer(page, 'On the body, for the foot')
    expect(await question(page)).toBe('Which rating plate?')
    expect(await wrong(page)).toEqual([])

    await press(page, mains120)
    await page.getByRole('heading', { name: mains120.name }).waitFor()
    await settled(page)
    expect(await page.getByLabel('Voltage').inputValue()).toBe('120')
    expect(await wrong(page)).toEqual([])
    await answer(page, 'Put it on the bench')
    await page.waitForURL(/\/machine\//)
    const { state } = await machineOnBench(page, new URL(page.url()).pathname.split('/').at(-1)!)
    expect(state).toMatchObject({ blueprint: upright.id, plate: { voltageV: 120 }, name: mains120.name })
    expect(errors).toEqual([])
    await page.close()
  })

  it('an answer is taken back in one tap; when nothing fits it says which, and what is nearest', async () => {
    const page = await app.page(phone)
    await withBlueprints(page, blueprints)
    await page.goto('/blueprints')
    await answer(page, 'A drum with the motor on top')
    expect(await question(page)).toBe('This one')
    expect(await pictures(page)).toEqual([named('drum').name])
    await answer(page, 'Take back: A drum with the motor on top')
    expect(await pictures(page)).toHaveLength(10)

    await answer(page, 'Upright: body and floor head in one, pushed by a handle')
    await answer(page, 'Into a clear bin')
    await answer(page, 'Take back: Upright')
    // Of those with a bin, the drum is none: stands is asked again.
    await answer(page, 'A drum with the motor on top')
    expect(await question(page)).toBe('Nothing here fits all of that')
    expect(await wrong(page)).toEqual([])
    const nearest = page
      .getByRole('list', { name: 'Blueprints' })
      .getByRole('listitem')
      .filter({ hasText: 'Against it' })
    expect(await nearest.count()).toBeGreaterThan(1)
    await page.locator('button.key', { hasText: 'Take back: A drum with the motor on top' }).click()
    expect(await question(page)).not.toContain('Nothing')
    expect((await pictures(page)).length).toBeGreaterThan(1)

    // The answers are still there after a look at a blueprint.
    await press(page, named('upright-belt-bin'), 'link')
    await settled(page)
    await page.goBack()
    await settled(page)
    expect(await page.getByRole('list', { name: 'Answers so far' }).innerText()).toContain('Into a clear bin')
    await page.close()
  })

  it('from the pictures: each says what it shows; no blueprint is fetched before one is opened', async () => {
    const page = await app.page(laptop)
    const fetched = await withBlueprints(page, blueprints)
    await page.goto('/blueprints')
    await settled(page)
    const drawn = page.getByRole('list', { name: 'Blueprints' }).getByRole('img')
    const words = await drawn.evaluateAll((all) => all.map((one) => one.getAttribute('aria-label')))
    expect(new Set(words).size).toBe(10)
    expect(words[0]).toMatch(/^Upright; bag inside; flex round hooks; roll on a belt.*; foot switch/)
    const shapes = await drawn.evaluateAll((all) => all.map((one) => one.innerHTML))
    expect(new Set(shapes).size).toBe(10)
    expect(fetched).toEqual([])
    await press(page, named('cylinder-air'), 'link')
    await page.getByRole('heading', { level: 1, name: named('cylinder-air').name }).waitFor()
    expect(fetched).toEqual(['cylinder-air'])

    // Several plates look alike: the picture first, then the plate; the picture is taken back in one tap.
    await page.goBack()
    const [picture, plate] = picturesOf(page, mains120, { blueprints, role: 'link' })
    await picture.click()
    expect(await question(page)).toBe('Which rating plate?')
    expect(await hasFocus(page.locator('h2.pick-question'))).toBe(true)
    expect(await wrong(page)).toEqual([])
    await answer(page, `Take back: ${mains120.name}`)
    expect(await pictures(page)).toHaveLength(10)
    await picture.click()
    await plate.click()
    await page.waitForURL(`**/blueprints/${mains120.id}`)
    await page.close()
  })

  it('a machine without a blueprint is not put on the bench; the question gets the focus', async () => {
    const page = await app.page(phone)
    await withBlueprints(page, blueprints)
    await page.goto('/add')
    await answer(page, 'Put it on the bench')
    await page.getByText('No blueprint is chosen').waitFor()
    await expect.poll(() => hasFocus(page.locator('h2.pick-question'))).toBe(true)
    expect(await wrong(page)).toEqual([])
    await page.close()
  })

  it(
    'keyboard only: answers, takes back, picks, and picks another; a typed name stays',
    { timeout: 60_000 },
    async () => {
      const page = await app.page(laptop)
      const button = (name: string | RegExp) => page.getByRole('button', { name })
      await withBlueprints(page, blueprints)
      await page.goto('/add')
      await settled(page)
      await tabTo(page, button(/^A thin stick/))
      await page.keyboard.press('Enter')
      await tabTo(page, button('Take back: A thin stick'), 'Shift+Tab')
      await page.keyboard.press('Space')
      expect(await question(page)).toBe('How does it stand?')
      await tabTo(page, button(/^Low on wheels/))
      await page.keyboard.press('Enter')
      await tabTo(page, picturesOf(page, named('cylinder-plain'), { blueprints })[0])
      await page.keyboard.press('Enter')
      expect(await hasFocus(page.getByRole('heading', { name: named('cylinder-plain').name }))).toBe(true)
      await settled(page)
      await tabTo(page, page.getByLabel('Name'))
      await page.keyboard.press('End')
      await page.keyboard.type(' from the tip')
      await tabTo(page, button('Choose another'), 'Shift+Tab')
      await page.keyboard.press('Enter')
      expect(await hasFocus(page.locator('h2.pick-question'))).toBe(true)
      await tabTo(page, picturesOf(page, named('cylinder-air'), { blueprints })[0])
      await page.keyboard.press('Enter')
      await settled(page)
      expect(await page.getByLabel('Name').inputValue()).toBe(`${named('cylinder-plain').name} from the tip`)
      expect(await page.getByRole('region', { name: 'Blueprint' }).innerText()).toContain(plateText(mains230))
      await page.close()
    },
  )

  it.each([
    ['light', phone],
    ['dark', phone],
    ['light', laptop],
    ['dark', laptop],
  ] as const)('has no fault that axe-core sees and fits the window, %s %o', async (theme, size) => {
    const page = await app.page(size, theme)
    await withBlueprints(page, blueprints)
    await page.goto('/blueprints')
    expect(await wrong(page)).toEqual([])
    await answer(page, 'Cannot tell')
    expect(await wrong(page)).toEqual([])
    const low = await page.evaluate(() =>
      [...document.querySelectorAll('main button, main a')]
        .filter((element) => element.getBoundingClientRect().height < 44)
        .map((element) => element.outerHTML.slice(0, 80)),
    )
    expect(low).toEqual([])
    await page.close()
  })
})

const mains230 = named('cylinder-air').plate
