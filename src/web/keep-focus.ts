import { moved } from './router.tsx'

/** What the keyboard can be led to. */
const stops = 'button:not(:disabled), a[href], input:not(:disabled), select:not(:disabled), textarea:not(:disabled)'

/** Where the keyboard was: the element, what stood behind it, and what it stood in, the nearest first. */
type Place = {
  readonly element: HTMLElement
  readonly behind: readonly HTMLElement[]
  readonly around: readonly HTMLElement[]
}

/**
 * Keeps the place of whoever works by keyboard. A key that writes a note is barred until the note is kept, and is often gone afterwards;
 * the browser then drops the focus to the top of the page. It goes back to the same key once that can be pressed again, else to what
 * stood next in the nearest thing that is still there. A part that leads the focus itself comes first, and a thumb is left alone.
 * Call once.
 */
export const keepFocus = (): void => {
  let place: Place | null = null
  let byKeyboard = false
  let asked = 0
  const lead = (): void => {
    asked = 0
    if (place === null || document.activeElement !== document.body) return
    const next = nextStop(place)
    if (next !== null) next.focus()
  }
  const forget = (): void => {
    place = null
  }
  document.addEventListener('keydown', () => (byKeyboard = true), true)
  document.addEventListener('pointerdown', () => (byKeyboard = false), true)
  document.addEventListener('focusin', ({ target }) => {
    place = byKeyboard && target instanceof HTMLElement ? placeOf(target) : null
  })
  window.addEventListener(moved, forget)
  window.addEventListener('popstate', forget)
  // A frame later: by then a part that leads the focus itself has done so.
  new MutationObserver(() => {
    if (place !== null && asked === 0) asked = requestAnimationFrame(() => requestAnimationFrame(lead))
  }).observe(document.body, { childList: true, subtree: true, attributeFilter: ['disabled'] })
}

const placeOf = (element: HTMLElement): Place | null => {
  const main = element.closest<HTMLElement>('#main')
  if (main === null) return null
  const behind = stopsIn(main).filter(
    (one) => (element.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0 && !element.contains(one),
  )
  const around: HTMLElement[] = []
  for (let at = element.parentElement; at !== null && main.contains(at); at = at.parentElement) around.push(at)
  return { element, behind, around }
}

/** Null while there is nothing to go to: the same key is barred, or nothing can be pressed yet. */
const nextStop = ({ element, behind, around }: Place): HTMLElement | null => {
  if (element.isConnected && element.checkVisibility()) return element.matches(':disabled') ? null : element
  for (const frame of around) {
    if (!frame.isConnected) continue
    const here = stopsIn(frame)
    const next = behind.find((one) => here.includes(one)) ?? here.at(-1)
    if (next !== undefined) return next
  }
  return null
}

const stopsIn = (frame: HTMLElement): readonly HTMLElement[] =>
  [...frame.querySelectorAll<HTMLElement>(stops)].filter((one) => one.tabIndex >= 0 && one.checkVisibility())
