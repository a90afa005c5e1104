import { moneyFromText } from '../base/money.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { costsOf } from '../bench/costs.ts'
import type { SettingsChange } from '../bench/settings-change.ts'
import type { Settings } from '../bench/settings.ts'
import { unknownId } from '../bench/unknown.ts'
import { sourceText } from '../base/source-text.ts'
import { costById, costFromText, costMend, costText, costWords } from '../facts/cost-words.ts'
import { costNames, kmPerMile } from '../facts/trade-costs.ts'
import type { Options } from './with-bench.ts'

type CostsChange = NonNullable<SettingsChange['costs']>

/** What costs are asked to be changed, from `--cost name=value` and `--per-mile`; undefined when none is. */
export const costsFrom = ({ cost, perMile }: Options): Result<CostsChange | undefined> => {
  const written = typeof cost === 'string' ? [cost] : (cost ?? [])
  if (written.length === 0 && perMile === undefined) return ok(undefined)
  const parts = [...written.map(oneCost), ...(typeof perMile === 'string' ? [milesCost(perMile)] : [])]
  const problems = parts.flatMap((part) => (part.kind === 'refused' ? part.problems : []))
  if (problems.length > 0) return refused(...problems)
  return ok(Object.assign({}, ...parts.map((part) => (part.kind === 'ok' ? part.value : {}))) as CostsChange)
}

const putBack = 'default'

const oneCost = (text: string): Result<CostsChange> => {
  const [id = '', value = ''] = text.split('=')
  const name = costById(id)
  if (name === undefined) {
    const known = costNames.map((one) => costWords[one].id)
    return refused(unknownId('cost', '--cost', id, known))
  }
  if (value === putBack) return ok({ [name]: null })
  const number = costFromText(name, value)
  if (number !== null) return ok({ [name]: number })
  const mend = `${costMend[costWords[name].unit]}, or ${putBack} to put it back`
  return refused(problem('not-a-cost', `--cost ${id}`, `“${value}” is not ${costKind[costWords[name].unit]}`, mend))
}

const costKind = { money: 'an amount of money', minutes: 'a number of minutes', percent: 'a percentage' } as const

const milesCost = (text: string): Result<CostsChange> => {
  if (text === putBack) return ok({ perKmMinor: null })
  const minor = moneyFromText(text)
  return minor === null ? refused(notMoney(text)) : ok({ perKmMinor: minor / kmPerMile })
}

const notMoney = (text: string): Problem =>
  problem('not-money', '--per-mile', `“${text}” is not an amount of money`, `Write such as 0.45, or ${putBack}`)

/** All costs as they hold now, each with where it comes from. */
export const costLines = (settings: Settings): readonly string[] => {
  const costs = costsOf(settings)
  return [
    'What things cost (change with --cost name=value, put back with name=default):',
    ...costNames.map((name) => {
      const from = costs.from[name]
      const { id, name: words } = costWords[name]
      return `  ${id.padEnd(17)} ${costText(name, costs[name], settings.currency)}  ${words}; ${from === 'set' ? 'set by you' : sourceText(from)}`
    }),
  ]
}
