import { readStored, writeStored } from './stored.ts'

/** Daylight paper, dark shed, or whichever the device asks for. */
export type Theme = 'daylight' | 'shed' | 'device'

const name = 'thrum-theme'

export const storedTheme = (): Theme => {
  const stored = readStored('local', name)
  return stored === 'daylight' || stored === 'shed' ? stored : 'device'
}

/** Sets the theme on the document and keeps it for the next visit. */
export const applyTheme = (theme: Theme): void => {
  const root = document.documentElement
  if (theme === 'device') root.removeAttribute('data-theme')
  else root.setAttribute('data-theme', theme)
  writeStored('local', name, theme)
}

/** What is on screen: the chosen theme, or the device's when none is chosen. */
export const shownTheme = (theme: Theme): 'daylight' | 'shed' => {
  if (theme !== 'device') return theme
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'shed' : 'daylight'
}
