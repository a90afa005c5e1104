import { parse } from '../../base/parse.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { books, type BooksAnswer } from './books/request.ts'
import { daysToSell, type DaysToSell } from './days-to-sell.ts'
import { marginScheme, type MarginAnswer } from './margin-request.ts'
import type { PriceEstimate } from './price-answer.ts'
import { estimatePrice } from './price.ts'
import { requestProblems } from './request-problems.ts'
import { moneyRequestSchema, type MoneyRequest } from './request-schema.ts'
import { sumOfParts, type MoneyDistribution } from './sum.ts'

export type MoneyAnswer =
  | { readonly kind: 'price'; readonly answer: PriceEstimate }
  | { readonly kind: 'days-to-sell'; readonly answer: DaysToSell }
  | { readonly kind: 'sum'; readonly answer: MoneyDistribution }
  | { readonly kind: 'books'; readonly answer: BooksAnswer }
  | { readonly kind: 'margin-scheme'; readonly answer: MarginAnswer }

/** Answers a request from outside. The answer is plain JSON; what is not of the form, or does not go together, is refused with its problems. */
export const runMoney = (input: unknown): Result<MoneyAnswer> => {
  const request = parse(moneyRequestSchema, input, 'money request')
  if (request.kind === 'refused') return request
  const task = request.value.do
  const problems = requestProblems(task)
  return problems.length > 0 ? refused(...problems) : answerTo(task)
}

const answerTo = (task: MoneyRequest['do']): Result<MoneyAnswer> => {
  switch (task.kind) {
    case 'price':
      return ok({ kind: task.kind, answer: estimatePrice(task) })
    case 'days-to-sell':
      return ok({ kind: task.kind, answer: daysToSell(task) })
    case 'sum':
      return ok({ kind: task.kind, answer: sumOfParts(task) })
    case 'books': {
      const answer = books(task)
      return answer.kind === 'refused' ? answer : ok({ kind: task.kind, answer: answer.value })
    }
    case 'margin-scheme': {
      const answer = marginScheme(task)
      return answer.kind === 'refused' ? answer : ok({ kind: task.kind, answer: answer.value })
    }
  }
}
