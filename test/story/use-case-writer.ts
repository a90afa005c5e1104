import { problemText } from '../../src/base/problem.ts'
import { addMachine, addNote, type CommandDeps, type CommandOutcome } from '../../src/bench/commands.ts'
import type { MachineDocument } from '../../src/bench/contract.ts'
import { blueprintById, blueprints } from '../../src/blueprint/library.ts'
import { memorySettingsStore } from '../../src/store/memory/settings-store.ts'
import { storesOf } from '../support/stores.ts'
import type { Writer } from './bench-job.ts'

/** Writes through the use-cases, on a bench in memory whose clock moves a minute at each note. */
export const useCaseWriter = (deps: CommandDeps = emptyBench()): Writer => {
  return {
    begin: async (content) => documentOf(await addMachine(deps, content)),
    write: async ({ state }, content) => documentOf(await addNote(deps, state.id, state.version, content)),
    refusal: async ({ state }, content) => {
      const outcome = await addNote(deps, state.id, state.version, content)
      return outcome.kind === 'refused' ? outcome.problems.map(problemText).join('\n') : outcome.kind
    },
  }
}

/** An empty bench in memory whose clock moves a minute at each note. */
export const emptyBench = (): CommandDeps => {
  let minute = 0
  let count = 0
  return {
    ...storesOf(),
    settings: memorySettingsStore(),
    bench: 'own',
    blueprintById,
    blueprintIds: () => blueprints.map((blueprint) => blueprint.id),
    now: () => new Date(Date.UTC(2026, 4, 2, 9, minute++)).toISOString(),
    newId: () => `id-${++count}`,
  }
}

const documentOf = (outcome: CommandOutcome): MachineDocument => {
  if (outcome.kind === 'done') return outcome.document
  throw new Error(outcome.problems.map(problemText).join('\n'))
}
