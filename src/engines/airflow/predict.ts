import type { AirFit, AirParameter, AirSetup } from './fit-schema.ts'
import { solveTransposedLu } from './lu.ts'
import { settle, type Settled } from './newton.ts'
import { compileSetup, setupKey, type CompiledSetup } from './setups.ts'

/** A reading as the model gives it, and its derivatives by the logarithm of every coordinate. */
export type Prediction = { readonly value: number; readonly gradient: Float64Array }

/** Predicts readings of one machine. Coordinates are parameters, then plates, then instruments; all as natural logarithms. */
export type Predictor = {
  readonly coordinates: number
  /** Predictions for the setups in the order given, at these logarithms; null where the network does not settle. */
  readonly predict: (logs: ArrayLike<number>) => readonly (Prediction | null)[]
}

type Group = {
  readonly setup: CompiledSetup
  readonly members: readonly number[]
  readonly scale: Float64Array
  readonly speed: Float64Array
  /** Pressures of the last solution: where the next one begins. */
  start: Float64Array | undefined
}

export const makePredictor = (
  fit: AirFit,
  parameters: readonly AirParameter[],
  setups: readonly AirSetup[],
): Predictor => {
  const instruments = fit.instruments.map(({ id }) => id)
  const flowing = parameters.length + fit.plates.length
  const coordinates = flowing + instruments.length
  const groups = groupsOf(fit, parameters, setups)
  const predict = (logs: ArrayLike<number>) => {
    const found: (Prediction | null)[] = setups.map(() => null)
    for (const group of groups) {
      const state = settleGroup(group, logs)
      if (!state.settled) continue
      for (const member of group.members) {
        const instrument = flowing + instruments.indexOf(setups[member].instrument)
        found[member] = measured(group, state, setups[member], coordinates, instrument, logs[instrument])
      }
    }
    return found
  }
  return { coordinates, predict }
}

const groupsOf = (fit: AirFit, parameters: readonly AirParameter[], setups: readonly AirSetup[]): readonly Group[] => {
  const keys = setups.map(setupKey)
  return [...new Set(keys)].map((key): Group => {
    const members = keys.flatMap((one, i) => (one === key ? [i] : []))
    const setup = compileSetup(fit, parameters, setups[members[0]])
    const { length } = setup.scale
    return { setup, members, scale: new Float64Array(length), speed: new Float64Array(length), start: undefined }
  })
}

const settleGroup = (group: Group, logs: ArrayLike<number>): Settled => {
  const { setup, scale, speed } = group
  scale.set(setup.scale)
  speed.set(setup.speed)
  setup.effects.forEach((effects, i) => {
    for (const { branch, on, power } of effects) {
      const factor = Math.exp(power * logs[i])
      if (on === 'scale') scale[branch] *= factor
      else speed[branch] *= factor
    }
  })
  const warm = settle(setup.compiled, scale, speed, group.start)
  const state = warm.settled || group.start === undefined ? warm : settle(setup.compiled, scale, speed)
  group.start = state.settled ? state.pressurePa : undefined
  return state
}

/** What is measured: its value, and its derivatives by the pressures of the nodes and by the branches' own scale and speed. */
type Raw = { value: number; byNode: Float64Array; byScale: Float64Array; bySpeed: Float64Array }

const rawMeasure = ({ setup, speed }: Group, { pressurePa, flows }: Settled, wanted: AirSetup): Raw => {
  const { compiled, openings } = setup
  const raw: Raw = {
    value: 0,
    byNode: new Float64Array(compiled.nodes.length),
    byScale: new Float64Array(flows.length),
    bySpeed: new Float64Array(flows.length),
  }
  const addSuction = (name: string, sign: number): void => {
    const node = compiled.nodes.indexOf(name)
    if (node < 0) return
    raw.value += sign * (compiled.air.pressurePa - pressurePa[node])
    raw.byNode[node] -= sign
  }
  switch (wanted.measure) {
    case 'suction':
      addSuction(wanted.node, 1)
      if (wanted.against !== null) addSuction(wanted.against, -1)
      return raw
    case 'airflow':
      for (const k of openings) {
        raw.value += flows[k].q
        if (compiled.to[k] >= 0) raw.byNode[compiled.to[k]] += flows[k].byTo
        raw.byScale[k] += flows[k].byScale
      }
      return raw
    case 'speed': {
      const k = compiled.ids.indexOf(wanted.branch)
      raw.value = speed[k]
      raw.bySpeed[k] = speed[k]
      return raw
    }
  }
}

/**
 * Derivatives by the adjoint: with Jᵀλ = ∂m/∂p, a change of a branch's flow by dq changes the measure by −(λ_from − λ_to) dq.
 * An instrument's gain multiplies everything.
 */
const measured = (
  group: Group,
  state: Settled,
  setup: AirSetup,
  coordinates: number,
  instrument: number,
  logGain: number,
): Prediction => {
  const { compiled, effects } = group.setup
  const raw = rawMeasure(group, state, setup)
  const adjoint = new Float64Array(compiled.nodes.length)
  solveTransposedLu(state.lu, raw.byNode, adjoint)
  const gain = Math.exp(logGain)
  const value = gain * raw.value
  const gradient = new Float64Array(coordinates)
  effects.forEach((list, i) => {
    for (const { branch, on, power } of list) {
      const flow = state.flows[branch]
      const at = (node: number): number => (node < 0 ? 0 : adjoint[node])
      const through = at(compiled.from[branch]) - at(compiled.to[branch])
      const direct = on === 'scale' ? raw.byScale[branch] : raw.bySpeed[branch]
      const moved = on === 'scale' ? flow.byScale : flow.bySpeed
      gradient[i] += power * gain * (direct - through * moved)
    }
  })
  gradient[instrument] = value
  return { value, gradient }
}
