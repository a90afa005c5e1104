import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

/** A case is one request, several, or calls of public functions by name. */
type Call = { readonly call: string; readonly args: readonly unknown[] }
type Input = { readonly calls?: readonly Call[]; readonly requests?: readonly unknown[] }
type Expected = {
  readonly relativeTolerance: number
  readonly absoluteTolerance?: number
  readonly answer?: unknown
  readonly answers?: readonly unknown[]
}

/**
 * One test for each folder beside the test file: `input.json` is answered and compared with `expected.json`, and `origin.md` must say where
 * that comes from.
 * @param functions the engine's public functions, for cases that call them by name
 * @param answer answers one request, or throws its refusal
 */
export const truthFolders = (here: string, functions: object, answer: (request: unknown) => unknown): void => {
  const names = readdirSync(here, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
  const json = (name: string, file: string): unknown => JSON.parse(readFileSync(join(here, name, file), 'utf8'))
  const callOf = ({ call, args }: Call): unknown =>
    (functions as Record<string, (...args: readonly unknown[]) => unknown>)[call](...args)
  const answersTo = (input: Input): readonly unknown[] =>
    input.calls === undefined ? (input.requests ?? [input]).map(answer) : input.calls.map(callOf)

  describe('published, computed and constructed cases', () => {
    it.each(names)('%s', (name) => {
      const expected = json(name, 'expected.json') as Expected
      expect(readFileSync(join(here, name, 'origin.md'), 'utf8').trim()).not.toBe('')
      const answers = answersTo(json(name, 'input.json') as Input)
      const wanted = expected.answers ?? [expected.answer]
      expect(answers.length).toBe(wanted.length)
      expect(compare(expected, answers, wanted, name)).toBeGreaterThan(0)
    })
  })
}

/** How many figures and words were compared: a case that compares none tests nothing. */
const compare = (expected: Expected, actual: unknown, wanted: unknown, where: string): number => {
  if (typeof wanted === 'number') {
    const within = expected.relativeTolerance * Math.abs(wanted) + (expected.absoluteTolerance ?? 0)
    expect(Math.abs(Number(actual) - wanted), `${where}: ${String(actual)} for ${wanted}`).toBeLessThanOrEqual(within)
    return 1
  }
  if (typeof wanted !== 'object' || wanted === null) {
    expect(actual, where).toBe(wanted)
    return 1
  }
  return Object.entries(wanted)
    .map(([key, value]) => compare(expected, find(actual, key), value, `${where}.${key}`))
    .reduce((sum, count) => sum + count, 0)
}

/** A member of a list is found by its place or by its id. */
const find = (actual: unknown, key: string): unknown => {
  if (!Array.isArray(actual)) return (actual as Record<string, unknown>)[key]
  const list = actual as readonly { readonly id?: string }[]
  return list.find((one) => one.id === key) ?? list[Number(key)]
}
