import type { Context } from 'hono'
import type { PeopleDeps } from '../../bench/people/people-commands.ts'
import { memoryPeopleStore } from '../../store/memory/people-store.ts'
import { makeSecrets } from './passphrase-hash.ts'

/** How the program is reached and by whom, as far as signing in depends on it. */
export type Access = PeopleDeps & {
  /** True where others than this machine reach the program: then nobody is let in without signing in. */
  readonly isOpen: boolean
  /** The address a request comes from, to slow guessing down by. */
  readonly clientOf: (c: Context) => string
  /** Whether it came over https. */
  readonly isSecure: (c: Context) => boolean
  readonly nowMs: () => number
}

/** Everyone is let in, as on this machine alone with nobody named; nothing is remembered. */
export const openAccess = ({ now, newId }: Pick<PeopleDeps, 'now' | 'newId'>): Access => ({
  people: memoryPeopleStore(),
  secrets: makeSecrets(),
  now,
  newId,
  isOpen: false,
  clientOf: () => '',
  isSecure: () => false,
  nowMs: () => 0,
})

/** All devices of one home share the first half of an IPv6 address, and one that guesses has as many second halves as it likes. */
export const clientKey = (address: string): string => {
  const plain = address.replace(/^::ffff:(?=\d+\.)/i, '')
  return plain.includes(':') ? expanded(plain).slice(0, 4).join(':') : plain
}

const expanded = (address: string): readonly string[] => {
  const [head = '', tail] = (address.split('%')[0] ?? '').split('::')
  const front = head === '' ? [] : head.split(':')
  const back = tail === undefined || tail === '' ? [] : tail.split(':')
  const gap = tail === undefined ? 0 : Math.max(0, 8 - front.length - back.length)
  return [...front, ...Array.from({ length: gap }, () => '0'), ...back].map((part) => part.toLowerCase())
}
