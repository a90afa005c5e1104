import { problem, type Problem } from '../../base/problem.ts'
import { failureCode } from '../failure-code.ts'

/** An address as it may be shown and logged: without the password and whatever else follows the name of the database. */
export const shownAddress = (url: string): string => {
  try {
    const { protocol, username, host, pathname } = new URL(url)
    return `${protocol}//${username === '' ? '' : `${username}@`}${host}${pathname}`
  } catch {
    return 'the database'
  }
}

/** Whether an address is one of a PostgreSQL database. */
export const isDatabaseAddress = (text: string): boolean => /^postgres(?:ql)?:\/\//.test(text)

type Words = readonly [code: string, what: string, mend: string]

/** By PostgreSQL's codes (its documentation, appendix A) and those of the network and of TLS as Node names them. */
const known: Readonly<Record<string, Words>> = {
  '28P01': ['wrong-password', 'The server does not take this user with this password', 'Give the right ones in the address'], // prettier-ignore
  '28000': ['not-let-in', 'The server lets this user not in from here, or only over TLS', 'Have it allowed there, or add ?sslmode=require to the address'], // prettier-ignore
  '3D000': ['no-such-database', 'There is no such database on the server', 'Make it there first, or give another name'],
  '42501': ['no-right', 'This user may not make tables there', 'Make it the owner of the database'],
  '25006': ['database-read-only', 'This database can only be read', 'Give the address of the one that takes writing'],
  '53300': ['too-many-connections', 'The server has no connection free', 'Close other programs there, or allow more'],
  '57P03': ['database-starting', 'The server is starting or stopping', 'Try again in a moment'],
  ECONNREFUSED: ['no-server', 'No server answers at this address', 'Start it, or give another host or port'],
  ENOENT: ['no-server', 'No server answers at this address', 'Start it, or give another host or port'],
  ENOTFOUND: ['no-such-host', 'There is no host of this name', 'Correct the name of the host'],
  EAI_AGAIN: [
    'no-such-host',
    'The name of the host cannot be looked up now',
    'See to the network, or correct the name',
  ],
  SELF_SIGNED_CERT_IN_CHAIN: ['not-trusted', 'The certificate of the server is signed by nobody known here', 'Name the file of its authority: ?sslrootcert=FILE'], // prettier-ignore
  DEPTH_ZERO_SELF_SIGNED_CERT: ['not-trusted', 'The certificate of the server is signed by itself', 'Name the file it can be held against: ?sslrootcert=FILE'], // prettier-ignore
  UNABLE_TO_VERIFY_LEAF_SIGNATURE: ['not-trusted', 'The certificate of the server is signed by nobody known here', 'Name the file of its authority: ?sslrootcert=FILE'], // prettier-ignore
  ERR_TLS_CERT_ALTNAME_INVALID: ['not-trusted', 'The certificate of the server is for another name', 'Give the host as the certificate names it'], // prettier-ignore
  CERT_HAS_EXPIRED: ['not-trusted', 'The certificate of the server has run out', 'Give the server a new one'],
}

/** Why the database at an address could not be opened. */
export const openProblem = (url: string, fault: unknown): Problem => {
  const where = shownAddress(url)
  const found = known[failureCode(fault)]
  if (found !== undefined) return problem(found[0], where, found[1], found[2])
  const text = fault instanceof Error ? fault.message : String(fault)
  if (/does not support SSL/.test(text)) {
    return problem('no-tls', where, 'The server speaks no TLS', 'Set it up there, or leave sslmode out of the address')
  }
  if (/timeout|terminated/.test(text)) {
    return problem('no-server', where, 'No server answers at this address', 'Start it, or give another host or port')
  }
  return problem('database-not-opened', where, 'The database could not be opened', whyMend(fault))
}

/** The words of a failure that is not known here may hold the address, password and all; its code does not. */
const whyMend = (fault: unknown): string => {
  const code = failureCode(fault)
  return code === '' ? 'Look at the address' : `Look at the address; the server says ${code}`
}

export const notUtf8 = (url: string, encoding: string): Problem =>
  problem(
    'not-utf-8',
    shownAddress(url),
    `The database keeps text as ${encoding}, which has not all letters`,
    "Make one with encoding 'UTF8'",
  )

export const fsyncIsOff = (url: string): Problem =>
  problem(
    'not-durable',
    shownAddress(url),
    'The server does not bring to the disk what it keeps (fsync is off), so a loss of power can lose notes',
    'Set fsync = on there',
  )
