import type { Command } from 'commander'
import { moveBench, type Moved } from '../store/move/move-bench.ts'
import { isDatabaseAddress } from '../store/postgres/open-problem.ts'
import { show, showProblems, type Shell } from './output.ts'
import { placeOf, type PlaceOptions } from './store-place.ts'

type Options = PlaceOptions & { readonly json: boolean; readonly to: string; readonly toPhotos?: string }

/** `thrum move --to URL|FOLDER`: everything into another store, which must be empty. */
export const addMoveCommand = (program: Command, shell: Shell): void => {
  program
    .command('move')
    .description('copy everything into another store, a database or a folder, which must be empty; compared afterwards')
    .requiredOption('--to <where>', 'postgres://… or a folder')
    .option('--to-photos <where>', 'where photographs go: database, or a folder')
    .action(async (_options: unknown, command: Command) => {
      const options = command.optsWithGlobals<Options>()
      const { json, data, to, toPhotos: photos } = options
      const target = isDatabaseAddress(to) ? { folder: data, database: to, photos } : { folder: to, photos }
      const moved = await moveBench(placeOf(options), target)
      if (moved.kind === 'refused') return shell.finish(showProblems(shell.output, json, moved.problems))
      shell.finish(show(shell.output, json, moved.value, () => lines(moved.value)))
    })
}

const lines = ({ counts, photos, to }: Moved): readonly string[] => [
  `Moved to ${to}, and the same there: ${counts.machine ?? 0} machines, ${counts.log ?? 0} other logs, ${counts.blueprint ?? 0} own blueprints, ${photos} files of photographs.`,
  'Devices have to sign in again. The first store is as it was; go on with the new one only.',
]
