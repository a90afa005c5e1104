import { useSyncExternalStore } from 'react'

const listeners = new Set<() => void>()
let needed = false

const set = (value: boolean): void => {
  if (needed === value) return
  needed = value
  listeners.forEach((listener) => listener())
}

/** The bench said that this device is not signed in. */
export const markSignInNeeded = (): void => set(true)
export const markSignedIn = (): void => set(false)

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Whether the page to sign in has to stand in place of every other. */
export const useSignInNeeded = (): boolean => useSyncExternalStore(subscribe, () => needed)
