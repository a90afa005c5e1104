import type { Command } from 'commander'
import { moneyFromText, moneyText } from '../base/money.ts'
import { parse } from '../base/parse.ts'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { advertHistory } from '../bench/adverts/advert-history.ts'
import { adverts } from '../bench/adverts/adverts.ts'
import type { AdvertState } from '../bench/adverts/advert-state.ts'
import { advertContentSchema, type AdvertContent } from '../bench/adverts/advert-note.ts'
import { buyAdvert, buyAdvertSchema } from '../bench/adverts/buy-advert.ts'
import { comparedAdverts } from '../bench/adverts/compared-adverts.ts'
import { guessOf } from '../bench/adverts/guess-of.ts'
import type { CommandDeps } from '../bench/commands.ts'
import { noSuchLog, type LogDocument, type LogOutcome } from '../bench/logs/log-commands.ts'
import { sourceIds } from '../facts/where-from.ts'
import type { Advert, BuyingView } from '../machine/buying/index.ts'
import { advertLine, calibrationLine, comparedLine } from './advert-text.ts'
import { atOptions } from './at-options.ts'
import type { OpenBench } from './bench-commands.ts'
import { entryText } from './entry-text.ts'
import { show, showProblems, type Shell } from './output.ts'
import { namesIn } from './who-wrote.ts'
import { withBench, type Options } from './with-bench.ts'

type AdvertDocument = LogDocument<AdvertContent, AdvertState>

/** Keeps an advert with what was reckoned of it. */
export const keepAdvert = async (
  deps: CommandDeps,
  name: string,
  advert: Advert,
  view: BuyingView,
): Promise<Result<AdvertDocument>> => {
  const content = parse(advertContentSchema, { kind: 'weighed', name, advert, guess: guessOf(view) }, 'advert')
  return content.kind === 'refused' ? content : settled(await adverts.begin(deps, content.value))
}

const settled = (outcome: LogOutcome<AdvertDocument>): Result<AdvertDocument> =>
  outcome.kind === 'done' ? ok(outcome.document) : refused(...outcome.problems)

/** Commands on kept adverts: the list, buying the machine of one, passing one by. */
export const addAdvertCommands = (program: Command, shell: Shell): void => {
  program
    .command('adverts [advert]')
    .description(
      'kept adverts, and how the guesses compared with what came of the machines; one of them with its history',
    )
    .option('--decided', 'those that were bought or passed by, in place of the open ones')
    .option('--strike <entry>', 'strike out an entry of its history, such as that it was passed by')
    .action(
      withBench(shell, async (bench, options, [wanted]) =>
        wanted === undefined ? listed(shell, bench.deps, options) : showOne(shell, bench, options, wanted),
      ),
    )
  program
    .command('bought <advert>')
    .description('the machine of a kept advert is bought: it comes on the bench with all that was said and seen')
    .requiredOption('--paid <money>', 'what was paid')
    .option('--name <words>', 'what to call the machine; left out, as the advert')
    .option('--model <words>', 'the model on the plate')
    .option('--source <id>', `where from: ${sourceIds.join(', ')}`)
    .option('--travel <money>', 'what fetching it cost; left out, by the distance')
    .action(withBench(shell, async ({ deps }, options, [wanted = '']) => boughtOne(shell, deps, options, wanted)))
  program
    .command('passed <advert>')
    .description('a kept advert is passed by')
    .option('--why <words>', 'the reason', '')
    .action(withBench(shell, async ({ deps }, options, [wanted = '']) => passedOne(shell, deps, options, wanted)))
}

const listed = async (shell: Shell, deps: CommandDeps, options: Options): Promise<number> => {
  const open = options['decided'] === undefined
  const page = await deps.books.logs(deps.bench, 'advert', { open, limit: 500 })
  const states = page.items as readonly AdvertState[]
  const compared = await comparedAdverts(deps)
  return show(shell.output, options.json, { adverts: states, total: page.total, compared }, () => [
    ...(states.length === 0 ? [open ? 'No open advert is kept.' : 'No advert is decided.'] : states.map(advertLine)),
    ...(compared.each.length === 0 ? [] : ['', 'How the guess compared', ...compared.each.map(comparedLine)]),
    ...compared.all.map(calibrationLine),
  ])
}

