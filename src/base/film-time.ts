/** A length of film as `h:mm:ss`, whole seconds that have passed. */
export const filmTime = (ms: number): string => {
  const seconds = Math.floor(ms / 1000)
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`
}
