import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Problem } from '../../../src/base/problem.ts'
import { problemsSchema } from '../../../src/server/schemas.ts'
import { fromSchema, type Schema } from '../../fuzz/from-schema.ts'
import { accessAt } from '../../support/access.ts'
import { mistakesIn } from '../../support/mistakes.ts'
import { expectPlain } from '../../support/plain-words.ts'
import { openApp, send } from '../../support/signed-app.ts'

type Way = {
  readonly requestBody?: { readonly content?: Readonly<Record<string, { readonly schema?: Schema }>> }
  readonly parameters?: readonly { readonly in: string; readonly name: string; readonly schema?: Schema }[]
}

const freshApp = () => openApp({ access: accessAt(undefined, { isOpen: false }).access }).app
const app = freshApp()
const root = app.getOpenAPI31Document({ openapi: '3.1.0', info: { title: '', version: '' } })
const ways = Object.entries((root.paths ?? {}) as Record<string, Record<string, Way>>).flatMap(([path, all]) =>
  Object.entries(all).map(([method, way]) => ({ name: `${method} ${path}`, path, method, way })),
)
const bodyOf = ({ requestBody }: Way): Schema | undefined => requestBody?.content?.['application/json']?.schema
const queriesOf = ({ parameters = [] }: Way) => parameters.filter((one) => one.in === 'query')

/** An address of a route, with names that may stand in it. */
const filled = (path: string): string =>
  path
    .replace('{bench}', 'own')
    .replace('{month}', '2026-03')
    .replace(/\{\w+\}/g, 'm1')

const mostOfAKind = 6

const problemsOf = async (answer: Response): Promise<readonly Problem[]> => {
  if (![400, 404, 422].includes(answer.status)) return []
  return problemsSchema.parse(await answer.json()).problems
}

describe.each(ways.filter(({ way }) => bodyOf(way) !== undefined))('the body of $name', ({ path, method, way }) => {
  it('is refused in plain words', async () => {
    const schema = bodyOf(way) ?? {}
    const samples = fc.sample(fromSchema(schema, root, ['motor', 'm1', 'GBP']), { numRuns: 2, seed: 7 })
    // Once somebody has a name everybody signs in, so each body has an application of its own.
    const app = freshApp()
    const seen = new Set<string>()
    const sent = new Map<string, number>()
    for (const sample of samples) {
      for (const { kind, input } of mistakesIn(sample)) {
        sent.set(kind, (sent.get(kind) ?? 0) + 1)
        // Every place of these forms is walked beside this, without the server.
        if ((sent.get(kind) ?? 0) > mostOfAKind) continue
        const problems = await problemsOf(await send(app, filled(path), input, {}, method.toUpperCase()))
        if (problems.length === 0) continue
        expectPlain(problems, input)
        seen.add(kind)
      }
    }
    expect([...seen]).toEqual(expect.arrayContaining(['wrong type', 'unknown field']))
  })
})

describe.each(ways.filter(({ way }) => queriesOf(way).length > 0))('the query of $name', ({ path, way }) => {
  it('is refused in plain words, at the parameter', async () => {
    const names = queriesOf(way).map(({ name }) => name)
    for (const name of names) {
      for (const text of ['none-of-these', '-1', '0.5', '1e12', 'x'.repeat(5000)]) {
        const problems = await problemsOf(await app.request(`${filled(path)}?${new URLSearchParams({ [name]: text })}`))
        if (problems.length === 0 || problems.some(({ code }) => code !== 'not-of-the-form')) continue
        expectPlain(problems, { name, text })
        expect(names).toContain(problems[0].where)
      }
    }
    const [odd] = await problemsOf(await app.request(`${filled(path)}?odd=1`))
    if (odd !== undefined && odd.code === 'not-of-the-form') expectPlain([odd], 'odd')
  })
})
