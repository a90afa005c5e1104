import { moneyFromText } from '../base/money.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { unknownId } from '../bench/unknown.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { resultFromText } from '../machine/index.ts'
import type { Options } from './with-bench.ts'

/** The advert that the options of `thrum buy` describe, as a JSON advert would say it. Refused where a figure is none. */
export const advertFromOptions = (
  options: Options,
  blueprint: Blueprint,
  currency: string,
): Result<Readonly<Record<string, unknown>>> => {
  const problems: Problem[] = []
  const take = <T>(read: Result<T>): T | undefined => {
    if (read.kind === 'ok') return read.value
    problems.push(...read.problems)
    return undefined
  }
  const text = (name: string): string | undefined => {
    const given = options[name]
    return typeof given === 'string' ? given : undefined
  }
  const list = (name: string): readonly string[] | undefined => {
    const given = options[name]
    return typeof given === 'string' ? [given] : given
  }
  const advert = {
    blueprint: blueprint.id,
    complaints: list('complaint'),
    claims: list('claim'),
    words: text('words'),
    ageYears: take(figure(text('age'), '--age', 'years')),
    wear: text('wear'),
    missing: list('missing'),
    condition: text('condition'),
    askingMinor: take(money(text('asking') ?? '0', '--asking')),
    distanceKm: take(figure(text('km'), '--km', 'kilometres')) ?? 0,
    currency: text('currency') ?? currency,
    wanted: take(wantedOf(text('want'), text('wantAnHour'))),
    answers: (list('answer') ?? []).flatMap((one) => take(pairOf(one, '--answer')) ?? []).map(([question, answer]) => ({ question, answer })), // prettier-ignore
    looked: (list('looked') ?? []).flatMap((one) => take(lookedOf(one, blueprint)) ?? []),
  }
  if (problems.length > 0) return refused(...problems)
  return ok(Object.fromEntries(Object.entries(advert).filter(([, value]) => value !== undefined)))
}

const money = (written: string, where: string): Result<number> => {
  const isNegative = /^\s*[-−]/.test(written)
  const minor = moneyFromText(written)
  if (minor !== null) return ok(minor)
  const what = isNegative ? `“${written}” is below nothing` : `“${written}” is not an amount of money`
  return refused(problem('not-money', where, what, 'Write such as 9.50'))
}

const figure = (written: string | undefined, where: string, unit: string): Result<number | undefined> => {
  if (written === undefined) return ok(undefined)
  const value = written.trim() === '' ? NaN : Number(written)
  if (Number.isFinite(value)) return ok(value)
  return refused(problem('not-a-number', where, `“${written}” is not a number of ${unit}`, 'Write such as 8'))
}

const wantedOf = (profit: string | undefined, anHour: string | undefined): Result<unknown> => {
  if (profit !== undefined && anHour !== undefined) return refused(bothWanted)
  if (profit === undefined && anHour === undefined) return ok(undefined)
  const read = money(profit ?? anHour ?? '', profit === undefined ? '--want-an-hour' : '--want')
  if (read.kind === 'refused') return read
  return ok({ kind: profit === undefined ? 'an-hour' : 'profit', minor: read.value })
}

const bothWanted = problem(
  'two-wishes',
  '--want',
  'Both a profit and a rate for the hour are wanted',
  'Give --want or --want-an-hour, not both',
)

const pairOf = (written: string, where: string): Result<readonly (readonly [string, string])[]> => {
  const at = written.indexOf('=')
  if (at > 0 && at < written.length - 1) return ok([[written.slice(0, at), written.slice(at + 1)]])
  return refused(problem('not-a-pair', where, `“${written}” does not name what was asked and what came of it`, 'Write such as moment=suddenly or pins-on=open')) // prettier-ignore
}

const lookedOf = (written: string, { checks }: Blueprint): Result<readonly unknown[]> => {
  const pair = pairOf(written, '--looked')
  if (pair.kind === 'refused') return pair
  const [[id, text]] = pair.value
  const check = checks.find((one) => one.id === id)
  if (check === undefined) return refused(unknownId('check', '--looked', id, checks.map((one) => one.id))) // prettier-ignore
  const result = resultFromText(check, text)
  return result.kind === 'refused' ? result : ok([{ check: id, result: result.value }])
}
