import { CompiledQuery, Kysely, PostgresDialect, type DatabaseConnection } from 'kysely'
import pg from 'pg'
import type { Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { Tables } from '../sql/tables.ts'
import { withoutNul } from '../sql/words.ts'
import { fsyncIsOff, notUtf8, openProblem } from './open-problem.ts'

/** Connections of one program. A server serves some hundred of them to all. */
const mostConnections = 10
/** How long to wait for the server to answer at all. */
const patienceMs = 5000

/** Asked of each connection first: what was answered as kept is on the disk of the server, whatever it was set up to do. */
const durable = `select set_config('synchronous_commit', 'on', false) where current_setting('synchronous_commit') = 'off'`

/** How to connect to the database at an address, with texts taken in and numbers given out as this program has them. */
export const clientConfig = (url: string): pg.ClientConfig => ({
  connectionString: url,
  connectionTimeoutMillis: patienceMs,
  application_name: 'thrum',
  keepAlive: true,
  types: {
    getTypeParser: ((oid: number) =>
      parserOf(oid) ?? (pg.types.getTypeParser(oid) as unknown)) as typeof pg.types.getTypeParser,
  },
})

/** Object ids of PostgreSQL's types (pg_type.dat): whole numbers of 64 bits, and what sum() makes of them. */
const int8 = 20
const numeric = 1700

const parserOf = (oid: number): ((text: string) => number) | null =>
  oid === int8 || oid === numeric ? wholeNumber : null

/** Sums of minor units and counts. Throws where a number would lose its last digits. */
const wholeNumber = (text: string): number => {
  const value = Number(text)
  if (!Number.isSafeInteger(value)) throw new RangeError(`${text} is no whole number that can be reckoned with exactly`)
  return value
}

const asKept = (value: unknown): unknown => (typeof value === 'string' ? withoutNul(value) : value)

class WithoutNul extends pg.Client {
  override query = ((question: unknown, values?: unknown, ...more: readonly unknown[]) =>
    super.query(
      question as string,
      (Array.isArray(values) ? values.map(asKept) : values) as unknown[],
      ...(more as []),
    )) as unknown as pg.Client['query']
}

export type Connected = { readonly db: Kysely<Tables>; readonly warnings: readonly Problem[] }

/**
 * Connects to the database at an address and looks whether it keeps what it says. Refused, without the password, where the address is none,
 * nobody answers there, the server lets this user not in, or text is kept in another encoding than UTF-8.
 */
export const openDatabase = async (url: string): Promise<Result<Connected>> => {
  let pool: pg.Pool
  try {
    pool = new pg.Pool({ ...clientConfig(url), Client: WithoutNul, max: mostConnections, allowExitOnIdle: true })
  } catch (fault) {
    return refused(openProblem(url, fault))
  }
  // A connection that breaks off while nobody uses it is replaced at the next question.
  pool.on('error', () => undefined)
  pool.on('connect', (client) => {
    client.on('error', () => undefined)
  })
  try {
    const settings = await settingsOf(pool)
    if (settings.encoding !== 'UTF8') {
      await pool.end()
      return refused(notUtf8(url, settings.encoding))
    }
    const warnings = settings.fsync === 'on' ? [] : [fsyncIsOff(url)]
    return ok({ db: new Kysely<Tables>({ dialect: new PostgresDialect({ pool, onCreateConnection }) }), warnings })
  } catch (fault) {
    await pool.end()
    return refused(openProblem(url, fault))
  }
}

const onCreateConnection = async (connection: DatabaseConnection): Promise<void> => {
  await connection.executeQuery(CompiledQuery.raw(durable))
}

type ServerSettings = { readonly encoding: string; readonly fsync: string }

const settingsOf = async (pool: pg.Pool): Promise<ServerSettings> => {
  const { rows } = await pool.query<ServerSettings>(
    `select current_setting('server_encoding') as encoding, current_setting('fsync') as fsync`,
  )
  const [settings] = rows
  if (settings === undefined) throw new Error('the server gave no answer to a select')
  return settings
}
