import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

/** More stops than any page has; reached only when the wanted one cannot be tabbed to. */
const mostStops = 120

/** Whether what is meant has the focus. */
export const hasFocus = (target: Locator): Promise<boolean> =>
  target.evaluateAll((found) => found.some((element) => element === document.activeElement))

/** What has the focus, when nothing around it shows that: a ring of its own, or one of the frame that it fills. */
export const focusUnseen = (page: Page): Promise<string | null> =>
  page.evaluate(() => {
    const focused = document.activeElement
    if (focused === null || focused === document.body) return null
    const ringed = [focused, focused.parentElement].some((element) => {
      const style = element === null ? null : getComputedStyle(element)
      return style !== null && style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2
    })
    const box = focused.getBoundingClientRect()
    const inSight = box.bottom > 0 && box.top < window.innerHeight && box.right > 0 && box.left < window.innerWidth
    return ringed && inSight ? null : `${focused.outerHTML.slice(0, 120)} ${JSON.stringify(box)}`
  })

/** Tabs until the target has the focus; at every stop on the way the focus must be seen. */
export const tabTo = async (page: Page, target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> => {
  for (let stop = 0; stop < mostStops; stop++) {
    await page.keyboard.press(key)
    expect(await focusUnseen(page)).toBeNull()
    if (await hasFocus(target)) return
  }
  throw new Error(`${mostStops} times ${key} do not lead to ${target.toString()}`)
}
