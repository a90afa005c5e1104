import type { Options } from './with-bench.ts'

/** What was written for an option; undefined where it was left out. */
export const textOf = (options: Options, name: string): string | undefined => {
  const value = options[name]
  return typeof value === 'string' ? value : undefined
}
