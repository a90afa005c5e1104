import type { Blueprint } from '../blueprint/schema.ts'

/** Which electrically active faults are showing: indices into the blueprint's faults, ascending. */
export type ElectricalState = readonly number[]

/** How a suspect looks to the circuit: its electrical faults, and the states they make with the share of time in each. */
export type Mix = {
  readonly faults: readonly number[]
  readonly states: readonly { readonly state: number; readonly share: number }[]
}

export type ElectricalStates = {
  readonly states: readonly ElectricalState[]
  readonly mixes: readonly Mix[]
  /** For each suspect, its mix. */
  readonly mixOf: Int32Array
}

/**
 * The distinct electrical states of all suspects. Suspects that differ only in faults without an electrical effect share a mix,
 * so that a circuit is worked out once however many suspects it serves. Faults that come and go make a mix of several states.
 */
export const electricalStates = (blueprint: Blueprint, sets: readonly (readonly number[])[]): ElectricalStates => {
  const states = new Numbered<ElectricalState>()
  const mixes = new Numbered<Mix>()
  states.numberOf('', () => [])
  const isElectrical = blueprint.faults.map((fault) => fault.electrical.length > 0)
  const mixOf = Int32Array.from(sets, (set) => {
    const faults = set.filter((index) => isElectrical[index])
    return mixes.numberOf(faults.join(' '), () => ({
      faults,
      states: spreadOut(blueprint, faults).map(({ state, share }) => ({
        state: states.numberOf(state.join(' '), () => state),
        share,
      })),
    }))
  })
  return { states: states.list, mixes: mixes.list, mixOf }
}

/** Things numbered in the order they are first met, by a key. */
class Numbered<T> {
  readonly list: T[] = []
  readonly #numbers = new Map<string, number>()

  numberOf(key: string, make: () => T): number {
    const known = this.#numbers.get(key)
    if (known !== undefined) return known
    const number = this.list.push(make()) - 1
    this.#numbers.set(key, number)
    return number
  }
}

const spreadOut = (
  blueprint: Blueprint,
  faults: readonly number[],
): readonly { state: ElectricalState; share: number }[] => {
  let mix: { state: number[]; share: number }[] = [{ state: [], share: 1 }]
  for (const index of faults) {
    const badShare = blueprint.faults[index].comesAndGoes?.badShare ?? 1
    mix = mix.flatMap(({ state, share }) => [
      { state: [...state, index], share: share * badShare },
      ...(badShare < 1 ? [{ state, share: share * (1 - badShare) }] : []),
    ])
  }
  return mix
}
