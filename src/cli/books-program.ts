import type { Command } from 'commander'
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { moneyFromText } from '../base/money.ts'
import { parse } from '../base/parse.ts'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import { booksOf } from '../bench/books/books.ts'
import { bookFile, bookFileNames, type BookFileName } from '../bench/books/book-files.ts'
import { expenseContentSchema } from '../bench/books/expense-note.ts'
import { expenses } from '../bench/books/expenses.ts'
import { importBooks } from '../bench/books/import/import-books.ts'
import type { CommandDeps } from '../bench/commands.ts'
import { dayOf } from '../bench/logs/calendar-day.ts'
import { currentSettings } from '../bench/settings.ts'
import { csvText } from '../report/csv.ts'
import { atOptions } from './at-options.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { booksLines, importLines } from './books-text.ts'
import { show, showProblems, type Shell } from './output.ts'
import { answer, withBench, type Options } from './with-bench.ts'

/** Commands on the books: what was earned and spent, files of it, spending, what came back, what was kept before. */
export const addBooksCommands = (program: Command, shell: Shell): void => {
  addBooks(program, shell)
  addImport(program, shell)
  addSpent(program, shell)
  addCameBack(program, shell)
}

const addBooks = (program: Command, shell: Shell): void => {
  program
    .command('books')
    .description('profit, hours, what is tied up and what pays, by month and tax year')
    .option('--year <name>', 'the tax year that margins are shown for, such as 2026-27; left out, the present one')
    .option('--csv <file>', `write a file instead: its name says which, ${bookFileNames.join('.csv, ')}.csv`)
    .action(
      withBench(shell, async ({ deps }, options) => {
        if (typeof options['csv'] === 'string') return writeCsv(shell, options, deps, options['csv'])
        const year = typeof options['year'] === 'string' ? options['year'] : undefined
        const view = await booksOf(deps, year)
        if (view.kind === 'refused') return showProblems(shell.output, options.json, view.problems)
        return show(shell.output, options.json, view.value, () => booksLines(view.value, year))
      }),
    )
}

const writeCsv = async (shell: Shell, options: Options, deps: CommandDeps, path: string): Promise<number> => {
  const name = bookFileNames.find((one) => `${one}.csv` === basename(path))
  if (name === undefined) return showProblems(shell.output, options.json, [noSuchFile(path)])
  try {
    await writeFile(path, csvOf(deps, name))
  } catch (error) {
    const why = error instanceof Error ? error.message : 'for a reason not given'
    return showProblems(shell.output, options.json, [
      problem('not-written', path, `The file could not be written: ${why}`, 'Name a folder that can be written to'),
    ])
  }
  return show(shell.output, options.json, { written: path }, () => [`Written: ${path}`])
}

async function* csvOf(deps: CommandDeps, name: BookFileName): AsyncGenerator<string> {
  const { header, stretches } = await bookFile(deps, name)
  yield* csvText(header, stretches)
}

const noSuchFile = (path: string) =>
  problem(
    'no-such-file',
    '--csv',
    `“${basename(path)}” is not one of the files of the books`,
    `Name it ${bookFileNames.join('.csv, ')}.csv`,
  )

const addImport = (program: Command, shell: Shell): void => {
  program
    .command('import-books <file>')
    .description('take in a CSV file of past machines; nothing is written unless every row is right')
    .option('--leave-out-wrong', 'take in the rows that are right and leave the others out')
    .action(
      withBench(shell, async ({ deps }, options, [file = '']) => {
        const text = fileText(file)
        if (text.kind === 'refused') return showProblems(shell.output, options.json, text.problems)
        const leaveOut = options['leaveOutWrong'] !== undefined
        const outcome = await importBooks({ ...deps, hash }, text.value, leaveOut)
        if (outcome.kind !== 'imported') return showProblems(shell.output, options.json, outcome.problems)
        return show(shell.output, options.json, outcome, () => importLines(outcome))
      }),
    )
}

const hash = (text: string): string => createHash('sha256').update(text).digest('hex')

const fileText = (file: string): Result<string> => {
  try {
    return ok(readFileSync(file, 'utf8'))
  } catch {
    return refused(problem('cannot-read', file, 'The file cannot be read', 'Name a CSV file that is there'))
  }
}

const addSpent = (program: Command, shell: Shell): void => {
  program
    .command('spent')
    .description('money spent on no machine: tools, tape, a stall')
    .requiredOption('--for <words>', 'what it was for')
    .requiredOption('--cost <money>', 'what it cost')
    .option('--day <day>', 'the day, such as 2026-03-31; left out, today')
    .option('--minutes <time>', 'time it took')
    .option('--currency <code>', 'left out, that of the settings')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const content = await spentContent(deps, options)
        if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
        const outcome = await expenses.begin(deps, content.value)
        if (outcome.kind !== 'done') return showProblems(shell.output, options.json, outcome.problems)
        const { state } = outcome.document
        return show(shell.output, options.json, outcome.document, () => [`Noted: ${state.what}, ${state.day}`])
      }),
    )
}

const spentContent = async (deps: CommandDeps, options: Options) => {
  const cost = typeof options['cost'] === 'string' ? options['cost'] : ''
  const costMinor = moneyFromText(cost)
  if (costMinor === null) return refused(notMoney('--cost', cost))
  const time = typeof options['minutes'] === 'string' ? options['minutes'] : '0'
  const minutes = quantityFromText(time, 'durationMin', '--minutes')
  if (minutes.kind === 'refused') return minutes
  const { currency } = await currentSettings(deps.settings)
  const content = {
    kind: 'spent',
    what: options['for'],
    costMinor,
    currency: options['currency'] ?? currency,
    day: options['day'] ?? dayOf(deps.now()),
    minutes: minutes.value,
  }
  return parse(expenseContentSchema, content, 'spent', atOptions(spentOptions))
}

const spentOptions = { what: '--for', costMinor: '--cost', currency: '--currency', day: '--day', minutes: '--minutes' }

const addCameBack = (program: Command, shell: Shell): void => {
  program
    .command('came-back <machine>')
    .description('the buyer brought it back: it is in hand again')
    .requiredOption('--refund <money>', 'what was given back, 0 for nothing')
    .option('--why <words>', 'why it came back', '')
    .option('--minutes <time>', 'time it took')
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '']) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const refund = typeof options['refund'] === 'string' ? options['refund'] : ''
        const refundMinor = moneyFromText(refund)
        if (refundMinor === null) return showProblems(shell.output, options.json, [notMoney('--refund', refund)])
        const time = typeof options['minutes'] === 'string' ? options['minutes'] : '0'
        const minutes = quantityFromText(time, 'durationMin', '--minutes')
        if (minutes.kind === 'refused') return showProblems(shell.output, options.json, minutes.problems)
        const why = typeof options['why'] === 'string' ? options['why'] : ''
        const content = { kind: 'came-back', refundMinor, minutes: minutes.value, text: why } as const
        return answer(shell, options, deps, await writeNote(deps, document.value, content, atOptions(backOptions)))
      }),
    )
}

const backOptions = { refundMinor: '--refund', minutes: '--minutes', text: '--why' }

const notMoney = (where: string, text: string) =>
  problem('not-money', where, `“${text}” is not an amount of money`, 'Write such as 4.50')
