import type { Command } from 'commander'
import { createHash } from 'node:crypto'
import { readFile, writeFile } from 'node:fs/promises'
import { problem } from '../base/problem.ts'
import { openDataFile } from '../bench/open-data/export-records.ts'
import { importOpenData, type OpenDataOutcome } from '../bench/open-data/import-records.ts'
import { csvText } from '../report/csv.ts'
import { show, showProblems, type Shell } from './output.ts'
import { withBench } from './with-bench.ts'

/** `thrum open-data export` and `thrum open-data import`: repair records by the Open Repair Data Standard 0.3. */
export const addOpenDataCommand = (program: Command, shell: Shell): void => {
  program
    .command('open-data <what> <file>')
    .description('export closed machines, or import repair records, by the Open Repair Data Standard 0.3 (CSV)')
    .option('--provider <name>', 'export: the name under which the data is given out')
    .option('--country <code>', 'export: three letters, where it is not that of the settings')
    .option('--leave-out-wrong', 'import: take in the rows that are right and leave the others out')
    .action(
      withBench(shell, async ({ deps }, options, [what = '', file = '']) => {
        const refuse = (code: string, where: string, text: string, mend: string) =>
          showProblems(shell.output, options.json, [problem(code, where, text, mend)])
        if (what === 'export') {
          const [provider, country] = [one(options['provider']), one(options['country'])]
          if (country !== undefined && !/^[A-Z]{3}$/.test(country))
            return refuse(
              'not-a-country',
              '--country',
              `“${country}” is no code of a country`,
              'Write three capital letters, such as GBR',
            )
          const { header, stretches } = await openDataFile(deps, { provider, country })
          try {
            await writeFile(file, csvText(header, stretches))
          } catch (error) {
            const why = error instanceof Error ? error.message : 'for a reason not given'
            return refuse(
              'not-written',
              file,
              `The file could not be written: ${why}`,
              'Name a folder that can be written to',
            )
          }
          return show(shell.output, options.json, { written: file }, () => [`Written: ${file}`])
        }
        if (what !== 'import') return refuse('unknown-word', 'what', `“${what}” is neither`, 'Write export or import')
        const text = await readFile(file, 'utf8').catch(() => null)
        if (text === null)
          return refuse('cannot-read', file, 'The file cannot be read', 'Name a CSV file that is there')
        const outcome = await importOpenData({ ...deps, hash }, text, options['leaveOutWrong'] !== undefined)
        if (outcome.kind !== 'imported') return showProblems(shell.output, options.json, outcome.problems)
        return show(shell.output, options.json, outcome, () => importedLines(outcome))
      }),
    )
}

const one = (value: string | string[] | undefined): string | undefined =>
  typeof value === 'string' ? value : undefined

const hash = (text: string): string => createHash('sha256').update(text).digest('hex')

const importedLines = (outcome: Extract<OpenDataOutcome, { kind: 'imported' }>): readonly string[] => [
  `Taken in: ${outcome.imported}. There already: ${outcome.already}. Of other products: ${outcome.others}.`,
  ...(outcome.unread.length === 0 ? [] : [`Not read: ${outcome.unread.join(', ')}.`]),
  ...outcome.leftOut.map(({ where, what, mend }) => `Left out, ${where}: ${what}. ${mend}.`),
]
