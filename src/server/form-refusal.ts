import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { routePath } from 'hono/route'
import type { ZodError, ZodType } from 'zod'
import { formProblems } from '../base/form/form-problems.ts'
import { problem } from '../base/problem.ts'
import { refuse } from './refusals.ts'

/** What a request brought, and what its schema found in it. */
type Parsed =
  | { readonly success: true }
  | { readonly success: false; readonly target: string; readonly data?: unknown; readonly error: ZodError }

/**
 * The refusal of a request whose address, parameters or body are not of their form: each mistake in plain words, at its place.
 * Nothing where the form is right.
 */
export const formRefusal =
  (app: () => OpenAPIHono) =>
  (parsed: Parsed, c: Context): Response | undefined => {
    if (parsed.success) return undefined
    const { target, data, error } = parsed
    if (target === 'param' && error.issues.some(({ path }) => path[0] === 'bench')) return refuse(c, 404, noSuchBench)
    const schema = schemaOf(app(), c, target)
    if (schema === undefined) throw new Error(`No schema of the ${target} of ${c.req.method} ${routePath(c)}`)
    const what = targetNames[target] ?? target
    return refuse(c, target === 'param' ? 404 : 400, ...formProblems({ schema, input: data, what }, error.issues))
  }

const targetNames: Readonly<Record<string, string>> = { json: 'body', query: 'query', param: 'address' }

const noSuchBench = problem('unknown-bench', 'bench', 'There is no such bench', 'Use own or demo')

/** The schema that the request was held against, by the route that it came in at. */
const schemaOf = (app: OpenAPIHono, c: Context, target: string): ZodType | undefined => {
  const path = routePath(c)
  const method = c.req.method.toLowerCase()
  for (const one of app.openAPIRegistry.definitions) {
    if (one.type !== 'route' || one.route.method !== method || routed(one.route.path) !== path) continue
    const { body, query, params } = one.route.request ?? {}
    const json = body?.content['application/json']
    const schemas: Readonly<Record<string, unknown>> = { json: json !== undefined && 'schema' in json ? json.schema : undefined, query, param: params } // prettier-ignore
    return schemas[target] as ZodType | undefined
  }
  return undefined
}

/** A route's address as the router has it: `/api/{id}` as `/api/:id`. */
const routed = (path: string): string => path.replaceAll(/\/{(.+?)}/g, '/:$1')
