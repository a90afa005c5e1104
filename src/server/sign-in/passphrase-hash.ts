import { createHash, randomBytes, scrypt, timingSafeEqual } from 'node:crypto'
import type { Secrets } from '../../bench/people/people-ports.ts'
import { deviceTimes, passphraseHashing } from '../../facts/sign-in.ts'

/** What a hash costs: N = 2^ln, block size r, parallel p (RFC 7914). */
export type Cost = { readonly ln: number; readonly r: number; readonly p: number }

/**
 * Passphrases hashed with scrypt, kept as `$scrypt$ln=17,r=8,p=1$salt$hash` in base64 without padding, so that one hashed at another
 * cost can still be read. One hash is worked out at a time: each takes 128 MiB.
 */
export const makeSecrets = (cost: Cost = passphraseHashing): Secrets => {
  const inTurn = oneAtATime()
  const { saltBytes, hashBytes } = passphraseHashing
  const hash = (passphrase: string): Promise<string> =>
    inTurn(async () => {
      const salt = randomBytes(saltBytes)
      return keptAs(cost, salt, await derive(passphrase, salt, hashBytes, cost))
    })
  // Nobody's hash: checked against where there is none, so that it takes the same time.
  const decoy = keptAs(cost, randomBytes(saltBytes), randomBytes(hashBytes))
  const matches = (passphrase: string, kept: string | null): Promise<boolean> =>
    inTurn(async () => {
      const known = parseKept(kept ?? decoy)
      if (known === null) return false
      const found = await derive(passphrase, known.salt, known.hash.length, known.cost)
      return timingSafeEqual(found, known.hash) && kept !== null
    })
  return {
    hash,
    matches,
    newToken: () => randomBytes(deviceTimes.tokenBytes).toString('base64url'),
    tokenHash: (token) => createHash('sha256').update(token).digest('hex'),
  }
}

const keptAs = ({ ln, r, p }: Cost, salt: Uint8Array, hash: Uint8Array): string =>
  `$scrypt$ln=${ln},r=${r},p=${p}$${unpadded(salt)}$${unpadded(hash)}`

const unpadded = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64').replaceAll('=', '')

const form = /^\$scrypt\$ln=(\d{1,2}),r=(\d{1,2}),p=(\d{1,2})\$([A-Za-z0-9+/]{1,200})\$([A-Za-z0-9+/]{20,200})$/

/** More would be asked of the memory than any bench has. */
const mostLn = 20

const parseKept = (kept: string): { readonly cost: Cost; readonly salt: Buffer; readonly hash: Buffer } | null => {
  const [, ln, r, p, salt = '', hash = ''] = form.exec(kept) ?? []
  const cost = { ln: Number(ln), r: Number(r), p: Number(p) }
  if (!(cost.ln >= 1 && cost.ln <= mostLn && cost.r >= 1 && cost.p >= 1)) return null
  return { cost, salt: Buffer.from(salt, 'base64'), hash: Buffer.from(hash, 'base64') }
}

/** The same words typed on two keyboards may be made of different signs; NFKC makes them one (NIST SP 800-63B, 5.1.1.2). */
const derive = (passphrase: string, salt: Uint8Array, length: number, { ln, r, p }: Cost): Promise<Buffer> => {
  const N = 2 ** ln
  const maxmem = 128 * N * r + 128 * r * p + 1024 * 1024
  return new Promise((resolve, reject) =>
    scrypt(passphrase.normalize('NFKC'), salt, length, { N, r, p, maxmem }, (fault, key) =>
      fault === null ? resolve(key) : reject(fault),
    ),
  )
}

const oneAtATime = () => {
  let last: Promise<unknown> = Promise.resolve()
  return <T>(work: () => Promise<T>): Promise<T> => {
    const next = last.then(work, work)
    last = next.catch(() => undefined)
    return next
  }
}
