import type { Blueprint } from '../blueprint/schema.ts'
import type { MachineState } from './contract.ts'

/**
 * The state as far as a blueprint knows the machine: a cover noted as off under another blueprint, or a part noted as
 * missing or priced, is dropped when this one has no such cover or part. The notes themselves stay.
 */
export const fittedTo = (state: MachineState, blueprint: Blueprint): MachineState => ({
  ...state,
  off: state.off.filter((id) => blueprint.covers.some((cover) => cover.id === id)),
  missing: state.missing.filter((id) => blueprint.parts.some((part) => part.id === id)),
  prices: {
    ...state.prices,
    parts: Object.fromEntries(
      Object.entries(state.prices.parts).filter(([id]) => blueprint.parts.some((part) => part.id === id)),
    ),
  },
})
