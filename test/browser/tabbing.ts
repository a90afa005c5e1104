import type { Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

/** More stops than any page has; reached only when the wanted one cannot be tabbed to. */
const mostStops = 120

type Focus = {
  /** Whether what is meant has the focus. */
  readonly isThere: boolean
  /** What has the focus, when nothing around it shows that: a ring of its own, or one of the frame that it fills. */
  readonly unseen: string | null
}

/** Both asked in one go: a page with hundreds of stops is asked at each. */
const focusNow = (target: Locator): Promise<Focus> =>
  target.evaluateAll((found) => {
    const focused = document.activeElement
    const isThere = found.some((element) => element === focused)
    if (focused === null || focused === document.body) return { isThere, unseen: null }
    const ringed = [focused, focused.parentElement].some((element) => {
      const style = element === null ? null : getComputedStyle(element)
      return style !== null && style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2
    })
    const box = focused.getBoundingClientRect()
    const inSight = box.bottom > 0 && box.top < window.innerHeight && box.right > 0 && box.left < window.innerWidth
    const unseen = ringed && inSight ? null : `${focused.outerHTML.slice(0, 120)} ${JSON.stringify(box)}`
    return { isThere, unseen }
  })

/** Whether what is meant has the focus. */
export const hasFocus = async (target: Locator): Promise<boolean> => (await focusNow(target)).isThere

/** What has the focus, when nothing around it shows that. */
export const focusUnseen = async (page: Page): Promise<string | null> => (await focusNow(page.locator('body'))).unseen

/** Tabs until the target has the focus; at every stop on the way the focus must be seen. */
export const tabTo = async (page: Page, target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> => {
  for (let stop = 0; stop < mostStops; stop++) {
    await page.keyboard.press(key)
    const { isThere, unseen } = await focusNow(target)
    expect(unseen).toBeNull()
    if (isThere) return
  }
  throw new Error(`${mostStops} times ${key} do not lead to ${target.toString()}`)
}
