import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { atRest, axeViolations, contrastViolations, openFolds, settled, sideways, visit, watch } from './looks.ts'
import { putOnCard } from './page-writer.ts'
import { startApp, type RunningApp } from './running-app.ts'

const shorted = { kind: 'ohms', resistanceOhm: 0.3 } as const
/** A bench of many machines is worked out one after the other. */
const patienceMs = 120_000
const shorts = ['pins-on', 'pins-off'].map(
  (check) => ({ kind: 'reading', check, result: shorted, minutes: 1 }) as const,
)

describe.runIf(browserHere())('every page', () => {
  let app: RunningApp
  let inHand = ''
  let gone = ''
  beforeAll(async () => {
    app = await startApp()
    const page = await app.page(laptop)
    const claim = 'Stopped while my dad was using it.'
    // A short: the page warns that it must not be run.
    const own = await putOnBench(page, { complaints: ['dead', 'smell'], claim, missing: ['bag'] }, ...shorts)
    const left = await putOnBench(page, { name: 'Gone' }, { kind: 'left', exit: 'scrap', receivedMinor: 0 })
    inHand = `/machine/${own.state.id}`
    gone = `/machine/${left.state.id}`
    await page.close()
  })
  afterAll(() => app.stop())

  type Look = (page: Page) => Promise<readonly string[]>

  /** What is wrong with the page as it stands: nothing is the empty list. */
  const wrong = async (page: Page, seen: Look = axeViolations): Promise<readonly string[]> => {
    const { scrolledPx, sticksOut } = await sideways(page)
    return [
      ...(await seen(page)),
      ...(scrolledPx === 0 ? [] : [`scrolls ${scrolledPx} px sideways`]),
      ...sticksOut.map((element) => `sticks out: ${element}`),
    ]
  }

  /** The same page in both sizes and both themes: by day with every rule, in the shed with those that colours can break. */
  const wrongInAnyLook = async (page: Page): Promise<readonly string[]> => {
    const faults: string[] = []
    for (const size of [phone, laptop]) {
      await page.setViewportSize(size)
      for (const [colorScheme, look] of [
        ['light', axeViolations],
        ['dark', contrastViolations],
      ] as const) {
        await page.emulateMedia({ colorScheme })
        await atRest(page)
        faults.push(...(await wrong(page, look)).map((fault) => `${colorScheme} at ${size.width}: ${fault}`))
      }
    }
    return faults
  }

  it(
    'has no fault that axe-core sees and fits the window, phone and laptop, light and dark',
    {
      timeout: 300_000,
    },
    async () => {
      const page = await app.page(phone)
      const { errors, requests } = watch(page)
      const found: Record<string, readonly string[]> = {}
      const look = async (name: string): Promise<void> => {
        await settled(page)
        found[name] = await wrongInAnyLook(page)
      }
      await page.goto('/')
      await settled(page)
      await look('/')
      for (const path of ['/demo', '/practice', '/demo/machine/demo-green', gone, '/nowhere', '/add']) {
        await visit(page, path, patienceMs)
        await look(path)
      }
      await openFolds(page)
      await page.getByLabel('Paid').fill('abc')
      await page.getByRole('button', { name: 'Put it on the bench' }).click()
      await look('add, unfolded, refused')

      await visit(page, inHand)
      await look('machine')
      expect(await page.getByRole('heading', { name: 'Do not run it' }).count()).toBe(1)
      // The cards while all else is folded: a page unfolded is ten times as long.
      for (const card of ['check fuse-through', 'check look-flex', 'repair flex-new new', 'exit sell-working']) {
        await putOnCard(page, card)
        await look(card)
      }
      await visit(page, '/nowhere')
      await visit(page, inHand)
      // Suspects, their grounds, moves, covers, notes, money.
      expect(await openFolds(page)).toBeGreaterThan(20)
      await look('machine, unfolded')
      expect(Object.fromEntries(Object.entries(found).filter(([, faults]) => faults.length > 0))).toEqual({})
      expect(Object.keys(found)).toHaveLength(14)
      expect(errors).toEqual([])
      expect(requests.filter((url) => !url.startsWith(`${app.address}/`))).toEqual([])
      expect(requests.some((url) => url.includes('engine.worker'))).toBe(true)
      await page.close()
    },
  )

  it('is light by day and dark in the shed', async () => {
    const brightness = async (theme: 'light' | 'dark'): Promise<number> => {
      const page = await app.page(phone, theme)
      await page.goto('/')
      const colour = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor)
      await page.close()
      return Math.max(...(colour.match(/\d+/g) ?? []).slice(0, 3).map(Number))
    }
    expect(await brightness('light')).toBeGreaterThan(180)
    expect(await brightness('dark')).toBeLessThan(75)
  })

  it('would be caught: planted faults are seen by the same looks', async () => {
    const page = await app.page(phone)
    const { errors } = watch(page)
    await page.goto('/')
    await settled(page)
    expect(await wrongInAnyLook(page)).toEqual([])
    await page.evaluate(() => {
      // Faint by day and faint in the shed.
      const faint = document.createElement('p')
      faint.textContent = 'hardly to be read'
      faint.style.color = 'light-dark(#bbb, #444)'
      const wide = document.createElement('div')
      wide.style.width = '500px'
      wide.style.height = '1px'
      document.querySelector('main')?.append(faint, document.createElement('button'), wide)
    })
    const planted = await wrongInAnyLook(page)
    const seenAs = (fault: string): readonly string[] => [
      ...new Set(planted.filter((line) => line.includes(fault)).map((line) => line.split(':')[0])),
    ]
    expect(seenAs('color-contrast')).toEqual(['light at 360', 'dark at 360', 'light at 1280', 'dark at 1280'])
    expect(seenAs('button-name')).toEqual(['light at 360', 'light at 1280'])
    for (const fault of ['scrolls 140 px sideways', 'sticks out: DIV'])
      expect(seenAs(fault)).toEqual(['light at 360', 'dark at 360'])
    await page.evaluate(() => fetch('https://example.com/').catch(() => undefined))
    expect(errors.join()).toMatch(/violates.*Content Security Policy.*connect-src/)
    await page.close()
  })
})
