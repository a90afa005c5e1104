import { problem, type Problem } from '../../base/problem.ts'

/** What is typed to become the first who has a name. */
export type FirstPersonDraft = { readonly name: string; readonly passphrase: string; readonly again: string }

export const emptyFirstPerson: FirstPersonDraft = { name: '', passphrase: '', again: '' }

/**
 * What stands against sending it: from then on nobody comes in but by this passphrase, so it is typed twice alike. How long it has to be
 * the bench says.
 */
export const firstPersonProblems = ({ name, passphrase, again }: FirstPersonDraft): readonly Problem[] => [
  ...(name.trim() === '' ? [problem('no-name', 'name', 'No name is given', 'Write yours')] : []),
  ...(passphrase === again ? [] : [problem('not-the-same', 'again', 'The two passphrases are not the same', 'Type it twice alike')]), // prettier-ignore
]
