import type { Command } from 'commander'
import { addMachineCommand } from './add-program.ts'
import { addListingCommands } from './listing-program.ts'
import { addNotingCommands } from './noting-program.ts'
import type { Shell } from './output.ts'

/** Commands on the machines of a bench: which there are, a new one, and what is noted of one. */
export const addBenchCommands = (program: Command, shell: Shell): void => {
  addListingCommands(program, shell)
  addMachineCommand(program, shell)
  addNotingCommands(program, shell)
}
