import type { Command } from 'commander'
import { moneyFromText } from '../base/money.ts'
import { parse } from '../base/parse.ts'
import { problem, type Problem } from '../base/problem.ts'
import { refused, type Result } from '../base/result.ts'
import type { CommandDeps } from '../bench/commands.ts'
import { dayOf } from '../bench/logs/calendar-day.ts'
import type { KeptPrice } from '../bench/prices/comparables.ts'
import { priceContentSchema } from '../bench/prices/price-note.ts'
import { makeReckoner } from '../bench/prices/reckoner.ts'
import { seenPrices } from '../bench/prices/seen-prices.ts'
import { whatToAsk, type ChoicesGiven } from '../bench/prices/what-to-ask.ts'
import { currentSettings } from '../bench/settings.ts'
import { unknownId } from '../bench/unknown.ts'
import { improvementIds } from '../facts/asking.ts'
import { askingChoicesSchema, usuallyDone } from '../machine/asking-choices.ts'
import { askingLines, keptPriceLines } from './asking-text.ts'
import { atOptions, typedNumber } from './at-options.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { shareFromPercent } from './percent-option.ts'
import { answer, answerWith, withBench, type Options } from './with-bench.ts'

/** `thrum asking`, `listed`, `price-seen` and `prices`: what to ask for a machine, and the prices it rests on. */
export const addAskingCommands = (program: Command, shell: Shell): void => {
  addAsking(program, shell)
  addListed(program, shell)
  addPriceSeen(program, shell)
  addPrices(program, shell)
}

const addAsking = (program: Command, shell: Shell): void => {
  program
    .command('asking <machine>')
    .description(
      'what to ask for a machine: the price that brings most, its band, days to sell, what each improvement adds',
    )
    .option('--grade <grade>', 'its looks: A, B, C or D')
    .option('--with <improvement...>', `what is done to it besides what is usual: ${improvementIds.join(', ')}`)
    .option('--without <improvement...>', 'what is not done')
    .option('--found <part...>', 'parts that are missing now and will be there')
    .option('--a-day <money>', 'what a day of standing costs')
    .option('--days <number>', 'after how many days it is given up on')
    .action(
      withBench(shell, async ({ deps }, options, [machine = '']) => {
        const document = await findMachine(deps, machine)
        return answerWith(shell, options, deps, document, async (job, { state }) => {
          const given = choicesOf(options)
          if (given.kind === 'refused') return showProblems(shell.output, options.json, given.problems)
          const asked = await whatToAsk({ ...deps, reckoner: makeReckoner() }, job, state, given.value)
          if (asked.kind === 'refused') return showProblems(shell.output, options.json, asked.problems)
          return show(shell.output, options.json, asked.value, () => askingLines(asked.value))
        })
      }),
    )
}

const listOf = (options: Options, name: string): readonly string[] => {
  const value = options[name]
  return Array.isArray(value) ? value : []
}

/** What is said of the machine; improvements are those that are usual, with and without those named. */
const choicesOf = (options: Options): Result<ChoicesGiven> => {
  const [having, without] = [listOf(options, 'with'), listOf(options, 'without')]
  const unknown = [...having, ...without].filter((id) => !(improvementIds as readonly string[]).includes(id))
  if (unknown[0] !== undefined) return refused(unknownId('improvement', '--with', unknown[0], improvementIds))
  const { grade, aDay, days, found } = options
  const dayMinor = typeof aDay === 'string' ? moneyFromText(aDay) : undefined
  if (dayMinor === null) return refused(notMoney('--a-day', aDay))
  const isNamed = having.length + without.length > 0
  return parse(
    askingChoicesSchema.partial(),
    {
      ...(grade === undefined ? {} : { grade }),
      ...(isNamed ? { done: doneOf(having, without) } : {}),
      ...(Array.isArray(found) ? { found } : {}),
      ...(dayMinor === undefined ? {} : { dayMinor }),
      ...(days === undefined ? {} : { horizonDays: typedNumber(days) }),
    },
    'choice',
    atOptions({ grade: '--grade', done: '--with', found: '--found', dayMinor: '--a-day', horizonDays: '--days' }),
  )
}

const doneOf = (having: readonly string[], without: readonly string[]): readonly string[] =>
  improvementIds.filter(
    (id) => !without.includes(id) && (having.includes(id) || (usuallyDone as readonly string[]).includes(id)),
  )

const notMoney = (where: string, written: unknown): Problem =>
  problem('not-money', where, `“${String(written)}” is not an amount of money`, 'Write such as 45.00')

