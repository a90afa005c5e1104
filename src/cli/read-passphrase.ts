import { readFile } from 'node:fs/promises'
import { createInterface } from 'node:readline/promises'
import { Writable } from 'node:stream'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { passphraseProblems } from '../bench/people/passphrase-rules.ts'

/** Asks for something that is not shown while it is typed. Rejects when the terminal is closed meanwhile. */
export type AskHidden = (prompt: string) => Promise<string>

/**
 * A passphrase: the first line of the file that `THRUM_PASSPHRASE_FILE` names, or typed twice at the terminal. Never from the command line, which
 * other programs and the shell’s memory can read.
 */
export const readPassphrase = async (
  environment: NodeJS.ProcessEnv,
  ask: AskHidden | null = terminalAsk(),
): Promise<Result<string>> => {
  const file = environment['THRUM_PASSPHRASE_FILE']
  if (file !== undefined && file !== '') return passphraseInFile(file)
  if (ask === null) return refused(noTerminal)
  const first = await ask('Passphrase (not shown): ')
  const problems = passphraseProblems(first)
  if (problems.length > 0) return refused(...problems)
  return (await ask('Once more: ')) === first ? ok(first) : refused(notTheSame)
}

export const passphraseInFile = async (file: string): Promise<Result<string>> => {
  try {
    return ok((await readFile(file, 'utf8')).split(/\r?\n/)[0] ?? '')
  } catch {
    const what = 'The file with the passphrase cannot be read'
    return refused(problem('no-passphrase-file', file, what, 'Name one that can be in THRUM_PASSPHRASE_FILE'))
  }
}

const noTerminal = problem(
  'no-terminal',
  'passphrase',
  'There is no terminal to type a passphrase at',
  'Run it at a terminal, or name a file with the passphrase in THRUM_PASSPHRASE_FILE',
)
const notTheSame = problem('not-the-same', 'passphrase', 'The two are not the same', 'Type it twice alike')

const terminalAsk = (): AskHidden | null => (process.stdin.isTTY ? askHidden : null)

/** The terminal echoes through what the line is written to, and that writes nothing. */
const askHidden: AskHidden = async (prompt) => {
  process.stderr.write(prompt)
  const silent = new Writable({ write: (_bytes, _encoding, done) => done() })
  const lines = createInterface({ input: process.stdin, output: silent, terminal: true })
  try {
    return await lines.question('')
  } finally {
    lines.close()
    process.stderr.write('\n')
  }
}
