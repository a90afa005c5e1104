import { problem, type Problem } from '../../base/problem.ts'
import { passphraseLimits } from '../../facts/sign-in.ts'

/** What stands against a passphrase: length alone, counted in characters as people see them. */
export const passphraseProblems = (passphrase: string, where = 'passphrase'): Problem[] => {
  const { leastCharacters, mostCharacters } = passphraseLimits
  const length = [...passphrase.normalize('NFC')].length
  if (length < leastCharacters) {
    const what = `A passphrase has at least ${leastCharacters} characters`
    return [problem('passphrase-too-short', where, what, 'Take a few words that nobody else would put together')]
  }
  if (length > mostCharacters) {
    return [
      problem('passphrase-too-long', where, `A passphrase has at most ${mostCharacters} characters`, 'Shorten it'),
    ]
  }
  if (new Set(passphrase).size < leastDifferent) {
    return [problem('passphrase-too-plain', where, 'This is one sign over and over', 'Take a few words')]
  }
  return []
}

const leastDifferent = 3
