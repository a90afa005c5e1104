const longestShown = 60

/** A value as it is shown in a message: `“five”`, `12`, `a list`. Long texts are cut. */
export const shown = (value: unknown): string => {
  if (value === undefined) return 'nothing'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object' && value !== null) return 'an object'
  if (typeof value === 'number' || typeof value === 'boolean') return String(value)
  if (typeof value !== 'string') return 'null'
  const letters = [...value]
  return letters.length > longestShown ? `“${letters.slice(0, longestShown).join('')}…”` : `“${value}”`
}

/** With a capital at its beginning. */
export const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`

/** `a, b or c`. */
export const orList = (texts: readonly string[]): string =>
  texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} or ${texts.at(-1)}`
