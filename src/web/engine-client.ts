import type { AnswerTo, EngineAnswer, EngineRequest, FromEngine, ToEngine } from './engine-protocol.ts'

type Waiting = {
  readonly id: number
  readonly request: EngineRequest
  readonly resolve: (answer: EngineAnswer) => void
  readonly reject: (why: Error) => void
}

/** What is used of a Worker, so that the queue can be tested without one. */
export type EnginePort = {
  postMessage: (message: ToEngine) => void
  onmessage: ((event: MessageEvent<FromEngine>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
  terminate: () => void
}

export type Engine = {
  readonly ask: <R extends EngineRequest>(request: R, signal?: AbortSignal) => Promise<AnswerTo<R>>
}

/**
 * A queue in front of the worker: one request at a time is handed over, so that a request that nobody waits for any more
 * is dropped before it costs anything. A worker that dies is replaced; what it was working on is refused.
 */
export const makeEngine = (makePort: () => EnginePort): Engine => {
  const queue: Waiting[] = []
  let port: EnginePort | null = null
  let working: Waiting | null = null
  let count = 0

  const handOver = (): void => {
    if (working !== null) return
    working = queue.shift() ?? null
    if (working === null) return
    port ??= wire(makePort())
    port.postMessage({ id: working.id, request: working.request })
  }
  const settle = (done: (waiting: Waiting) => void): void => {
    const finished = working
    working = null
    if (finished !== null) done(finished)
    handOver()
  }
  const wire = (made: EnginePort): EnginePort => {
    made.onmessage = ({ data }) => {
      if (data.id !== working?.id) return
      settle((waiting) =>
        data.kind === 'answered' ? waiting.resolve(data.answer) : waiting.reject(new Error(data.message)),
      )
    }
    made.onerror = (event) => {
      made.terminate()
      port = null
      settle((waiting) => waiting.reject(new Error(event.message || 'The engines stopped')))
    }
    return made
  }
  const drop = (waiting: Waiting): void => {
    const at = queue.indexOf(waiting)
    if (at < 0) return
    queue.splice(at, 1)
    waiting.reject(new Error('Nobody waits for this any more'))
  }
  const ask = <R extends EngineRequest>(request: R, signal?: AbortSignal): Promise<AnswerTo<R>> =>
    new Promise((resolve, reject) => {
      count += 1
      const waiting: Waiting = { id: count, request, resolve: (answer) => resolve(answer as AnswerTo<R>), reject }
      queue.push(waiting)
      signal?.addEventListener('abort', () => drop(waiting))
      handOver()
    })
  return { ask }
}

const startWorker = (): EnginePort => new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' })

let shared: Engine | null = null
let aside: Engine | null = null

/** The engine that answers what the page waits for, started when first asked. */
export const engine = (): Engine => {
  shared ??= makeEngine(startWorker)
  return shared
}

/** An engine of its own for long work that nothing waits for: it never stands in the way of a view. Started when first asked. */
export const engineAside = (): Engine => {
  aside ??= makeEngine(startWorker)
  return aside
}
