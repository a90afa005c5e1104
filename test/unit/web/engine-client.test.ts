import { describe, expect, it } from 'vitest'
import { makeEngine, type EnginePort } from '../../../src/web/engine-client.ts'
import type { FromEngine, ToEngine } from '../../../src/web/engine-protocol.ts'
import { smallBlueprint } from './blueprint.ts'

const request = (seed: number) => ({
  kind: 'complaints' as const,
  blueprint: smallBlueprint,
  plate: smallBlueprint.plate,
  seed,
})

/** A port that keeps what it is sent, so that a test can answer when it likes. */
const heldPort = () => {
  const sent: ToEngine[] = []
  let ended = 0
  const port: EnginePort = {
    postMessage: (message) => sent.push(message),
    onmessage: null,
    onerror: null,
    terminate: () => (ended += 1),
  }
  const send = (data: FromEngine): void => port.onmessage?.(new MessageEvent('message', { data }))
  const answer = (id: number): void =>
    send({ kind: 'answered', id, answer: { kind: 'complaints', complaints: ['dead'] } })
  const fail = (id: number): void => send({ kind: 'failed', id, message: 'no luck' })
  return { port, sent, answer, fail, die: () => port.onerror?.({ message: 'gone' } as ErrorEvent), ended: () => ended }
}

describe('makeEngine', () => {
  it('hands over one request at a time and answers each', async () => {
    const held = heldPort()
    const engine = makeEngine(() => held.port)
    const [first, second] = [engine.ask(request(1)), engine.ask(request(2))]
    expect(held.sent).toHaveLength(1)
    held.answer(held.sent[0]?.id ?? 0)
    await expect(first).resolves.toMatchObject({ complaints: ['dead'] })
    expect(held.sent).toHaveLength(2)
    held.fail(held.sent[1]?.id ?? 0)
    await expect(second).rejects.toThrow('no luck')
  })

  it('drops a request that nobody waits for, before it costs anything', async () => {
    const held = heldPort()
    const engine = makeEngine(() => held.port)
    const stop = new AbortController()
    const first = engine.ask(request(1))
    const second = engine.ask(request(2), stop.signal)
    stop.abort()
    await expect(second).rejects.toThrow()
    held.answer(held.sent[0]?.id ?? 0)
    await first
    expect(held.sent).toHaveLength(1)
  })

  it('starts a new worker after one has died', async () => {
    const ports = [heldPort(), heldPort()] as const
    let made = 0
    const engine = makeEngine(() => (made++ === 0 ? ports[0].port : ports[1].port))
    const [first, second] = [engine.ask(request(1)), engine.ask(request(2))]
    ports[0].die()
    await expect(first).rejects.toThrow('gone')
    expect(ports[0].ended()).toBe(1)
    ports[1].answer(ports[1].sent[0]?.id ?? 0)
    await expect(second).resolves.toMatchObject({ kind: 'complaints' })
  })
})
