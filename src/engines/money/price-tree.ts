import { studentLogDensity } from './distributions.ts'
import { convolved, gridOver, gridPoint, normalised, normalKernel, onGrid, type Grid } from './grid.ts'

/** A value seen, with what it counts for: 1 is one whole observation. */
export type Observation = { readonly value: number; readonly weight: number }

/** Observations by kind and model. A model or kind may be empty. */
export type Tree = readonly (readonly (readonly Observation[])[])[]

/** One way the spreads may be: standard deviations between kinds and between models, scale of the noise, and how likely that is. */
export type Spread = {
  readonly kindSd: number
  readonly modelSd: number
  readonly noise: number
  readonly weight: number
}

export type TreeProblem = {
  /** What the middle of the class is before anything is seen: a normal distribution. */
  readonly centre: { readonly mean: number; readonly sd: number }
  readonly spreads: readonly Spread[]
  readonly degrees: number
  readonly tree: Tree
  /** Distance between the points of the grid. */
  readonly step: number
}

export type TreePosterior = {
  readonly grid: Grid
  /** Distribution of the middle of the class. */
  readonly centre: Float64Array
  /** Distribution of each model's middle, by kind and model. */
  readonly models: readonly (readonly Float64Array[])[]
  /** How far each observation was believed, 0..1, by kind, model and place: low for one that is far from its model. */
  readonly believed: readonly (readonly (readonly number[])[])[]
  /** Probability of each of the problem's spreads. */
  readonly spreadShares: readonly number[]
  /** Distribution of one further observation of a model. */
  readonly nextOf: (kind: number, model: number) => Float64Array
}

/**
 * Hierarchical model with Student-t noise, worked out without sampling: messages on a grid up and down the tree are exact for
 * given spreads (sum-product on a tree), and the spreads are averaged over by their evidence. An observation with weight w
 * enters as its likelihood to the power w.
 */
export const treePosterior = (problem: TreeProblem): TreePosterior => {
  const grid = gridOf(problem)
  const passes = problem.spreads.map((spread) => passOver(problem, grid, spread))
  const evidence = passes.map((pass, i) => pass.logEvidence + Math.log(problem.spreads[i].weight))
  const most = Math.max(...evidence)
  const spreadShares = [...normalised(Float64Array.from(evidence, (one) => Math.exp(one - most)))]
  const mixed = (pick: (pass: Pass, i: number) => Float64Array): Float64Array => mix(passes.map(pick), spreadShares)
  return {
    grid,
    centre: mixed((pass) => pass.centre),
    models: problem.tree.map((kind, k) => kind.map((_, m) => mixed((pass) => pass.models[k][m]))),
    believed: problem.tree.map((kind, k) =>
      kind.map((observations, m) =>
        observations.map(({ value }) =>
          passes.reduce((sum, pass, i) => sum + spreadShares[i] * belief(problem, grid, pass, i, k, m, value), 0),
        ),
      ),
    ),
    spreadShares,
    nextOf: (k, m) => mixed((pass, i) => nextObservation(grid, pass.models[k][m], problem, i)),
  }
}

type Pass = {
  readonly logEvidence: number
  readonly centre: Float64Array
  readonly models: readonly (readonly Float64Array[])[]
}

const reachSd = 5

/** Wide enough for what is believed beforehand and for everything seen. */
const gridOf = ({ centre, spreads, tree, step }: TreeProblem): Grid => {
  const sds = spreads.map(({ kindSd, modelSd, noise }) => Math.hypot(centre.sd, kindSd, modelSd, noise))
  const reach = reachSd * Math.max(...sds)
  const values = tree.flat(2).map(({ value }) => value)
  const margin = reachSd * Math.max(...spreads.map(({ noise }) => noise))
  const low = values.reduce((least, value) => Math.min(least, value - margin), centre.mean - reach)
  const high = values.reduce((most, value) => Math.max(most, value + margin), centre.mean + reach)
  return gridOver(low, high, centre.mean, step)
}

