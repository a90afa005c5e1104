import type { Source } from '../base/source.ts'

/** How much a guess at a passphrase costs: memory 128 × r × 2^ln bytes (128 MiB), and most of a second on a small machine. */
export const passphraseHashing = {
  ln: 17,
  r: 8,
  p: 1,
  saltBytes: 16,
  hashBytes: 32,
  source: {
    title: 'OWASP Password Storage Cheat Sheet: scrypt with N = 2^17, r = 8, p = 1 as the least',
    edition: '2023',
    evidence: 'retrieved',
  } as Source,
  method: {
    title: 'RFC 7914, The scrypt Password-Based Key Derivation Function',
    edition: '2016',
    evidence: 'from memory',
  } as Source,
} as const

/** Length alone is asked for, no mixture of signs. */
export const passphraseLimits = {
  leastCharacters: 10,
  mostCharacters: 200,
  source: {
    title:
      'NIST SP 800-63B: at least 8 characters, at least 64 permitted, no rules of composition, each code point counts as one, normalised by NFKC. The 10 is this program’s own',
    clause: '5.1.1.2',
    edition: '2017',
    evidence: 'retrieved',
  } as Source,
} as const

/** How long a device stays signed in without being used, and how old a token may be before it is changed for another. */
export const deviceTimes = {
  lastsDays: 180,
  changesAfterHours: 24,
  /** Answers that were on their way when the token changed still count. */
  graceSeconds: 60,
  /** How often it is written down that a device was seen. */
  seenEveryMinutes: 5,
  tokenBytes: 32,
  source: {
    title: 'A workshop’s phone that is used twice a year should not ask for the passphrase each time',
    evidence: 'judgement',
  } as Source,
} as const

/** How guessing is slowed down: the first few slips are free, then each doubles the wait. */
export const guessing = {
  freePerAddress: 5,
  firstWaitSeconds: 1,
  longestWaitSeconds: 15 * 60,
  /** From all addresses together. The wait stays short, or anyone could lock the owner out. */
  freeTogether: 30,
  longestTogetherSeconds: 60,
  /** After so long without a slip all is forgotten. */
  forgottenAfterSeconds: 60 * 60,
  source: {
    title:
      'NIST SP 800-63B, throttling of failed attempts, with waits that grow from 30 seconds to an hour as an example',
    clause: '5.2.2',
    edition: '2017',
    evidence: 'from memory',
  } as Source,
} as const
