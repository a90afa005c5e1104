/** By which life, and all that it said; those before it in the same folder come first. */
export type Said = readonly { readonly seed: number; readonly said: readonly string[] }[]

export type Looks = {
  /** Cheap: at what the lives wrote that were not looked after yet. */
  readonly afterOne: (folder: string, all: Said) => Promise<void>
  /** Dear: at all there is. */
  readonly whole: (folder: string, all: Said) => Promise<void>
}

export const wordsAfter = (start: string, lines: readonly string[]): readonly string[] =>
  lines.filter((line) => line.startsWith(start)).map((line) => line.slice(start.length))
