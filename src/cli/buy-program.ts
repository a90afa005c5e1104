import type { Command } from 'commander'
import { ok, refused, type Result } from '../base/result.ts'
import { costsOf } from '../bench/costs.ts'
import { makeReckoner } from '../bench/prices/reckoner.ts'
import { marketPriceOf } from '../bench/prices/what-to-ask.ts'
import { currentSettings } from '../bench/settings.ts'
import { unknownId } from '../bench/unknown.ts'
import { buyingView, checkAdvert, parseAdvert, quickEffort, type Advert } from '../machine/buying/index.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { atOptions } from './at-options.ts'
import { keepAdvert } from './advert-program.ts'
import { advertFromOptions } from './buy-options.ts'
import { buyLines } from './buy-text.ts'
import type { OpenBench } from './bench-commands.ts'
import { readJson } from './engine-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { withBench, type Options } from './with-bench.ts'

/** `thrum buy`: whether an advert is worth buying, and the most to pay. */
export const addBuyCommand = (program: Command, shell: Shell): void => {
  program
    .command('buy [file]')
    .description('worth buying? The most to pay for a machine in an advert, what to ask and what to check on the spot')
    .option('--blueprint <id>', 'what kind of machine it is')
    .option('--words <text>', 'the complaint as the seller words it')
    .option('--complaint <id...>', 'what is complained of; overrules what is read from the words')
    .option('--claim <id...>', 'what else is claimed; overrules what is read from the words')
    .option('--age <years>', 'how old it is')
    .option('--wear <wear>', 'light, usual or heavy')
    .option('--missing <part...>', 'parts that are not there')
    .option('--condition <condition>', 'good, fair or poor')
    .option('--asking <money>', 'what the seller asks')
    .option('--km <distance>', 'how far away, one way, in kilometres')
    .option('--currency <code>', 'of all amounts; left out, that of the settings')
    .option('--want <money>', 'what is to be earned above own time')
    .option('--want-an-hour <money>', 'what an hour of own time is to bring')
    .option('--answer <question=answer...>', 'what the seller answered, such as moment=suddenly')
    .option('--looked <check=result...>', 'what was found on the spot, such as pins-on=open')
    .option('--keep <name>', 'keep the advert under this name, with what was reckoned of it')
    .option('--quick', 'look ahead less: a first answer, never too high')
    .action(
      withBench(shell, async (bench, options, [file]) => {
        const settings = await currentSettings(bench.deps.settings)
        const asked = await askedOf(bench, options, file, settings.currency)
        if (asked.kind === 'refused') return showProblems(shell.output, options.json, asked.problems)
        const { advert, blueprint } = asked.value
        const kind = { blueprint, model: '', currency: advert.currency }
        const market = await marketPriceOf({ ...bench.deps, reckoner: makeReckoner() }, kind)
        const view = buyingView(advert, {
          blueprint,
          hourMinor: settings.hourMinor,
          costs: costsOf(settings, advert.currency),
          attitude: settings.attitude,
          market: market ?? undefined,
          effort: options['quick'] === undefined ? 1 : quickEffort,
        })
        const keep = options['keep']
        if (typeof keep !== 'string') return show(shell.output, options.json, view, () => buyLines(view, blueprint))
        const kept = await keepAdvert(bench.deps, keep, advert, view)
        if (kept.kind === 'refused') return showProblems(shell.output, options.json, kept.problems)
        const { id, name, version } = kept.value.state
        return show(shell.output, options.json, { ...view, kept: { id, name, version } }, () => [
          ...buyLines(view, blueprint),
          '',
          `Kept as ${id}`,
        ])
      }),
    )
}

/** The options that fields of an advert are typed in. */
const advertOptions = {
  words: '--words',
  complaints: '--complaint',
  claims: '--claim',
  ageYears: '--age',
  wear: '--wear',
  missing: '--missing',
  condition: '--condition',
  askingMinor: '--asking',
  distanceKm: '--km',
  currency: '--currency',
  'wanted.minor': '--want',
  answers: '--answer',
  looked: '--looked',
}

type Asked = { readonly advert: Advert; readonly blueprint: Blueprint }

/** The advert of a file or of the options, with its blueprint; refused with all that is wrong. */
const askedOf = async (
  { deps }: OpenBench,
  options: Options,
  file: string | undefined,
  currency: string,
): Promise<Result<Asked>> => {
  const id = file === undefined ? ok(options['blueprint']) : namedIn(readJson(file))
  if (id.kind === 'refused') return id
  const wanted = typeof id.value === 'string' ? id.value : ''
  const blueprint = await deps.blueprintById(wanted)
  if (blueprint === undefined) return refused(unknownId('blueprint', 'blueprint', wanted, await deps.blueprintIds()))
  const input = file === undefined ? advertFromOptions(options, blueprint, currency) : readJson(file)
  if (input.kind === 'refused') return input
  const advert = parseAdvert(input.value, file === undefined ? atOptions(advertOptions) : undefined)
  if (advert.kind === 'refused') return advert
  const checked = checkAdvert(advert.value, blueprint)
  return checked.kind === 'refused' ? checked : ok({ advert: checked.value, blueprint })
}

/** What a JSON advert calls its blueprint, whatever else is wrong with it. */
const namedIn = (read: Result<unknown>): Result<unknown> =>
  read.kind === 'ok' && typeof read.value === 'object' && read.value !== null && 'blueprint' in read.value
    ? ok(read.value.blueprint)
    : read.kind === 'ok'
      ? ok('')
      : read
