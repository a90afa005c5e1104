import { setTimeout } from 'node:timers/promises'
import { createRoute, z, type OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import { streamSSE, type SSEStreamingApi } from 'hono/streaming'
import type { BenchId } from '../bench/contract.ts'
import type { Change, Changes } from '../bench/ports.ts'
import { benchSchema, problemsSchema } from './schemas.ts'
import type { WhenOut } from './sign-in/still-in.ts'
import { whoAsks } from './sign-in/who-asks.ts'
import { typed } from './typed.ts'

/** What is in between closes a connection on which nothing is said for a minute or so. */
const heartbeatMs = 20_000
/** How long the program waits at its end for the last of it to be taken. */
const patienceMs = 500

export type ChangesDeps = {
  /** Left out, nothing is ever told. */
  readonly changes?: Changes
  /** Ends what is still being told, so that the program can stop. */
  readonly stopping?: AbortSignal
  /** Ends what is being told to somebody who is let in no more; left out, that never happens. */
  readonly whenOut?: WhenOut
}

const changesRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/changes',
  summary:
    'What is written to a bench, as it is written, as server-sent events: `ready` once at the beginning; then `change` with {kind, id, version} of the log that was written to, or {kind: "everything"} where anything may have changed',
  request: { params: z.strictObject({ bench: benchSchema }) },
  responses: {
    200: { description: 'Events without an end', content: { 'text/event-stream': { schema: z.string() } } },
    404: { description: 'There is no such bench', content: { 'application/json': { schema: problemsSchema } } },
  },
})

/** The address at which it is heard what others write. */
export const addChanges = (app: OpenAPIHono, deps: ChangesDeps): void => {
  app.openapi(changesRoute, (c) => {
    // A web server in front that collects an answer before it passes it on would collect this one for ever.
    c.header('x-accel-buffering', 'no')
    const response = tellChanges(c, c.req.valid('param').bench, deps)
    response.headers.set('cache-control', 'no-store')
    return typed(response)
  })
}

const tellChanges = (c: Context, bench: BenchId, { changes, stopping, whenOut }: ChangesDeps): Response => {
  const who = whoAsks()
  const mayHear = heardBy(who?.role ?? 'keeper')
  return streamSSE(c, async (stream) => {
    let written = Promise.resolve()
    const say = (event: string, data: object): void => {
      written = written.then(() => stream.writeSSE({ event, data: JSON.stringify(data) }))
    }
    say('ready', {})
    const stop = changes?.subscribe(bench, (change) => {
      if (mayHear(change)) say('change', change)
    })
    const beat = setInterval(() => void stream.write(': still here\n\n'), heartbeatMs)
    await theEnd(stream, stopping, (end) => whenOut?.(who, end))
    clearInterval(beat)
    stop?.()
    // What was told already still goes out; whoever asked may be gone, and then it never does.
    if (!stream.aborted) await Promise.race([written, setTimeout(patienceMs, null, { ref: false })])
  })
}

/** Spending, and what came in from files of the past, are for the keeper of the books. */
const heardBy =
  (role: 'bench' | 'keeper') =>
  ({ kind }: Change): boolean =>
    role === 'keeper' || (kind !== 'expense' && kind !== 'record')

const theEnd = async (
  stream: SSEStreamingApi,
  stopping: AbortSignal | undefined,
  watch: (end: () => void) => (() => void) | undefined,
): Promise<void> => {
  let unwatch: (() => void) | undefined
  await new Promise<void>((resolve) => {
    stream.onAbort(() => resolve())
    if (stream.aborted || stopping?.aborted === true) resolve()
    stopping?.addEventListener('abort', () => resolve(), { once: true })
    unwatch = watch(resolve)
  })
  unwatch?.()
}
