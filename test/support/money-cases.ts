import { valueOf } from '../../src/base/result.ts'
import { runMoney, type MoneyAnswer, type MoneyRequest } from '../../src/engines/money/index.ts'

type Answer<K> = Extract<MoneyAnswer, { readonly kind: K }>['answer']

/** Asks the engine and expects an answer of that kind. */
export const askMoney = <K extends MoneyRequest['do']['kind']>(
  task: { readonly kind: K } & Readonly<Record<string, unknown>>,
): Answer<K> => {
  const answered = valueOf(runMoney({ format: 'thrum-money-1', do: task }))
  if (answered.kind !== task.kind) throw new Error(`${answered.kind} is no answer to ${task.kind}`)
  return answered.answer as Answer<K>
}

export const soldOn = '2026-05-01'

/** Own sales of one model at these prices. */
export const salesAt = (pricesMinor: readonly number[], about: Readonly<Record<string, unknown>> = {}) =>
  pricesMinor.map((priceMinor, i) => ({
    id: `sale ${i}`,
    priceMinor,
    soldOn,
    from: 'own',
    machineKind: 'swivel neck',
    model: 'invented 3',
    ...about,
  }))

/** What the model of {@link salesAt} would fetch. */
export const priceOf = (comparables: readonly object[], about: Readonly<Record<string, unknown>> = {}) =>
  askMoney({
    kind: 'price',
    currency: 'GBP',
    on: '2026-06-01',
    class: 'multi-cyclone-upright',
    machineKind: 'swivel neck',
    model: 'invented 3',
    comparables,
    ...about,
  })

/** Every number in an answer, with its path. */
export const numbersIn = (value: unknown, path = ''): readonly (readonly [string, number])[] => {
  if (typeof value === 'number') return [[path, value]]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, one]) => numbersIn(one, `${path}.${key}`))
}
