import { useEffect, useRef, useSyncExternalStore, type MouseEvent, type ReactNode } from 'react'
import { pathOf, routeOf, type Route } from './routes.ts'

/** Said when the page becomes another one. */
export const moved = 'thrum:moved'
let visits = 0

/** Goes to another page without loading the document again. */
export const goTo = (route: Route): void => {
  window.history.pushState(null, '', pathOf(route))
  visits += 1
  window.scrollTo(0, 0)
  window.dispatchEvent(new Event(moved))
}

const subscribe = (changed: () => void): (() => void) => {
  const back = (): void => {
    visits += 1
    changed()
  }
  window.addEventListener('popstate', back)
  window.addEventListener(moved, changed)
  return () => {
    window.removeEventListener('popstate', back)
    window.removeEventListener(moved, changed)
  }
}

export const useRoute = (): Route => routeOf(useSyncExternalStore(subscribe, () => window.location.pathname))

type LinkProps = {
  readonly to: Route
  readonly children: ReactNode
  readonly className?: string
  readonly current?: boolean
}

/** A link between pages; opens in a new tab as usual when asked to. */
export const Link = ({ to, children, className, current }: LinkProps) => {
  const follow = (event: MouseEvent): void => {
    if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return
    event.preventDefault()
    goTo(to)
  }
  return (
    <a href={pathOf(to)} className={className} onClick={follow} aria-current={current === true ? 'page' : undefined}>
      {children}
    </a>
  )
}

/** The heading of a page. After a move to another page it takes the focus, so a reader hears where it is. */
export const PageTitle = ({
  children,
  windowTitle,
}: {
  readonly children: ReactNode
  readonly windowTitle: string
}) => {
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    document.title = `${windowTitle} · Thrum`
  }, [windowTitle])
  useEffect(() => {
    if (visits > 0) heading.current?.focus({ preventScroll: true })
  }, [])
  return (
    <h1 ref={heading} tabIndex={-1}>
      {children}
    </h1>
  )
}
