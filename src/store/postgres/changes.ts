import { sql, type RawBuilder, type Transaction } from 'kysely'
import pg from 'pg'
import { z } from 'zod'
import { logKinds } from '../../bench/logs/entry.ts'
import type { Changes } from '../../bench/ports.ts'
import { makeListeners, mostByName, type Listeners } from '../changes.ts'
import type { Announcer, LogName } from '../sql/announcer.ts'
import type { Tables } from '../sql/tables.ts'
import { clientConfig } from './database.ts'

/** The name under which the programs on one database tell each other. */
const channel = 'thrum_changes'
/** How soon to connect again when the connection broke off, and how long to wait at most after further failures. */
const againMs = { first: 200, most: 5000 }
/** How often to ask whether the other end is still there: a connection may die without a word. */
const askMs = 15_000

/** Told instead of so many logs that each would be asked for by its name. */
const everything = '{}'

const toldSchema = z.object({
  bench: z.enum(['own', 'demo']),
  kind: z.enum(['machine', ...logKinds]),
  id: z.string(),
  version: z.number(),
})

const notifying = (kind: LogName['kind']): RawBuilder<unknown> =>
  sql`pg_notify(${channel}, json_build_object('bench', bench, 'kind', ${kind}::text, 'id', id, 'version', version)::text)`

/** Told inside the transaction: PostgreSQL passes it on when that is kept, and never otherwise. */
export const postgresAnnouncer: Announcer = {
  inside: async (transaction, logs) => {
    if (logs.length > mostByName) await sql`select pg_notify(${channel}, ${everything})`.execute(transaction)
    else for (const log of logs) await notify(transaction, log)
  },
  within: notifying,
  after: () => Promise.resolve(),
}

const notify = async (db: Transaction<Tables>, { kind, id }: LogName): Promise<void> => {
  const from = kind === 'machine' ? sql`machine where id = ${id}` : sql`log where kind = ${kind} and id = ${id}`
  await sql`select ${notifying(kind)} from ${from}`.execute(db)
}

export type PostgresChanges = { readonly changes: Changes; readonly close: () => Promise<void> }

/**
 * Tells what is written by any program on the database, over one connection of its own, made when someone listens for the first time and
 * made again when it breaks off. What was written while there was none is told as `everything`.
 */
export const postgresChanges = (url: string): PostgresChanges => {
  let line: Line | undefined
  const listeners: Listeners = makeListeners(() => {
    line ??= openLine(url, listeners)
  })
  return { changes: listeners, close: async () => line?.close() }
}

type Line = { readonly close: () => Promise<void> }

const openLine = (url: string, listeners: Listeners): Line => {
  let closed = false
  let current: pg.Client | undefined
  let waitMs = againMs.first
  let timer: NodeJS.Timeout | undefined
  const connect = async (): Promise<void> => {
    const client = new pg.Client(clientConfig(url))
    const broken = once(() => {
      clearInterval(timer)
      void client.end().catch(() => undefined)
      if (closed) return
      timer = setTimeout(() => void connect(), waitMs).unref()
      waitMs = Math.min(againMs.most, waitMs * 2)
    })
    client.on('error', broken).on('end', broken)
    client.on('notification', ({ payload }) => tellOne(listeners, payload))
    current = client
    try {
      await client.connect()
      await client.query(`listen ${channel}`)
    } catch {
      return broken()
    }
    waitMs = againMs.first
    listeners.tellAll()
    timer = setInterval(() => void client.query('select 1').catch(broken), askMs).unref()
  }
  void connect()
  const close = async (): Promise<void> => {
    closed = true
    clearTimeout(timer)
    await current?.end().catch(() => undefined)
  }
  return { close }
}

const tellOne = (listeners: Listeners, payload: string | undefined): void => {
  if (payload === everything) return listeners.tellAll()
  const told = toldSchema.safeParse(JSON.parse(payload ?? 'null'))
  // Another program may use the same name for something of its own.
  if (!told.success) return
  const { bench, ...change } = told.data
  listeners.tell(bench, change)
}

const once = (work: () => void): (() => void) => {
  let done = false
  return () => {
    if (done) return
    done = true
    work()
  }
}
