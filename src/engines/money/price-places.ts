import { enteredWeight, priceHalfLife } from '../../facts/sale-prices.ts'
import { daysBetween } from './day.ts'
import type { Observation, Tree } from './price-tree.ts'
import type { Comparable, PriceTask } from './request-schema.ts'

/** What a comparable speaks for: the model itself, another model of its kind, or only the class. */
export type Level = 'model' | 'kind' | 'class'

export type Place = { readonly kind: number; readonly model: number; readonly index: number }

export type PlacedComparable = {
  readonly comparable: Comparable
  readonly level: Level
  /** Logarithm of the price of such a machine in usual condition and complete. */
  readonly logValue: number
  readonly ageDays: number
  readonly timeShare: number
  readonly place: Place
}

export type Places = {
  readonly tree: Tree
  readonly target: { readonly kind: number; readonly model: number }
  readonly placed: readonly PlacedComparable[]
}

type Named = { readonly machineKind: string | null; readonly model: string | null }

/** Puts the comparables in their places in the tree. One of an unknown kind or model stands for a kind or model of its own. */
export const placeComparables = (task: PriceTask): Places => {
  const kinds = new Map<string, Map<string, Observation[]>>()
  const slotOf = (named: Named, unknown: string): Omit<Place, 'index'> & { readonly list: Observation[] } => {
    const models = entry(kinds, keyOf(named.machineKind, unknown), () => new Map<string, Observation[]>())
    const list = entry(models, keyOf(named.model, unknown), () => [])
    return {
      kind: indexOf(kinds, keyOf(named.machineKind, unknown)),
      model: indexOf(models, keyOf(named.model, unknown)),
      list,
    }
  }
  const { kind, model } = slotOf(task, 'asked about')
  const placed = task.comparables.map((comparable, i): PlacedComparable => {
    const { list, ...slot } = slotOf(comparable, `comparable ${i}`)
    const ageDays = daysBetween(comparable.soldOn, task.on)
    const timeShare = 0.5 ** (ageDays / priceHalfLife.days) * (comparable.from === 'own' ? 1 : enteredWeight.value)
    const logValue = Math.log(comparable.priceMinor / (comparable.conditionShare * comparable.completenessShare))
    list.push({ value: logValue, weight: timeShare })
    const level = slot.kind !== kind ? 'class' : slot.model !== model ? 'kind' : 'model'
    return { comparable, level, logValue, ageDays, timeShare, place: { ...slot, index: list.length - 1 } }
  })
  return { tree: [...kinds.values()].map((models) => [...models.values()]), target: { kind, model }, placed }
}

/** Names that differ only in capitals and spaces are one. A name given and one made up can never be equal. */
const keyOf = (given: string | null, unknown: string): string =>
  given === null ? `? ${unknown}` : `= ${given.trim().toLowerCase().replace(/\s+/g, ' ')}`

const indexOf = (map: ReadonlyMap<string, unknown>, key: string): number => [...map.keys()].indexOf(key)

const entry = <T>(map: Map<string, T>, key: string, fresh: () => T): T => {
  const found = map.get(key) ?? fresh()
  map.set(key, found)
  return found
}