/** Both ways through the tree for one spread. Messages are logarithms; what nothing was seen of sends zeros. */
const passOver = ({ centre, degrees, tree }: TreeProblem, grid: Grid, spread: Spread): Pass => {
  const logNoise = studentLogDensity(degrees, spread.noise)
  const toModel = normalKernel(grid, spread.modelSd)
  const toKind = normalKernel(grid, spread.kindSd)
  const seen = tree.map((kind) => kind.map((observations) => logLikelihood(grid, observations, logNoise)))
  const ofModels = seen.map((kind) => kind.map((one) => passed(one, toModel)))
  const ofKinds = ofModels.map((models) => passed(added(grid, models), toKind))
  const prior = onGrid(grid, (x) => -0.5 * ((x - centre.mean) / centre.sd) ** 2)
  const above = added(grid, [prior, ...ofKinds])
  const models = seen.map((kind, k) => {
    const atKind = added(grid, [passed(less(above, ofKinds[k]), toKind), ...ofModels[k]])
    return kind.map((one, m) => shares(added(grid, [passed(less(atKind, ofModels[k][m]), toModel), one])))
  })
  return { logEvidence: logTotal(above), centre: shares(above), models }
}

const logLikelihood = (
  grid: Grid,
  observations: readonly Observation[],
  logNoise: (distance: number) => number,
): Float64Array | null => {
  if (observations.length === 0) return null
  return onGrid(grid, (x) => observations.reduce((sum, { value, weight }) => sum + weight * logNoise(value - x), 0))
}

type Message = Float64Array | null

const leastShare = 1e-290

/** A message passed on along a link with a normal spread. */
const passed = (message: Message, kernel: Float64Array): Message => {
  if (message === null) return null
  const most = highest(message)
  const spread = convolved(
    message.map((one) => Math.exp(one - most)),
    kernel,
  )
  return spread.map((one) => Math.log(Math.max(one, leastShare)) + most)
}

const highest = (values: Float64Array): number => values.reduce((most, one) => Math.max(most, one), -Infinity)

function added(grid: Grid, messages: readonly [Float64Array, ...Message[]]): Float64Array
function added(grid: Grid, messages: readonly Message[]): Message
function added(grid: Grid, messages: readonly Message[]): Message {
  const spoken = messages.filter((one) => one !== null)
  if (spoken.length === 0) return null
  const sum = new Float64Array(grid.size)
  for (const one of spoken) for (let i = 0; i < grid.size; i++) sum[i] += one[i]
  return sum
}

const less = (from: Message, message: Message): Message =>
  from === null || message === null ? from : from.map((one, i) => one - message[i])

const shares = (log: Message): Float64Array => {
  if (log === null) throw new Error('A model has the class above it, which always has a distribution')
  const most = highest(log)
  return normalised(log.map((one) => Math.exp(one - most)))
}

const logTotal = (log: Float64Array): number => {
  const most = highest(log)
  return most + Math.log(log.reduce((sum, one) => sum + Math.exp(one - most), 0))
}

const mix = (parts: readonly Float64Array[], weights: readonly number[]): Float64Array => {
  const sum = new Float64Array(parts[0].length)
  parts.forEach((part, p) => {
    for (let i = 0; i < sum.length; i++) sum[i] += weights[p] * part[i]
  })
  return sum
}

/** Share of its full weight that the t distribution leaves an observation: ν/(ν + z²), averaged over where its model may lie. */
const belief = (
  { degrees, spreads }: TreeProblem,
  grid: Grid,
  pass: Pass,
  spread: number,
  kind: number,
  model: number,
  value: number,
): number =>
  pass.models[kind][model].reduce((sum, share, i) => {
    const z = (value - gridPoint(grid, i)) / spreads[spread].noise
    return sum + (share * degrees) / (degrees + z * z)
  }, 0)

const nextObservation = (grid: Grid, model: Float64Array, problem: TreeProblem, spread: number): Float64Array => {
  const logNoise = studentLogDensity(problem.degrees, problem.spreads[spread].noise)
  const kernel = Float64Array.from({ length: grid.size }, (_, i) => Math.exp(logNoise(i * grid.step)))
  return normalised(convolved(model, kernel))
}