const addListed = (program: Command, shell: Shell): void => {
  program
    .command('listed <machine>')
    .description('it is offered at this price from now on; how long it stands tells what to ask for others')
    .requiredOption('--price <money>', 'the price it is offered at')
    .option('--where <words>', 'where it is offered', '')
    .option('--grade <grade>', 'its looks: A, B, C or D', 'B')
    .action(
      withBench(shell, async ({ deps }, options, [machine = '']) => {
        const document = await findMachine(deps, machine)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const priceMinor = moneyFromText(String(options['price']))
        if (priceMinor === null)
          return showProblems(shell.output, options.json, [notMoney('--price', options['price'])])
        const content = {
          kind: 'listed' as const,
          priceMinor,
          where: String(options['where']),
          grade: options['grade'] as 'B',
        }
        return answer(shell, options, deps, await writeNote(deps, document.value, content, atOptions(listedOptions)))
      }),
    )
}

const listedOptions = { priceMinor: '--price', where: '--where', grade: '--grade' }

const addPriceSeen = (program: Command, shell: Shell): void => {
  program
    .command('price-seen')
    .description('a price of a machine like yours that you saw, sold or not')
    .requiredOption('--blueprint <id>', 'what kind of machine it was')
    .requiredOption('--price <money>', 'what it sold for, or stood at')
    .option('--day <day>', 'the day it sold or was last seen, such as 2026-03-31; left out, today')
    .option('--unsold', 'it stood at this price and did not sell')
    .option('--days <number>', 'how long it stood, where you know')
    .option('--grade <grade>', 'its looks: A, B, C or D', 'B')
    .option('--complete <per cent>', 'how much of its tools and parts was there', '100')
    .option('--model <words>', 'its model', '')
    .option('--place <words>', 'where you saw it', '')
    .option('--note <words>', 'a remark', '')
    .option('--currency <code>', 'left out, that of the settings')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const id = String(options['blueprint'])
        if ((await deps.blueprintById(id)) === undefined) {
          const known = await deps.blueprintIds()
          return showProblems(shell.output, options.json, [unknownId('blueprint', '--blueprint', id, known)])
        }
        const priceMinor = moneyFromText(String(options['price']))
        if (priceMinor === null)
          return showProblems(shell.output, options.json, [notMoney('--price', options['price'])])
        const complete = shareFromPercent(String(options['complete']), '--complete')
        if (complete.kind === 'refused') return showProblems(shell.output, options.json, complete.problems)
        const content = parse(
          priceContentSchema,
          {
            kind: 'seen',
            blueprint: id,
            model: options['model'],
            priceMinor,
            currency: options['currency'] ?? (await currentSettings(deps.settings)).currency,
            day: options['day'] ?? dayOf(deps.now()),
            sold: options['unsold'] === undefined,
            ...(options['days'] === undefined ? {} : { days: typedNumber(options['days']) }),
            grade: options['grade'],
            completenessShare: complete.value,
            place: options['place'],
            text: options['note'],
          },
          'price',
          atOptions(seenOptions),
        )
        if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
        const outcome = await seenPrices.begin(deps, content.value)
        if (outcome.kind !== 'done') return showProblems(shell.output, options.json, outcome.problems)
        return show(shell.output, options.json, outcome.document, () => keptPriceLines([outcome.document.state]))
      }),
    )
}

/** The options that fields of a price seen are typed in. */
const seenOptions = {
  model: '--model',
  priceMinor: '--price',
  currency: '--currency',
  day: '--day',
  days: '--days',
  grade: '--grade',
  completenessShare: '--complete',
  place: '--place',
  text: '--note',
}

/** So many prices are listed at once. */
const listedAtOnce = 500

const addPrices = (program: Command, shell: Shell): void => {
  program
    .command('prices')
    .description('prices seen and entered; --strike takes one out')
    .option('--blueprint <id>', 'only of this blueprint')
    .option('--strike <price>', 'the id of a price that was a slip')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const { strike, blueprint } = options
        if (typeof strike === 'string') {
          const problems = await strikePrice(deps, strike)
          if (problems.length > 0) return showProblems(shell.output, options.json, problems)
        }
        const group = typeof blueprint === 'string' ? blueprint : undefined
        const page = await deps.books.logs(deps.bench, 'price', { open: true, limit: listedAtOnce, group })
        return show(shell.output, options.json, page, () => keptPriceLines(page.items as readonly KeptPrice[]))
      }),
    )
}

const strikePrice = async (deps: CommandDeps, id: string): Promise<readonly Problem[]> => {
  const entries = await seenPrices.entries(deps, id)
  const first = entries.find(({ content }) => content.kind === 'seen')
  const content = { kind: 'struck' as const, note: first?.id ?? '', reason: '' }
  const outcome = await seenPrices.add(deps, id, entries.length, content)
  return outcome.kind === 'done' ? [] : outcome.problems
}