/** One advert with its history, after a slip in it was struck out where that is asked for. */
const showOne = async (shell: Shell, bench: OpenBench, options: Options, wanted: string): Promise<number> => {
  const { deps, people } = bench
  const found = await findAdvert(deps, wanted)
  const result = found.kind === 'refused' ? found : await struck(deps, found.value, options['strike'])
  if (result.kind === 'refused') return showProblems(shell.output, options.json, result.problems)
  const names = await namesIn(people)
  return show(shell.output, options.json, result.value, () => [
    advertLine(result.value.state),
    ...advertHistory(result.value).map((line) => entryText(line, names)),
  ])
}

const struck = async (
  deps: CommandDeps,
  advert: AdvertDocument,
  entry: Options[string],
): Promise<Result<AdvertDocument>> => {
  if (typeof entry !== 'string') return ok(advert)
  const { id, version } = advert.state
  return settled(await adverts.add(deps, id, version, { kind: 'struck', note: entry, reason: '' }))
}

const boughtOne = async (shell: Shell, deps: CommandDeps, options: Options, wanted: string): Promise<number> => {
  const refuse = (...problems: Parameters<typeof showProblems>[2]): number =>
    showProblems(shell.output, options.json, problems)
  const found = await findAdvert(deps, wanted)
  if (found.kind === 'refused') return refuse(...found.problems)
  const [paid, travel] = [moneyOf(options, 'paid'), moneyOf(options, 'travel')]
  if (paid.kind === 'refused') return refuse(...paid.problems)
  if (travel.kind === 'refused') return refuse(...travel.problems)
  const asked = parse(
    buyAdvertSchema,
    {
      version: found.value.state.version,
      paidMinor: paid.value,
      name: options['name'],
      model: options['model'],
      source: options['source'],
      travelMinor: travel.value,
    },
    'bought',
    atOptions({ paidMinor: '--paid', name: '--name', model: '--model', source: '--source', travelMinor: '--travel' }),
  )
  if (asked.kind === 'refused') return refuse(...asked.problems)
  const outcome = await buyAdvert(deps, found.value.state.id, asked.value)
  if (outcome.kind !== 'done') return refuse(...outcome.problems)
  const { machine, advert } = outcome
  return show(shell.output, options.json, { machine, advert }, () => [
    `${machine.state.name} is on the bench for ${moneyText(machine.state.paidMinor, machine.state.currency)}: ${machine.state.id}`,
    ...machine.lines.map(({ text }) => `  ${text}`),
  ])
}

const passedOne = async (shell: Shell, deps: CommandDeps, options: Options, wanted: string): Promise<number> => {
  const found = await findAdvert(deps, wanted)
  if (found.kind === 'refused') return showProblems(shell.output, options.json, found.problems)
  const { id, version } = found.value.state
  const passed = { kind: 'passed', reason: options['why'] }
  const content = parse(advertContentSchema, passed, 'passed', atOptions({ reason: '--why' }))
  if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
  const result = settled(await adverts.add(deps, id, version, content.value))
  if (result.kind === 'refused') return showProblems(shell.output, options.json, result.problems)
  return show(shell.output, options.json, result.value, () => [advertLine(result.value.state)])
}

const moneyOf = (options: Options, name: string): Result<number | undefined> => {
  const written = options[name]
  if (typeof written !== 'string') return ok(undefined)
  const minor = moneyFromText(written)
  if (minor !== null) return ok(minor)
  return refused(problem('not-money', `--${name}`, `“${written}” is not an amount of money`, 'Write such as 12.50'))
}

/** An advert by its id or the beginning of it, or by its exact name. */
const findAdvert = async (deps: CommandDeps, wanted: string): Promise<Result<AdvertDocument>> => {
  const exact = await adverts.document(deps, wanted)
  if (exact !== null) return ok(exact)
  const ids = (await deps.logs.list(deps.bench, 'advert')).flatMap(([first]) => {
    if (first === undefined) return []
    return first.log.startsWith(wanted) || first.content['name'] === wanted ? [first.log] : []
  })
  if (ids.length > 1) return refused(problem('several', wanted, `${ids.length} adverts begin like this`, 'Give more of the id')) // prettier-ignore
  const document = ids[0] === undefined ? null : await adverts.document(deps, ids[0])
  return document === null ? refused(noSuchLog('advert', wanted)) : ok(document)
}
