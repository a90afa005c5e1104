import { execFileSync, spawn } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ask, startPostgres } from '../test/support/postgres.ts'
import { percentile } from './percentile.ts'

const writers = 50
const readers = 200
const machines = 25

export type Load = {
  readonly written: number
  readonly conflicts: number
  readonly read: number
  readonly writeP95Ms: number
  readonly readP95Ms: number
  /** Processor time of the two programs for one answer: what they cost whatever else the computer does. NaN where the system does not say. */
  readonly cpuMs: number
}

/**
 * Two programs serve one database; fifty people write to the same twenty-five machines and two hundred look at them, as fast as they are
 * answered. Throws where a note that was answered as kept is not there, or is there twice.
 */
export const load = async (seconds: number): Promise<Load> => {
  const server = await startPostgres({ durable: true })
  const database = await server.newDatabase()
  const folder = await mkdtemp(join(tmpdir(), 'thrum-load-'))
  const programs = [await serve(database, folder), await serve(database, folder)]
  try {
    const at = (who: number): string => `${programs[who % 2].address}/api/bench/own/machines`
    for (let i = 0; i < machines; i++) await add(at(i), `m${i}`)
    const figures = { written: 0, conflicts: 0, read: 0, writeMs: [] as number[], readMs: [] as number[] }
    const before = cpuSecondsOf(programs)
    const end = Date.now() + seconds * 1000
    const write = async (who: number): Promise<void> => {
      let version = 1
      for (let i = 0; Date.now() < end;) {
        const began = performance.now()
        const note = { id: `w${who}-${i}`, version, content: { kind: 'said', text: `Writer ${who}` } }
        const response = await post(`${at(who)}/m${who % machines}/notes`, note)
        figures.writeMs.push(performance.now() - began)
        const answer = (await response.json()) as Answer
        version = (answer.document ?? answer).state?.version ?? version
        if (response.status === 200) {
          i++
          figures.written++
        } else if (response.status === 409) figures.conflicts++
        else throw new Error(`writing was answered with ${response.status}: ${JSON.stringify(answer)}`)
      }
    }
    const read = async (who: number): Promise<void> => {
      while (Date.now() < end) {
        const began = performance.now()
        const response = await fetch(who % 2 === 0 ? at(who) : `${at(who)}/m${who % machines}`)
        await response.arrayBuffer()
        if (response.status !== 200) throw new Error(`reading was answered with ${response.status}`)
        figures.readMs.push(performance.now() - began)
        figures.read++
      }
    }
    await Promise.all([
      ...Array.from({ length: writers }, (_, who) => write(who)),
      ...Array.from({ length: readers }, (_, who) => read(who)),
    ])
    const used = cpuSecondsOf(programs) - before
    await nothingLost(database, figures.written)
    const { written, conflicts, read: all, writeMs, readMs } = figures
    const [writeP95Ms, readP95Ms] = [percentile(writeMs, 0.95), percentile(readMs, 0.95)]
    return { written, conflicts, read: all, writeP95Ms, readP95Ms, cpuMs: (1000 * used) / (written + conflicts + all) }
  } finally {
    for (const { stop } of programs) await stop()
    await server.stop()
    await rm(folder, { recursive: true, force: true })
  }
}

type Answer = {
  readonly state?: { readonly version: number }
  readonly document?: { readonly state?: { readonly version: number } }
}

/** The sum of all versions is what was begun and what was answered as kept; so many notes are there, no number missing or twice. */
const nothingLost = async (database: string, written: number): Promise<void> => {
  const [sums] = await ask(database, `
    select (select sum(version) from machine)::int as versions, (select count(*) from note)::int as notes,
      (select count(*) from (select machine from note group by machine having max(seq) <> count(*)) as gaps)::int as gaps`) // prettier-ignore
  const expected = { versions: machines + written, notes: machines + written, gaps: 0 }
  if (JSON.stringify(sums) !== JSON.stringify(expected)) {
    throw new Error(`lost updates: ${JSON.stringify(sums)} instead of ${JSON.stringify(expected)}`)
  }
}

const post = (address: string, body: unknown): Promise<Response> =>
  fetch(address, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })

const add = async (address: string, id: string): Promise<void> => {
  const [blueprint] = ((await (await fetch(`${new URL(address).origin}/api/blueprints`)).json()) as { blueprints: { id: string; plate: unknown }[] }).blueprints // prettier-ignore
  const content = { kind: 'added', name: id, blueprint: blueprint?.id, plate: blueprint?.plate, paidMinor: 500, currency: 'GBP', complaints: ['dead'] } // prettier-ignore
  const response = await post(address, { id, content })
  if (response.status !== 201) throw new Error(`a machine could not be added: ${await response.text()}`)
}

/** Processor time so far, as Linux counts it (proc_pid_stat(5), fields utime and stime, in ticks). */
const cpuSecondsOf = (programs: readonly Serving[]): number => {
  try {
    const ticks = Number(execFileSync('getconf', ['CLK_TCK'], { encoding: 'utf8' }))
    return programs
      .map(({ pid }) => readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1].split(' '))
      .reduce((sum, fields) => sum + (Number(fields[11]) + Number(fields[12])) / ticks, 0)
  } catch {
    return NaN
  }
}

type Serving = { readonly pid: number; readonly address: string; readonly stop: () => Promise<void> }

/** A server process of its own, as it is built. */
const serve = async (database: string, folder: string): Promise<Serving> => {
  const program = fileURLToPath(new URL('../bin/thrum.mjs', import.meta.url))
  const child = spawn(process.execPath, [program, 'serve', '--port', '0', '--data', join(folder, randomUUID())], {
    env: { ...process.env, THRUM_DATABASE: database },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.once('data', (line: Buffer) => resolve(line.toString().trim()))
    child.once('exit', () => reject(new Error('the server ended')))
  })
  return {
    pid: child.pid ?? 0,
    address,
    stop: async () => {
      child.kill('SIGTERM')
      await ended
    },
  }
}

export const run = async (seconds: number): Promise<readonly string[]> => {
  const { written, conflicts, read, writeP95Ms, readP95Ms, cpuMs } = await load(seconds)
  return [
    `${writers} writers and ${readers} readers for ${seconds} s, two programs on one PostgreSQL: no note lost`,
    `written ${written} (${conflicts} times somebody else was first), p95 ${writeP95Ms.toFixed(0)} ms; read ${read}, p95 ${readP95Ms.toFixed(0)} ms`,
    `processor time of the programs for each answer: ${cpuMs.toFixed(2)} ms`,
  ]
}
