import type { Command } from 'commander'
import { moneyFromText } from '../base/money.ts'
import { parse } from '../base/parse.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { CommandDeps } from '../bench/commands.ts'
import { heldAgainst, partsAtHand } from '../bench/shelf/at-hand.ts'
import { partConditions, partContentSchema, type PartContentInput } from '../bench/shelf/part-note.ts'
import type { PartState } from '../bench/shelf/part-state.ts'
import { noSuchPart, shelf, type PartDocument, type PartOutcome } from '../bench/shelf/shelf-commands.ts'
import { currentSettings } from '../bench/settings.ts'
import { partKindIds } from '../facts/part-kinds.ts'
import { afterOf } from './after-option.ts'
import { atOptions, typedNumber } from './at-options.ts'
import { findMachine } from './bench-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { fitsLines, partLines, shelfLines } from './shelf-text.ts'
import { specOf } from './spec-options.ts'
import { namesIn, type Names } from './who-wrote.ts'
import { answerWith, withBench, type Options } from './with-bench.ts'

/** `thrum shelf`: the parts on the shelf, and what is written about one of them. */
export const addShelfCommands = (program: Command, shell: Shell): void => {
  program
    .command('shelf [what] [names...]')
    .description(
      'the parts on the shelf; put, show ID, describe ID, sell ID, scrap ID, count ID, reserve ID MACHINE, release ID, strike ID ENTRY, fits MACHINE [PART]',
    )
    .option('--kind <kind>', `kind of part: ${partKindIds.join(', ')}`)
    .option('--text <words>', 'only those whose name holds these words')
    .option('--after <place>', 'further ones')
    .option('--gone', 'those that are no longer there')
    .option('--name <words>', 'what to call it')
    .option('--spec <measure=value...>', 'its measures, such as powerW=1200 or mount=round')
    .option('--condition <how>', partConditions.join(', '))
    .option('--place <words>', 'where it lies')
    .option('--bought <where>', 'where it was bought')
    .option('--cost <money>', 'what all of them cost')
    .option('--count <number>', 'how many')
    .option('--fetches <money>', 'what one would fetch')
    .option('--received <money>', 'what was paid for it')
    .option('--fee <money>', 'the fee of selling it')
    .option('--postage <money>', 'postage you paid')
    .option('--minutes <number>', 'your minutes')
    .option('--reason <words>', 'why')
    .action(
      withBench(shell, async ({ deps, people }, options, [what, ...which]) => {
        if (what === undefined) return listed(shell, options, deps)
        if (what === 'fits') return fitting(shell, options, deps, which)
        const names = await namesIn(people)
        if (what === 'show') return shown(shell, options, await found(deps, which[0] ?? ''), names)
        return shown(shell, options, await written(deps, options, what, which), names)
      }),
    )
}

const listed = async (shell: Shell, options: Options, { books, bench }: CommandDeps): Promise<number> => {
  const after = afterOf(options)
  if (after.kind === 'refused') return showProblems(shell.output, options.json, after.problems)
  const asked = {
    open: options['gone'] === undefined,
    limit: 50,
    after: after.value,
    group: word(options, 'kind'),
    text: word(options, 'text'),
  }
  const page = await books.logs(bench, 'part', asked)
  const groups = await books.groups(bench, 'part')
  const items = page.items as readonly PartState[]
  return show(shell.output, options.json, { ...page, groups }, () => shelfLines(items, groups, page))
}

const fitting = async (
  shell: Shell,
  options: Options,
  deps: CommandDeps,
  [machine = '', only]: readonly string[],
): Promise<number> => {
  const measured = specOf(options)
  if (measured.kind === 'refused') return showProblems(shell.output, options.json, measured.problems)
  const { region } = await currentSettings(deps.settings)
  const atHand = { parts: await partsAtHand(deps), region }
  return answerWith(shell, options, deps, await findMachine(deps, machine), (job, { state }) => {
    const parts = job.blueprint.parts.filter(({ id }) => only === undefined || id === only)
    const fits = parts
      .map(({ id, name }) => ({ part: id, name, held: heldAgainst(job, state, atHand, id, measured.value) }))
      .filter(({ held }) => held.length > 0)
    return show(shell.output, options.json, { fits }, () => fitsLines(fits))
  })
}

const shown = (shell: Shell, { json }: Options, result: Result<PartDocument>, names: Names): number =>
  result.kind === 'refused'
    ? showProblems(shell.output, json, result.problems)
    : show(shell.output, json, result.value, () => partLines(result.value, names))

/** A part by its id or the beginning of it. */
const found = async (deps: CommandDeps, wanted: string): Promise<Result<PartDocument>> => {
  const exact = await shelf.document(deps, wanted)
  if (exact !== null) return ok(exact)
  const logs = wanted === '' ? [] : await deps.logs.list(deps.bench, 'part')
  const ids = logs.flatMap(([first]) => (first?.log.startsWith(wanted) === true ? [first.log] : []))
  if (ids.length > 1)
    return refused(problem('several', wanted, `${ids.length} parts begin like this`, 'Give more of the id'))
  const document = ids[0] === undefined ? null : await shelf.document(deps, ids[0])
  return document === null ? refused(noSuchPart(wanted)) : ok(document)
}

