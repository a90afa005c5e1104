import { readFileSync } from 'node:fs'

/** Reads one file of a truth case, such as `truthFile<Input>('belief/polybox/input.json')`. */
export const truthFile = <T>(path: string): T =>
  JSON.parse(readFileSync(new URL(`../truth/${path}`, import.meta.url), 'utf8')) as T
