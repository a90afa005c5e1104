import { setTimeout } from 'node:timers/promises'
import { problem, type Problem } from '../../base/problem.ts'
import { failureCode } from './database.ts'

/** How often to try while another program holds the store, and the pause between; each try itself waits for a moment too. */
const turnsWhileBusy = 20
const pauseMs = 50

type NotKept = { readonly kind: 'not-kept'; readonly problem: Problem }

/** Writes, trying again while another program writes, and turns the failures a bench can do something about into an outcome. */
export const kept = async <Outcome>(write: () => Promise<Outcome>): Promise<Outcome | NotKept> => {
  for (let turn = 1; ; turn++) {
    try {
      return await write()
    } catch (fault) {
      const code = failureCode(fault)
      if (!code.startsWith('SQLITE_BUSY') || turn === turnsWhileBusy) return notKept(code, fault)
      await setTimeout(pauseMs)
    }
  }
}

const notKept = (code: string, fault: unknown): NotKept => {
  const known = writeProblem(code)
  if (known === null) throw fault
  return { kind: 'not-kept', problem: known }
}

const writeProblem = (code: string): Problem | null => {
  if (code === 'SQLITE_FULL') {
    return problem('disk-full', '', 'The disk is full, so nothing was written', 'Make room, then send it again')
  }
  if (code.startsWith('SQLITE_READONLY') || code.startsWith('SQLITE_IOERR') || code.startsWith('SQLITE_CANTOPEN')) {
    return problem('not-writable', '', 'The data folder cannot be written', 'Mend that, then send it again')
  }
  if (code.startsWith('SQLITE_BUSY')) {
    return problem('busy', '', 'Another program is writing to the store', 'Send it again in a moment')
  }
  return null
}
