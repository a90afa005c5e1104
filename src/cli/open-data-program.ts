import type { Command } from 'commander'
import { createHash } from 'node:crypto'
import { readFile, writeFile } from 'node:fs/promises'
import { problem } from '../base/problem.ts'
import { openDataFile } from '../bench/open-data/export-records.ts'
import type { CommandDeps } from '../bench/commands.ts'
import { importOpenData, type OpenDataOutcome } from '../bench/open-data/import-records.ts'
import type { RecordState } from '../bench/open-data/record-state.ts'
import { recordFacts, recordProblem } from '../bench/open-data/record-words.ts'
import { unknownId } from '../bench/unknown.ts'
import { repairStatuses } from '../facts/open-repair-data.ts'
import { csvText } from '../report/csv.ts'
import { afterOf } from './after-option.ts'
import { textOf } from './option-text.ts'
import { show, showProblems, type Shell } from './output.ts'
import { withBench, type Options } from './with-bench.ts'

/** `thrum open-data export`, `import` and `list`: repair records by the Open Repair Data Standard 0.3. */
export const addOpenDataCommand = (program: Command, shell: Shell): void => {
  program
    .command('open-data <what> [file]')
    .description(
      'export FILE: closed machines; import FILE: repair records, by the Open Repair Data Standard 0.3 (CSV); list: the records taken in',
    )
    .option('--provider <name>', 'export: the name under which the data is given out')
    .option('--country <code>', 'export: three letters, where it is not that of the settings')
    .option('--text <words>', 'list: only those whose problem, make or kind holds these words')
    .option('--status <words>', `list: only those of which this came: ${repairStatuses.join(', ')}`)
    .option('--after <place>', 'list: further ones')
    .option('--leave-out-wrong', 'import: take in the rows that are right and leave the others out')
    .action(
      withBench(shell, async ({ deps }, options, [what = '', file = '']) => {
        const refuse = (code: string, where: string, text: string, mend: string) =>
          showProblems(shell.output, options.json, [problem(code, where, text, mend)])
        if (what === 'list') return listed(shell, options, deps)
        if (what !== 'export' && what !== 'import')
          return refuse('unknown-word', 'what', `“${what}” is none of them`, 'Write export, import or list')
        if (file === '') return refuse('no-file', 'file', 'No file is named', 'Name the CSV file')
        if (what === 'export') {
          const [provider, country] = [textOf(options, 'provider'), textOf(options, 'country')]
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
        const text = await readFile(file, 'utf8').catch(() => null)
        if (text === null)
          return refuse('cannot-read', file, 'The file cannot be read', 'Name a CSV file that is there')
        const outcome = await importOpenData({ ...deps, hash }, text, options['leaveOutWrong'] !== undefined)
        if (outcome.kind !== 'imported') return showProblems(shell.output, options.json, outcome.problems)
        return show(shell.output, options.json, outcome, () => importedLines(outcome))
      }),
    )
}

/** So many records are shown at once. */
const atOnce = 50

const listed = async (shell: Shell, options: Options, { books, bench }: CommandDeps): Promise<number> => {
  const status = textOf(options, 'status')
  const group = repairStatuses.find((each) => each.toLowerCase() === status?.toLowerCase())
  if (status !== undefined && group === undefined)
    return showProblems(shell.output, options.json, [unknownId('repair status', '--status', status, repairStatuses)])
  const after = afterOf(options)
  if (after.kind === 'refused') return showProblems(shell.output, options.json, after.problems)
  const page = await books.logs(bench, 'record', {
    open: true,
    limit: atOnce,
    after: after.value,
    group,
    text: textOf(options, 'text'),
  })
  const items = page.items as readonly RecordState[]
  return show(shell.output, options.json, page, () => [
    ...items.map(
      ({ record }) => `${[`${record.status}: ${recordProblem(record)}`, ...recordFacts(record)].join(' · ')}`,
    ),
    `${page.total} ${page.total === 1 ? 'record' : 'records'} found`,
    ...(page.after === null ? [] : [`Further ones: --after ${page.after}`]),
  ])
}

const hash = (text: string): string => createHash('sha256').update(text).digest('hex')

const importedLines = (outcome: Extract<OpenDataOutcome, { kind: 'imported' }>): readonly string[] => [
  `Taken in: ${outcome.imported}. There already: ${outcome.already}. Of other products: ${outcome.others}.`,
  ...(outcome.unread.length === 0 ? [] : [`Not read: ${outcome.unread.join(', ')}.`]),
  ...outcome.leftOut.map(({ where, what, mend }) => `Left out, ${where}: ${what}. ${mend}.`),
]
