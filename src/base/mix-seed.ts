/** A seed for one draw, from a machine's seed and what is drawn (FNV-1a hash). */
export const mixSeed = (seed: number, text: string): number => {
  let hash = 0x811c9dc5 ^ seed
  for (const letter of text) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193)
  return hash >>> 0
}
