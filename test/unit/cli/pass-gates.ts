import { join } from 'node:path'
import { valueOf } from '../../../src/base/result.ts'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import { findMachine, openBench, writeNote } from '../../../src/cli/bench-commands.ts'
import { gatesPassedWithCovers } from '../../support/pass-gates.ts'
import type { CommandLine } from './command-line.ts'

/** Writes what must be passed before running past the command line, which would work out the plan after each. */
export const passGates = async (line: CommandLine, name: string, blueprint: Blueprint): Promise<void> => {
  const bench = valueOf(await openBench({ folder: join(line.folder, 'data') }))
  for (const content of gatesPassedWithCovers(blueprint)) {
    valueOf(await writeNote(bench.deps, valueOf(await findMachine(bench.deps, name)), content))
  }
  await bench.close()
}
