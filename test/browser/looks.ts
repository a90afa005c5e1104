import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import type axe from 'axe-core'
import type { Page } from 'playwright-core'

const axeSource = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Levels A and AA of the Web Content Accessibility Guidelines 2.0, 2.1 and 2.2, as axe-core tags its rules. */
const wcag22AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** The one rule that a change of colours alone can break. */
const colourRules = ['color-contrast']

/** What axe-core finds wrong on the page as it is now, one line for each element. */
export const axeViolations = (page: Page): Promise<readonly string[]> => axeRun(page, { type: 'tag', values: wcag22AA })

/** The same by the rule of contrast alone: what is left to see once the page has been looked at whole in other colours. */
export const contrastViolations = (page: Page): Promise<readonly string[]> =>
  axeRun(page, { type: 'rule', values: colourRules })

const axeRun = async (page: Page, runOnly: axe.RunOnly): Promise<readonly string[]> => {
  // Given to the browser's own debugger: the page's policy lets no script in.
  await page.evaluate(axeSource)
  const { violations } = await page.evaluate(
    (only) => (window as unknown as { axe: typeof axe }).axe.run({ runOnly: only, resultTypes: ['violations'] }),
    runOnly,
  )
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.failureSummary ?? ''}`),
  )
}

/** Waits until everything that was being fetched or worked out is there. */
export const settled = async (page: Page, patienceMs = 20_000): Promise<void> => {
  for (const until = Date.now() + patienceMs; Date.now() < until; await page.waitForTimeout(40)) {
    const busy = await page.evaluate(() => {
      const main = document.querySelector('main')
      return !main?.querySelector('h1') || main.querySelector('[aria-busy=true]') !== null || /…/.test(main.innerText)
    })
    if (!busy) return
  }
  throw new Error(`still busy: ${await page.locator('main').innerText()}`)
}

/** Waits until the page is drawn as it is meant to stay: after a change of window or theme nothing moves or fades any more. */
export const atRest = async (page: Page): Promise<void> => {
  await page.evaluate(async () => {
    await new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))
    // One that is cut short counts as over.
    await Promise.allSettled(document.getAnimations().map((animation) => animation.finished))
  })
}

/** How far the page can be scrolled sideways, and the elements that stick out of the window on the right. */
export const sideways = (page: Page): Promise<{ readonly scrolledPx: number; readonly sticksOut: readonly string[] }> =>
  page.evaluate(() => {
    window.scrollTo({ left: 10_000, behavior: 'instant' })
    const scrolledPx = window.scrollX
    window.scrollTo({ left: 0, behavior: 'instant' })
    const sticksOut = [...document.querySelectorAll('body *')]
      .filter(
        (element) =>
          !element.parentElement?.closest('svg') && element.getBoundingClientRect().right > window.innerWidth + 0.5,
      )
      .map((element) => `${element.tagName}.${element.className} ${(element.textContent ?? '').slice(0, 40)}`)
    return { scrolledPx, sticksOut }
  })

/** Folds within folds go no deeper. */
const mostRounds = 5

/** Opens every fold there is, and those inside them. Gives how many. */
export const openFolds = async (page: Page): Promise<number> => {
  const closed = page.locator('main button[aria-expanded=false]')
  let opened = 0
  // Of some groups only one stands open at a time, so not all can be.
  for (let round = 0; round < mostRounds && (await closed.count()) > 0; round++) {
    opened += await closed.evaluateAll((heads) => {
      heads.forEach((head) => (head as HTMLButtonElement).click())
      return heads.length
    })
  }
  return opened
}

type Watched = { readonly requests: string[]; readonly errors: string[] }

/** Every address that the page asks for, and every error in its console, from now on. */
export const watch = (page: Page): Watched => {
  const watched: Watched = { requests: [], errors: [] }
  page.context().on('request', (request) => watched.requests.push(request.url()))
  page.on('console', (message) => {
    if (message.type() === 'error') watched.errors.push(message.text())
  })
  return watched
}
