import { problem, type Problem } from '../../base/problem.ts'
import { compileAir, room } from './compile.ts'
import type { AirFit, AirReading, AirSetup } from './fit-schema.ts'
import { readingSigma } from './hypothesis-fit.ts'
import { airNetworkProblems, twice } from './network-problems.ts'
import { networkOfSetup } from './setups.ts'
import { usualParameters } from './usual.ts'

/** What the schema cannot say of a fit: names that point at nothing, instruments at their end, machines with loose ends. */
export const airFitProblems = (fit: AirFit): readonly Problem[] => {
  const own = [
    ...airNetworkProblems(fit.network),
    ...twice(
      [...fit.network.branches, ...fit.leaks, ...fit.bleeds].map(({ id }) => id),
      'branches, leaks and bleeds',
    ),
    ...twice(
      [...fit.readings, ...fit.candidates].map(({ id }) => id),
      'readings and candidates',
    ),
    ...twice(
      fit.plates.map(({ id }) => id),
      'plates',
    ),
    ...twice(
      fit.instruments.map(({ id }) => id),
      'instruments',
    ),
    ...twice(
      (fit.parameters ?? []).map(({ id }) => id),
      'parameters',
    ),
    ...twice(
      (fit.hypotheses ?? []).map(({ id }) => id),
      'hypotheses',
    ),
    ...placeProblems(fit),
    ...priorProblems(fit),
    ...fit.readings.flatMap((reading, i) => [
      ...setupProblems(fit, reading, `readings[${i}] (${reading.id})`),
      ...endProblems(fit, reading, `readings[${i}] (${reading.id})`),
      ...exactProblems(fit, reading, `readings[${i}] (${reading.id})`),
    ]),
    ...fit.candidates.flatMap((one, i) => setupProblems(fit, one, `candidates[${i}] (${one.id})`)),
  ]
  return own.length > 0 ? own : looseEnds(fit)
}

/** Nodes inside the machine. */
const nodesOf = ({ network }: AirFit): readonly string[] =>
  [...new Set(network.branches.flatMap(({ from, to }) => [from, to]))].filter((node) => node !== room)

const unknown = (where: string, kind: string, id: string, known: readonly string[]): Problem =>
  problem(
    `unknown-${kind}`,
    where,
    `There is no ${kind} called “${id}”`,
    known.length === 0 ? `List the ${kind} first` : `Use one of ${known.join(', ')}`,
  )

const missing = (where: string, kind: string, ids: readonly string[], known: readonly string[]): readonly Problem[] =>
  ids.filter((id) => !known.includes(id)).map((id) => unknown(where, kind, id, known))

const placeProblems = (fit: AirFit): readonly Problem[] =>
  (['leaks', 'bleeds'] as const).flatMap((list) =>
    fit[list].flatMap(({ id, node }, i) => missing(`${list}[${i}] (${id})`, 'node', [node], nodesOf(fit))),
  )

const priorProblems = (fit: AirFit): readonly Problem[] => {
  const { parameters, hypotheses, network, leaks, bleeds } = fit
  const branches = [...network.branches, ...leaks, ...bleeds].map(({ id }) => id)
  const ofParameters = (parameters ?? []).flatMap(({ id, target }, i) =>
    target.kind === 'mains' ? [] : missing(`parameters[${i}] (${id})`, 'branch', [target.branch], branches),
  )
  if (hypotheses === undefined) return ofParameters
  const known = (parameters ?? usualParameters(fit)).map(({ id }) => id)
  const weightless = hypotheses.every(({ weight }) => weight === 0)
  return [
    ...ofParameters,
    ...(weightless
      ? [problem('no-weight', 'hypotheses', 'Every explanation has weight 0', 'Give at least one a weight above 0')]
      : []),
    ...hypotheses.flatMap(({ id, priors }, i) =>
      missing(`hypotheses[${i}] (${id})`, 'parameter', Object.keys(priors), known),
    ),
  ]
}

const setupProblems = (fit: AirFit, setup: AirSetup, where: string): readonly Problem[] => {
  const nodes = nodesOf(fit)
  const measured =
    setup.measure === 'suction'
      ? [setup.node, setup.against].flatMap((node) => (node === null || node === room ? [] : [node]))
      : []
  const branches = [...fit.network.branches, ...fit.leaks, ...fit.bleeds].map(({ id }) => id)
  const fans = fit.network.branches.filter(({ kind }) => kind === 'fan').map(({ id }) => id)
  return [
    ...(setup.measure === 'airflow' && setup.openings.length === 0 ? [nothingOpen(where)] : []),
    ...missing(where, 'fan', setup.measure === 'speed' ? [setup.branch] : [], fans),
    ...missing(
      where,
      'instrument',
      [setup.instrument],
      fit.instruments.filter(({ measures }) => measures === setup.measure).map(({ id }) => id),
    ),
    ...missing(
      where,
      'plate',
      setup.openings.map(({ plate }) => plate),
      fit.plates.map(({ id }) => id),
    ),
    ...missing(where, 'node', [...setup.openings.map(({ node }) => node), ...measured], nodes),
    ...missing(where, 'branch', setup.removed, branches),
  ]
}

const nothingOpen = (where: string): Problem =>
  problem('nothing-open', where, 'An airflow is to be read where nothing is open', 'Name the opening it goes through')

/** A reading without any uncertainty of its own would outweigh everything. */
const exactProblems = (fit: AirFit, { instrument, value }: AirReading, where: string): readonly Problem[] => {
  const used = fit.instruments.find(({ id }) => id === instrument)
  if (used === undefined || readingSigma(used, value) > 0) return []
  const what = `With a step and a repeatability of 0 the reading would be exact`
  return [problem('no-uncertainty', where, what, `Give “${instrument}” a step above 0`)]
}

const endProblems = (fit: AirFit, { instrument, value, measure }: AirReading, where: string): readonly Problem[] => {
  const used = fit.instruments.find(({ id }) => id === instrument)
  const end = used?.fullScale ?? null
  if (end === null || value < end) return []
  const shown = measure === 'suction' ? `${(end / 1000).toFixed(1)} kPa` : String(end)
  const what = `The reading is at the end of the instrument’s scale (${shown}), so the true value may be any beyond it`
  return [problem('end-of-scale', where, what, 'Read it with an instrument that goes further, or leave it out')]
}

const looseEnds = (fit: AirFit): readonly Problem[] =>
  [...fit.readings, ...fit.candidates].flatMap((setup) => {
    const { floating, nodes } = compileAir(networkOfSetup(fit, setup))
    const gone =
      setup.measure === 'suction'
        ? [setup.node, setup.against].filter((node) => node !== null && node !== 'room' && !nodes.includes(node))
        : []
    const loose = [...floating, ...gone]
    if (loose.length === 0) return []
    const what = `With this taken off, nothing joins ${loose.join(' and ')} to the room or the machine`
    return [problem('loose-end', setup.id, what, 'Take off less, or measure at a place that is still there')]
  })
