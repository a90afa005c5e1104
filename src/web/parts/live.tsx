import { useSyncExternalStore } from 'react'

let said = ''
const listeners = new Set<() => void>()

/** Has a screen reader say this when it is free. */
export const say = (text: string): void => {
  if (text === said) return
  said = text
  listeners.forEach((listener) => listener())
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** The place on the page where changes are said. */
export const Live = () => {
  const text = useSyncExternalStore(subscribe, () => said)
  return (
    <div className="unseen" aria-live="polite">
      {text}
    </div>
  )
}
