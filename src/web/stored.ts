/** `local` is kept between visits, `session` until the tab is closed. */
export type StoreKind = 'local' | 'session'

const storeOf = (kind: StoreKind): Storage => (kind === 'local' ? window.localStorage : window.sessionStorage)

/** What is stored under a name, or null. Storage can be missing or full (private windows), which counts as nothing stored. */
export const readStored = (kind: StoreKind, name: string): string | null => {
  try {
    return storeOf(kind).getItem(name)
  } catch {
    return null
  }
}

/** Stores a text; null removes it. Where storage is missing or full, it is kept for this page only. */
export const writeStored = (kind: StoreKind, name: string, text: string | null): void => {
  try {
    if (text === null) storeOf(kind).removeItem(name)
    else storeOf(kind).setItem(name, text)
  } catch {
    // Nothing on the page depends on it.
  }
}
