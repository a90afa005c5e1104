import type { Access } from '../../src/server/sign-in/access.ts'
import { makeSecrets } from '../../src/server/sign-in/passphrase-hash.ts'
import { memoryPeopleStore } from '../../src/store/memory/people-store.ts'

/** Who may come in, with a clock that is moved by hand, hashes that cost little, and the client's address as it says in a header. */
export const accessAt = (start = '2026-03-14T10:00:00.000Z', over: Partial<Access> = {}) => {
  let ms = Date.parse(start)
  let ids = 0
  const access: Access = {
    people: memoryPeopleStore(),
    secrets: makeSecrets({ ln: 4, r: 8, p: 1 }),
    now: () => new Date(ms).toISOString(),
    newId: () => `id-${++ids}`,
    isOpen: true,
    clientOf: (c) => c.req.header('x-test-client') ?? '192.0.2.1',
    isSecure: () => false,
    nowMs: () => ms,
    ...over,
  }
  return { access, pass: (seconds: number) => void (ms += seconds * 1000) }
}
