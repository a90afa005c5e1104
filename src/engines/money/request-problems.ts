import { moneyText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { daysBetween } from './day.ts'
import type { MoneyRequest, PriceTask } from './request-schema.ts'

type Task = MoneyRequest['do']

/** Problems that only show once the parts of a request are seen together. */
export const requestProblems = (task: Task): readonly Problem[] => {
  switch (task.kind) {
    case 'price':
      return [
        ...priorProblems(task),
        ...sameIds(task.comparables, 'do.comparables'),
        ...task.comparables.flatMap((_, i) => comparableProblems(task, i)),
      ]
    case 'days-to-sell':
      return sameIds(task.listings, 'do.listings')
    case 'sum':
      return sameIds(task.parts, 'do.parts')
    case 'margin-scheme':
      return [...sameIds(task.items, 'do.items'), ...sameIds(task.periods, 'do.periods')]
    case 'books':
      return []
  }
}

const priorProblems = ({ prior, class: id, currency }: PriceTask): readonly Problem[] => {
  if (prior !== null) return []
  const mend = 'Give in prior what nine such machines in ten fetch'
  if (id === null) return [problem('no-prior', 'do.class', 'There is neither a class nor a prior', mend)]
  if (currency === 'GBP') return []
  const what = `The table of prices by class is in pounds, and this is in ${currency}`
  return [problem('prior-of-another-currency', 'do.prior', what, mend)]
}

const comparableProblems = ({ comparables, on, currency }: PriceTask, i: number): readonly Problem[] => {
  const one = comparables[i]
  const where = `do.comparables[${i}]`
  const problems: Problem[] = []
  if (daysBetween(one.soldOn, on) < 0) {
    const what = `“${one.id}” was sold on ${one.soldOn}, after ${on}`
    problems.push(problem('sold-in-the-future', `${where}.soldOn`, what, `Write the day of the sale, ${on} or before`))
  }
  if (one.currency !== null && one.currency !== currency) {
    const what = `“${one.id}” was sold for ${moneyText(one.priceMinor, one.currency)}, and the rest is in ${currency}`
    problems.push(problem('mixed-currency', `${where}.currency`, what, `Write what that was in ${currency}`))
  }
  return problems
}

const sameIds = (list: readonly { readonly id: string }[], where: string): readonly Problem[] =>
  list.flatMap(({ id }, i) => {
    const first = list.findIndex((one) => one.id === id)
    if (first === i) return []
    const what = `“${id}” is there twice, at ${first} and at ${i}`
    return [problem('same-id', `${where}[${i}].id`, what, 'Leave one out, or give it another id')]
  })