const written = async (
  deps: CommandDeps,
  options: Options,
  what: string,
  [id = '', second]: readonly string[],
): Promise<Result<PartDocument>> => {
  const input = await contentOf(deps, options, what, second)
  if (input.kind === 'refused') return input
  const content = parse(partContentSchema, input.value, 'part', atOptions(partOptions))
  if (content.kind === 'refused') return content
  if (content.value.kind === 'put') return settled(await shelf.begin(deps, content.value))
  const document = await found(deps, id)
  if (document.kind === 'refused') return document
  const { state } = document.value
  return settled(await shelf.add(deps, state.id, state.version, content.value))
}

/** The options that fields of what is written about a part are typed in. */
const partOptions = {
  name: '--name',
  partKind: '--kind',
  condition: '--condition',
  place: '--place',
  spec: '--spec',
  origin: '--bought',
  count: '--count',
  costMinor: '--cost',
  fetchesMinor: '--fetches',
  receivedMinor: '--received',
  feeMinor: '--fee',
  postageMinor: '--postage',
  minutes: '--minutes',
  reason: '--reason',
}

const settled = (outcome: PartOutcome): Result<PartDocument> =>
  outcome.kind === 'done' ? ok(outcome.document) : refused(...(outcome.problems as readonly [Problem]))

/** What one of the words after `thrum shelf` writes; the form of it is looked at where it is parsed. */
const contentOf = async (
  deps: CommandDeps,
  options: Options,
  what: string,
  second: string | undefined,
): Promise<Result<PartContentInput>> => {
  const read = amountsOf(options)
  const spec = specOf(options)
  if (read.kind === 'refused') return read
  if (spec.kind === 'refused') return spec
  const { count, cost, fetches, received, fee, postage, minutes } = read.value
  const described = {
    name: word(options, 'name'),
    condition: word(options, 'condition'),
    place: word(options, 'place'),
  }
  const reason = word(options, 'reason')
  const made = (content: object): Result<PartContentInput> => ok(definite(content) as PartContentInput)
  switch (what) {
    case 'put': {
      const { currency } = await currentSettings(deps.settings)
      const bought = word(options, 'bought')
      const origin = bought === undefined ? undefined : { kind: 'bought', where: bought }
      const own = { partKind: word(options, 'kind') ?? 'other', spec: spec.value, origin, currency }
      return made({ kind: 'put', ...described, ...own, costMinor: cost, count, fetchesMinor: fetches })
    }
    case 'describe': {
      const isSaid = Object.keys(spec.value).length > 0
      return made({ kind: 'described', ...described, spec: isSaid ? spec.value : undefined, fetchesMinor: fetches })
    }
    case 'sell':
      return made({ kind: 'sold', count, receivedMinor: received, feeMinor: fee, postageMinor: postage, minutes })
    case 'scrap':
      return made({ kind: 'scrapped', count, reason })
    case 'count':
      return made({ kind: 'counted', count: count ?? (typedNumber(second) as number | undefined), reason })
    case 'reserve': {
      const machine = await findMachine(deps, second ?? '')
      return machine.kind === 'refused' ? machine : made({ kind: 'reserved', machine: machine.value.state.id })
    }
    case 'release':
      return made({ kind: 'released' })
    case 'strike':
      return made({ kind: 'struck', note: second ?? '', reason })
    default:
      return refused(
        problem('unknown-word', 'shelf', `“${what}” is nothing that is done with the shelf`, 'See thrum shelf --help'),
      )
  }
}

const word = (options: Options, name: string): string | undefined => {
  const value = options[name]
  return typeof value === 'string' ? value : undefined
}

const definite = (content: object): object =>
  Object.fromEntries(Object.entries(content).filter(([, value]) => value !== undefined))

type Amounts = Readonly<
  Record<'count' | 'cost' | 'fetches' | 'received' | 'fee' | 'postage' | 'minutes', number | undefined>
>

const amountsOf = (options: Options): Result<Amounts> => {
  const problems: Problem[] = []
  const read = (name: string, reader: (text: string) => number | null, mend: string): number | undefined => {
    const text = word(options, name)
    const value = text === undefined ? undefined : reader(text)
    if (value !== null) return value
    problems.push(problem('not-an-amount', `--${name}`, `“${text}” is not an amount`, mend))
    return undefined
  }
  const money = (name: string) => read(name, moneyFromText, 'Write such as 4.50')
  const number = (name: string) =>
    read(name, (text) => (/^\d+(\.\d+)?$/.test(text) ? Number(text) : null), 'Write such as 2')
  const amounts = {
    count: number('count'),
    cost: money('cost'),
    fetches: money('fetches'),
    received: money('received'),
    fee: money('fee'),
    postage: money('postage'),
    minutes: number('minutes'),
  }
  return problems.length === 0 ? ok(amounts) : refused(...(problems as [Problem]))
}
