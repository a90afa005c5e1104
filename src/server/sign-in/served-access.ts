import { randomUUID } from 'node:crypto'
import { performance } from 'node:perf_hooks'
import { getConnInfo } from '@hono/node-server/conninfo'
import type { Context } from 'hono'
import type { PeopleStore } from '../../bench/people/people-ports.ts'
import type { Access } from './access.ts'
import { makeSecrets, type Cost } from './passphrase-hash.ts'

export type Reach = {
  /** Others than this machine reach the program. */
  readonly isOpen: boolean
  /** Only then is anything believed that `X-Forwarded-*` says. */
  readonly isBehindProxy: boolean
  readonly hashing?: Cost | undefined
}

/** Who may come in where the program is served: addresses are those of the sockets, or what the proxy in front says. */
export const servedAccess = (people: PeopleStore, { isOpen, isBehindProxy, hashing }: Reach): Access => ({
  people,
  secrets: makeSecrets(hashing),
  now: () => new Date().toISOString(),
  newId: randomUUID,
  isOpen,
  clientOf: (c) => (isBehindProxy ? forwardedFor(c) : null) ?? getConnInfo(c).remote.address ?? '',
  isSecure: (c) =>
    isBehindProxy ? c.req.header('x-forwarded-proto') === 'https' : new URL(c.req.url).protocol === 'https:',
  nowMs: () => performance.now(),
})

/** The last address in the list is the one that the proxy itself saw; those before it are hearsay. */
const forwardedFor = (c: Context): string | null => {
  const last = c.req.header('x-forwarded-for')?.split(',').at(-1)?.trim() ?? ''
  return last === '' ? null : last
}
