import type { Blueprint } from '../blueprint/schema.ts'

/** Which electrically active faults are showing: indices into the blueprint's faults, ascending. */
export type ElectricalState = readonly number[]

/** A suspect as the circuit sees it: states with the share of time in each. Faults that come and go make more than one. */
export type StateMix = readonly { readonly state: number; readonly share: number }[]

export type ElectricalStates = {
  readonly states: readonly ElectricalState[]
  /** For each suspect, its states. */
  readonly mixes: readonly StateMix[]
}

/**
 * The distinct electrical states of all suspects. Faults without an electrical effect share a state,
 * so that a circuit is worked out once however many suspects it serves.
 */
export const electricalStates = (blueprint: Blueprint, sets: readonly (readonly number[])[]): ElectricalStates => {
  const states: ElectricalState[] = []
  const byKey = new Map<string, number>()
  const indexOf = (state: ElectricalState): number => {
    const key = state.join(' ')
    const known = byKey.get(key)
    if (known !== undefined) return known
    byKey.set(key, states.push(state) - 1)
    return states.length - 1
  }
  indexOf([])
  const mixes = sets.map((set) => spreadOut(blueprint, set).map(({ state, share }) => ({ state: indexOf(state), share })))
  return { states, mixes }
}

const spreadOut = (blueprint: Blueprint, set: readonly number[]): readonly { state: ElectricalState; share: number }[] => {
  let mix: { state: number[]; share: number }[] = [{ state: [], share: 1 }]
  for (const index of set) {
    const fault = blueprint.faults[index]
    if (fault === undefined || fault.electrical.length === 0) continue
    const badShare = fault.comesAndGoes?.badShare ?? 1
    mix = mix.flatMap(({ state, share }) => [
      { state: [...state, index], share: share * badShare },
      ...(badShare < 1 ? [{ state, share: share * (1 - badShare) }] : []),
    ])
  }
  return mix
}
