import { useEffect, useRef, useState } from 'react'

/** Whether something of these edges is to be seen whole, or fills a window that it is too tall for. Pixels from the top of the window. */
export const isInSight = ({ top, bottom }: Pick<DOMRect, 'top' | 'bottom'>, heightPx: number): boolean =>
  top >= 0 && (bottom <= heightPx || (bottom - top > heightPx && top < heightPx / 2))

/**
 * Leads to a heading, or to a button that is one: the keyboard and a screen reader are on it, and the page moves only where `around` it is out of sight,
 * at once for those who want no movement.
 */
export const bringIntoSight = (heading: HTMLElement, around: Element = heading): void => {
  if (!(heading instanceof HTMLButtonElement)) heading.tabIndex = -1
  heading.focus({ preventScroll: true })
  if (isInSight(around.getBoundingClientRect(), window.innerHeight)) return
  const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches
  around.scrollIntoView({ block: 'start', behavior: still ? 'auto' : 'smooth' })
}

/**
 * Leads to what came of a step, by the first of these ids that is on the page, once the page shows it (`isFresh`). Gives the function
 * to be called as the step is noted.
 */
export const useResultInSight = (isFresh: boolean, ...ids: readonly string[]): (() => void) => {
  const [asked, setAsked] = useState(0)
  const answered = useRef(0)
  useEffect(() => {
    if (asked === answered.current || !isFresh) return
    const section = ids.map((id) => document.getElementById(id)).find((one) => one !== null)
    const heading = section?.querySelector<HTMLElement>('h2')
    if (section === undefined || heading === undefined || heading === null) return
    answered.current = asked
    bringIntoSight(heading, section)
  })
  return () => setAsked((times) => times + 1)
}
