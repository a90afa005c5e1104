import type { Command } from 'commander'
import { resolve } from 'node:path'
import type { Problem } from '../base/problem.ts'
import { bookFile, bookFileNames } from '../bench/books/book-files.ts'
import { csvText } from '../report/csv.ts'
import { automaticBackupsIn } from '../store/backup/automatic.ts'
import { checkBackup } from '../store/backup/check-backup.ts'
import { checkStore } from '../store/backup/check-store.ts'
import { exportFolder } from '../store/backup/export-folder.ts'
import { makeBackup } from '../store/backup/make-backup.ts'
import { mendLists } from '../store/backup/mend-lists.ts'
import { openToRead, type ReadableStore } from '../store/backup/open-to-read.ts'
import { restoreBackup } from '../store/backup/restore-backup.ts'
import { restoreIntoDatabase } from '../store/move/restore-into-database.ts'
import { openBenchStore } from '../store/open-bench-store.ts'
import { openStore } from '../store/sqlite/open-store.ts'
import { backupFolder } from '../store/backup/backup-folder.ts'
import { backupLines, restoredLines, verifyLines } from './backup-text.ts'
import { openBench } from './bench-commands.ts'
import { exitCodes, show, showProblems, type Shell } from './output.ts'
import { placeOf, type PlaceOptions } from './store-place.ts'

type Options = PlaceOptions & { readonly json: boolean; readonly mend?: boolean; readonly backups?: string }

/** Commands that see to it that nothing is lost: a backup, having it back, whether all is whole, and everything as open files. */
export const addBackupCommands = (program: Command, shell: Shell): void => {
  const act = (work: (options: Options, args: readonly string[]) => Promise<number>) => {
    return async (...given: unknown[]): Promise<void> => {
      const command = given.at(-1) as Command
      shell.finish(await work(command.optsWithGlobals<Options>(), command.args))
    }
  }
  program
    .command('backup <file>')
    .description('write everything to one file, also while the pages are served; read back before it counts')
    .action(act((options, [file = '']) => backup(shell, options, file)))
  program
    .command('restore <file>')
    .description('make a data folder from a backup, or with --database fill a database; either must be empty')
    .action(act((options, [file = '']) => restore(shell, options, file)))
  program
    .command('verify [file]')
    .description('look whether the bench, or a backup, is whole, and name what is damaged')
    .option('--mend', 'make what lists and books keep again from the notes')
    .option('--backups <folder>', 'where backups are made by themselves (or set THRUM_BACKUPS)')
    .action(act((options, [file]) => (file === undefined ? verify(shell, options) : verifyFile(shell, options, file))))
  program
    .command('export <folder>')
    .description('write everything as open files: lines of JSON, tables, photographs; the folder must be empty')
    .action(act((options, [folder = '']) => exportAll(shell, options, folder)))
}

const withStore = async (
  shell: Shell,
  options: Options,
  work: (store: ReadableStore) => Promise<number>,
): Promise<number> => {
  const opened = await openToRead(placeOf(options))
  if (opened.kind === 'refused') return showProblems(shell.output, options.json, opened.problems)
  try {
    return await work(opened.value)
  } finally {
    await opened.value.close()
  }
}

const backup = (shell: Shell, options: Options, file: string): Promise<number> =>
  withStore(shell, options, async ({ db, photos }) => {
    const made = await makeBackup({ db, photos, madeAt: new Date().toISOString() }, file)
    if (made.kind === 'refused') return showProblems(shell.output, options.json, made.problems)
    return show(shell.output, options.json, made.value, () => backupLines(made.value))
  })

const restore = async (shell: Shell, options: Options, file: string): Promise<number> => {
  const { database, data } = options
  if (database !== undefined) return restoreThere(shell, options, file, database)
  const restored = await restoreBackup(file, data, (folder) => openStore({ folder }))
  if (restored.kind === 'refused') return showProblems(shell.output, options.json, restored.problems)
  return show(shell.output, options.json, { ...restored.value, folder: data }, () =>
    restoredLines(restored.value, data),
  )
}

const restoreThere = async (shell: Shell, options: Options, file: string, database: string): Promise<number> => {
  const restored = await restoreIntoDatabase(file, { ...placeOf(options), database })
  if (restored.kind === 'refused') return showProblems(shell.output, options.json, restored.problems)
  const { to, ...rest } = restored.value
  return show(shell.output, options.json, { ...rest, database: to }, () => restoredLines(rest, to))
}

const verify = async (shell: Shell, options: Options): Promise<number> => {
  if (options.mend === true) {
    const mended = await mend(options)
    if (mended.length > 0) return showProblems(shell.output, options.json, mended)
  }
  return withStore(shell, options, async (store) => {
    const checked = await checkStore(store)
    const folder = resolve(options.backups ?? process.env['THRUM_BACKUPS'] ?? backupFolder(options.data))
    const backups = { folder, files: await automaticBackupsIn(folder) }
    return verdict(shell, options, { ...checked, backups }, () => verifyLines(checked, backups))
  })
}

const mend = async (options: Options): Promise<readonly Problem[]> => {
  const opened = await openBenchStore(placeOf(options))
  if (opened.kind === 'refused') return opened.problems
  try {
    await mendLists(opened.value.db)
    return []
  } finally {
    await opened.value.close()
  }
}

const verifyFile = async (shell: Shell, options: Options, file: string): Promise<number> => {
  const checked = await checkBackup(file)
  return verdict(shell, options, checked, () => verifyLines(checked, null))
}

const verdict = <Found extends { readonly problems: readonly Problem[] }>(
  shell: Shell,
  { json }: Options,
  found: Found,
  lines: () => readonly string[],
): number => {
  const isWhole = found.problems.length === 0
  show(shell.output, json, { kind: isWhole ? 'whole' : 'damaged', ...found }, lines)
  return isWhole ? exitCodes.fine : exitCodes.refused
}

const exportAll = (shell: Shell, options: Options, folder: string): Promise<number> =>
  withStore(shell, options, async ({ db, photos }) => {
    const bench = await openBench(placeOf(options))
    if (bench.kind === 'refused') return showProblems(shell.output, options.json, bench.problems)
    try {
      const { deps } = bench.value
      const tables = bookFileNames.map((name) => ({ name: `${name}.csv`, text: csvOf(() => bookFile(deps, name)) }))
      const made = await exportFolder({ db, photos }, tables, folder)
      if (made.kind === 'refused') return showProblems(shell.output, options.json, made.problems)
      return show(shell.output, options.json, made.value, () => [`Written: ${folder}`])
    } finally {
      await bench.value.close()
    }
  })

async function* csvOf(make: () => ReturnType<typeof bookFile>): AsyncGenerator<string> {
  const { header, stretches } = await make()
  yield* csvText(header, stretches)
}
