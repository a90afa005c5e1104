import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import type axe from 'axe-core'
import { errors, type Page } from 'playwright-core'

declare global {
  interface Window {
    readonly axe: typeof axe
    /** Looks of written elements whose contrast was found good in this document. */
    readonly seenClean: Set<string>
  }
}

const axeSource = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Levels A and AA of the Web Content Accessibility Guidelines 2.0, 2.1 and 2.2, as axe-core tags its rules. */
const wcag22AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** The one rule that a change of colours alone can break. */
const contrast = 'color-contrast'

/** What axe-core finds wrong on the page as it is now, one line for each element. */
export const axeViolations = async (page: Page): Promise<readonly string[]> => {
  await giveAxe(page)
  const others = await page.evaluate(
    ([tags, left]) =>
      window.axe.run({ runOnly: tags, rules: { [left]: { enabled: false } }, resultTypes: ['violations'] }),
    [wcag22AA, contrast] as const,
  )
  return [...linesOf(others), ...(await contrastNow(page))]
}

/** The same by the rule of contrast alone: what is left to see once the page has been looked at whole in other colours. */
export const contrastViolations = async (page: Page): Promise<readonly string[]> => {
  await giveAxe(page)
  return contrastNow(page)
}

/** Given once to each document, to the browser's own debugger: the page's policy lets no script in. */
const giveAxe = async (page: Page): Promise<void> => {
  if (await page.evaluate(() => 'axe' in window)) return
  await page.evaluate(axeSource)
  await page.evaluate(() => Object.assign(window, { seenClean: new Set() }))
}

const linesOf = ({ violations }: Pick<axe.AxeResults, 'violations'>): readonly string[] =>
  violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.failureSummary ?? ''}`),
  )

/**
 * The rule of contrast takes most of axe-core's time, and asks the same of every list entry of a long page. So it is asked of
 * one element of each look: its own colour and the size and weight of its letters, and of itself and all that it stands in the
 * name, the classes, the style attribute, whether it is disabled or hidden from readers, and what is painted there. What is
 * alike in all of these has the same contrast, also when it is shown later or in a window of another size: so a look found good
 * is not asked again in the same document. Text in drawings lies over lines that it does not stand in, so there each is asked,
 * and again once anything of the drawing is otherwise.
 */
const contrastNow = async (page: Page): Promise<readonly string[]> => {
  const found = await page.evaluate(async (rule): Promise<Pick<axe.AxeResults, 'violations'>> => {
    const painted = (element: Element): string => {
      const { backgroundColor, backgroundImage, opacity, filter, mixBlendMode, position } = getComputedStyle(element)
      return [
        element.tagName,
        element.getAttribute('class'),
        element.getAttribute('style'),
        element.getAttribute('aria-hidden'),
        element.matches(':disabled, [aria-disabled=true]'),
        ...[backgroundColor, backgroundImage, opacity, filter, mixBlendMode, position],
      ].join('|')
    }
    const grounds = new Map<Element | null, string>([[null, '']])
    const groundOf = (element: Element | null): string => {
      const known = grounds.get(element)
      if (known !== undefined || element === null) return known ?? ''
      const ground = `${groundOf(element.parentElement)}>${painted(element)}`
      grounds.set(element, ground)
      return ground
    }
    const isOfDisabled = (element: Element): boolean => element.closest('label')?.control?.matches(':disabled') ?? false
    const lookOf = (element: Element): string => {
      const drawing = element.closest('svg')
      const drawn = drawing === null ? '' : `${drawing.clientWidth}|${[...drawing.querySelectorAll('*')].indexOf(element)}|${drawing.outerHTML}` // prettier-ignore
      const { color, fill, fontSize, fontWeight, textShadow, textTransform } = getComputedStyle(element)
      const own = [color, fill, fontSize, fontWeight, textShadow, textTransform, isOfDisabled(element)]
      return [...own, groundOf(element), drawn].join('|')
    }
    const written = [...document.querySelectorAll('body *')].filter(
      (element) =>
        element.matches('input, select, textarea') ||
        [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim()),
    )
    const shown = written.filter((element) => element.checkVisibility())
    const looks = new Map(shown.map((element) => [lookOf(element), element] as const).toReversed())
    for (const look of window.seenClean) looks.delete(look)
    if (looks.size === 0) return { violations: [] }
    const runOnly: axe.RunOnly = { type: 'rule', values: [rule] }
    const { violations } = await window.axe.run(
      { include: [...looks.values()] },
      { runOnly, resultTypes: ['violations'] },
    )
    if (violations.length === 0) for (const look of looks.keys()) window.seenClean.add(look)
    return { violations }
  }, contrast)
  return linesOf(found)
}

/**
 * Goes to another page as the browser's own keys for back and on do, without loading the program anew, and waits until it is all
 * there. The program must be open already. A page that was open before shows what was kept of it, then what is new.
 */
export const visit = async (page: Page, path: string, patienceMs?: number): Promise<void> => {
  await page.evaluate(async (to) => {
    window.history.pushState(null, '', to)
    window.dispatchEvent(new PopStateEvent('popstate'))
    await new Promise((drawn) => requestAnimationFrame(drawn))
  }, path)
  await settled(page, patienceMs)
}

/** Waits until everything that was being fetched or worked out is there. The page looks itself: to ask it each time costs far more. */
export const settled = async (page: Page, patienceMs = 45_000): Promise<void> => {
  try {
    await page.waitForFunction(isSettled, undefined, { polling: 40, timeout: patienceMs })
  } catch (fault) {
    if (!(fault instanceof errors.TimeoutError)) throw fault
    throw new Error(`still busy: ${await page.locator('main').innerText()}`, { cause: fault })
  }
}

/** Asked within the page. */
const isSettled = (): boolean => {
  const main = document.querySelector('main')
  if (main === null || main.querySelector('h1') === null) return false
  if (main.querySelector('[aria-busy=true]') !== null) return false
  const texts = document.createTreeWalker(main, NodeFilter.SHOW_TEXT)
  for (let text = texts.nextNode(); text !== null; text = texts.nextNode()) {
    const around = text.parentElement
    // What is busy ends so. Names that were cut short in a list to choose from do too, and hints that leave off.
    const isWork = text.textContent?.trimEnd().endsWith('…') === true && around?.closest('option, .hint') === null
    if (isWork && around.checkVisibility()) return false
  }
  return true
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
