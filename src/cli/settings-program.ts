import type { Command } from 'commander'
import { currencies, moneyFromText, moneyText } from '../base/money.ts'
import { parse } from '../base/parse.ts'
import { problem, type Problem } from '../base/problem.ts'
import { refused, type Result } from '../base/result.ts'
import { settingsChangeSchema, type SettingsChange } from '../bench/settings-change.ts'
import { changeSettings, currentSettings, type Settings } from '../bench/settings.ts'
import { unknownId } from '../bench/unknown.ts'
import { attitudeIds, attitudes } from '../facts/attitudes.ts'
import { regionNames, regions } from '../facts/regions.ts'
import { atOptions } from './at-options.ts'
import { costLines, costsFrom } from './cost-options.ts'
import { show, showProblems, type Shell } from './output.ts'
import { withBench, type Options } from './with-bench.ts'

/** `thrum settings`: shows what holds for the whole bench; with options, changes it first. */
export const addSettingsCommand = (program: Command, shell: Shell): void => {
  program
    .command('settings')
    .description(
      'what an hour of yours is worth, the currency, how risk is weighed, what things cost; with options, changes them',
    )
    .option('--hour <money>', 'what an hour of your own time is worth; new machines take it over')
    .option('--currency <code>', currencies.join(', '))
    .option('--region <region>', `whose rules machines are proved by: ${regions.join(', ')}`)
    .option('--name <name>', 'who makes the checks after repair, for the record')
    .option('--originals <yes|no>', 'keep files of photographs as they are sent too, with place and device in them')
    .option('--risk <attitude>', `${attitudeIds.join(' or ')}: see what each means in the answer`)
    .option('--cost <name=value...>', 'what something costs, such as postage=3.50, part-fee=12, or postage=default')
    .option('--per-mile <money>', 'what driving a mile costs')
    .action(
      withBench(shell, async ({ deps }, options) => {
        const change = changeFrom(options)
        if (change === null) return showSettings(shell, options, await currentSettings(deps.settings))
        if (change.kind === 'refused') return showProblems(shell.output, options.json, change.problems)
        const outcome = await changeSettings(deps, change.value)
        if (outcome.kind !== 'changed') return showProblems(shell.output, options.json, outcome.problems)
        return showSettings(shell, options, outcome.settings)
      }),
    )
}

/** What is asked to be changed, as far as it is of the form; null when nothing is. */
const changeFrom = (options: Options): Result<SettingsChange> | null => {
  const { hour, currency, risk, region, name, cost, perMile, originals } = options
  if ([hour, currency, risk, region, name, cost, perMile, originals].every((one) => one === undefined)) return null
  const costs = costsFrom(options)
  const hourMinor = typeof hour === 'string' ? moneyFromText(hour) : undefined
  const problems = [
    ...(hourMinor === null ? [notMoney(String(hour))] : []),
    ...notAmong('currency', '--currency', currency, currencies),
    ...notAmong('attitude', '--risk', risk, attitudeIds),
    ...notAmong('region', '--region', region, regions),
    ...notAmong('answer', '--originals', originals, ['yes', 'no']),
    ...(costs.kind === 'refused' ? costs.problems : []),
  ]
  if (problems.length > 0 || costs.kind === 'refused') return refused(...problems)
  const keepOriginals = originals === undefined ? undefined : originals === 'yes'
  const change = { hourMinor, currency, attitude: risk, region, checkedBy: name, keepOriginals, costs: costs.value }
  return parse(settingsChangeSchema, change, 'settings', atOptions(settingsOptions))
}

const settingsOptions = { hourMinor: '--hour', checkedBy: '--name', costs: '--cost' }

const notAmong = (what: string, where: string, given: Options[string], known: readonly string[]): readonly Problem[] =>
  typeof given !== 'string' || known.includes(given) ? [] : [unknownId(what, where, given, known)]

const notMoney = (text: string): Problem =>
  problem('not-money', '--hour', `“${text}” is not an amount of money`, 'Write such as 9.50')

const showSettings = (shell: Shell, options: Options, settings: Settings): number =>
  show(shell.output, options.json, { settings }, () => {
    const { hourMinor, currency, attitude, region, checkedBy, keepOriginals } = settings
    return [
      `An hour of yours: ${moneyText(hourMinor, currency)} (new machines take it over)`,
      `Currency of new machines: ${currency}`,
      `Risk: ${attitudes[attitude].name} (${attitude})`,
      `  ${attitudes[attitude].means}`,
      `Rules: those of ${regionNames[region]} (${region})`,
      `Checks after repair made by: ${checkedBy === '' ? 'not said' : checkedBy}`,
      `Files of photographs as they were sent: ${keepOriginals ? 'kept too, with place and device in them' : 'not kept'}`,
      ...costLines(settings),
    ]
  })
