import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import type { MachineList } from '../../../src/bench/contract.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { startServer, type ServeOptions } from '../../../src/server/serve.ts'

let folder = ''
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'thrum-serve-'))
})
afterEach(() => rm(folder, { recursive: true }))

const printed: string[] = []
const options = (over: Partial<ServeOptions> = {}): ServeOptions => ({
  folder,
  port: 0,
  host: '127.0.0.1',
  print: (line) => printed.push(line),
  ...over,
})
const machinesOf = async (address: string, bench: string): Promise<MachineList['machines']> =>
  ((await (await fetch(`${address}/api/bench/${bench}/machines`)).json()) as MachineList).machines

describe('the server', () => {
  it('prints its address once, answers there, and keeps what was written for the next start', async () => {
    printed.length = 0
    const first = valueOf(await startServer(options()))
    expect(printed).toEqual([first.address])
    const { id: blueprint, plate } = blueprints[0]
    const content = { kind: 'added', name: 'Mine', blueprint, plate, paidMinor: 500, currency: 'GBP' }
    const response = await fetch(`${first.address}/api/bench/own/machines`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ id: 'mine', content }),
    })
    expect(response.status).toBe(201)
    await first.stop()
    await expect(fetch(`${first.address}/healthz`)).rejects.toThrow()

    const second = valueOf(await startServer(options()))
    expect((await machinesOf(second.address, 'own')).map((machine) => machine.id)).toEqual(['mine'])
    await second.stop()
  })

  it('has the demonstration apart from one’s own machines', async () => {
    const server = valueOf(await startServer(options()))
    expect(await machinesOf(server.address, 'own')).toEqual([])
    expect((await machinesOf(server.address, 'demo')).length).toBeGreaterThan(3)
    await server.stop()
  })

  it('refuses a port that is taken, and lets go of the store', async () => {
    const server = valueOf(await startServer(options()))
    const port = Number(new URL(server.address).port)
    expect(await startServer(options({ port }))).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'port-taken', where: `127.0.0.1:${port}` }],
    })
    await server.stop()
  })

  it('refuses a data folder that cannot be written', async () => {
    await writeFile(join(folder, 'file'), '')
    expect(await startServer(options({ folder: join(folder, 'file', 'data') }))).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'folder-not-writable', where: join(folder, 'file', 'data') }],
    })
  })

  it.each(['SIGINT', 'SIGTERM'] as const)('stops on %s and leaves no handler behind', async (signal) => {
    const before = process.listeners(signal)
    const server = valueOf(await startServer(options()))
    const [handler] = process.listeners(signal).filter((each) => !before.includes(each))
    handler?.(signal)
    await server.stopped
    expect(process.listeners(signal)).toEqual(before)
    await expect(fetch(`${server.address}/healthz`)).rejects.toThrow()
  })
})
