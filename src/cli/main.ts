import { Command, CommanderError } from 'commander'
import { homedir } from 'node:os'
import { join } from 'node:path'
import { machineView } from '../machine/index.ts'
import { addAdaptCommands } from './adapt-program.ts'
import { addAdvertCommands } from './advert-program.ts'
import { addAirCommands } from './air-program.ts'
import { addAskingCommands } from './asking-program.ts'
import { addBackupCommands } from './backup-program.ts'
import { addBenchCommands } from './bench-program.ts'
import { addBooksCommands } from './books-program.ts'
import { addBuyCommand } from './buy-program.ts'
import { addCleanCommands } from './clean-program.ts'
import { addCableCommand } from './cable-program.ts'
import { addBrushCommand } from './brush-program.ts'
import { addEngineCommands } from './engine-program.ts'
import { addFunctionCommands } from './functions-program.ts'
import { addMoveCommand } from './move-program.ts'
import { addNextCommand } from './next-program.ts'
import { exitCodes, type Output, type Shell } from './output.ts'
import { addPeopleCommands } from './people-program.ts'
import { addOpenDataCommand } from './open-data-program.ts'
import { addPhotoCommand } from './photo-program.ts'
import { addListCommand, addPickCommand } from './pick-program.ts'
import { addProofCommands } from './proof-program.ts'
import { addRigCommand } from './rig-program.ts'
import { addSaleCommands } from './sale-program.ts'
import { addServeCommand } from './serve-command.ts'
import type { Cost } from '../server/sign-in/passphrase-hash.ts'
import { addSettingsCommand } from './settings-program.ts'
import { addShelfCommands } from './shelf-program.ts'
import { placeOptions } from './store-place.ts'
import { addStampsCommand } from './stamps-program.ts'
import { addStoryCommands } from './story-program.ts'
import { addTakeOffCommand } from './take-off-program.ts'
import { addStripCommand } from './strip-program.ts'
import { addThenCommand } from './then-program.ts'
import { addWhyCommand } from './why-program.ts'

const terminal: Output = {
  out: (text) => process.stdout.write(`${text}\n`),
  err: (text) => process.stderr.write(`${text}\n`),
}

/** The data folder when none is named: `THRUM_DATA`, or `.thrum` in the home folder. */
export const defaultFolder = (environment: NodeJS.ProcessEnv): string =>
  environment['THRUM_DATA'] ?? join(homedir(), '.thrum')

/**
 * Runs the command line. Gives the exit code: 0 fine, 1 refused, 2 misused.
 * @param hashing what a passphrase costs, less in tests
 * @param viewOf works a machine's view out; one that keeps what it worked out saves many commands on the same machines their time
 */
export const main = async (
  args: readonly string[],
  output: Output = terminal,
  environment: NodeJS.ProcessEnv = process.env,
  hashing?: Cost,
  viewOf: Shell['viewOf'] = machineView,
): Promise<number> => {
  let code: number = exitCodes.fine
  const shell: Shell = { output, finish: (value) => (code = value), viewOf }
  const [database, photos] = placeOptions(environment)
  const program = new Command('thrum')
    .description('What is wrong with a vacuum cleaner, what to do next, and what it is worth.')
    .option('--data <folder>', 'data folder (or set THRUM_DATA)', defaultFolder(environment))
    .option('--json', 'answer in JSON', false)
    .addOption(database)
    .addOption(photos)
    .exitOverride()
    .configureOutput({ writeOut: (text) => output.out(text.trimEnd()), writeErr: (text) => output.err(text.trimEnd()) })
  addServeCommand(program, shell, environment)
  addBenchCommands(program, shell)
  addNextCommand(program, shell)
  addThenCommand(program, shell)
  addWhyCommand(program, shell)
  addEngineCommands(program, shell)
  addListCommand(program, shell)
  addPickCommand(program, shell)
  addAdaptCommands(program, shell)
  addStampsCommand(program, shell)
  addRigCommand(program, shell)
  addAirCommands(program, shell)
  addProofCommands(program, shell)
  addBrushCommand(program, shell)
  addCableCommand(program, shell)
  addCleanCommands(program, shell)
  addFunctionCommands(program, shell)
  addMoveCommand(program, shell)
  addPhotoCommand(program, shell)
  addSaleCommands(program, shell)
  addStoryCommands(program, shell)
  addBuyCommand(program, shell)
  addAskingCommands(program, shell)
  addAdvertCommands(program, shell)
  addBooksCommands(program, shell)
  addOpenDataCommand(program, shell)
  addShelfCommands(program, shell)
  addTakeOffCommand(program, shell)
  addStripCommand(program, shell)
  addSettingsCommand(program, shell)
  addBackupCommands(program, shell)
  addPeopleCommands(program, shell, environment, hashing)
  // Options of the whole program may stand anywhere in the line.
  program.commands.forEach((command) =>
    command
      .option('--json', 'answer in JSON')
      .option('--data <folder>', 'data folder')
      .option('--database <url>', 'PostgreSQL database')
      .exitOverride(),
  )
  try {
    await program.parseAsync([...args], { from: 'user' })
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error
    return error.exitCode === 0 ? exitCodes.fine : exitCodes.misused
  }
  return code
}
