import { airFaultWeights } from '../../facts/air-faults.ts'
import { explainAir, type AirExplanation } from '../../engines/airflow/index.ts'
import type { MachineModel } from '../model.ts'
import { airExplanations, lowMainsId, severalId, soundId } from './air-explanations.ts'
import { airFitOf, type AirWeights, type NotedReading } from './air-fit.ts'
import { airMachineOf, type AirMachine } from './air-machine.ts'

/**
 * What each suspect does to the air: the explanations it may look like in gauge readings, with the chance of each; the rest is the
 * chance that it cannot run at all.
 */
export type SuspectsInAir = readonly (readonly { readonly explanation: string; readonly chance: number }[])[]

/** How often a sound machine runs on low mains where nobody measured the voltage. */
const lowMainsShare = airFaultWeights['low-mains'] / (airFaultWeights['low-mains'] + airFaultWeights.sound)

const keptRoles = new WeakMap<MachineModel, SuspectsInAir>()

/** The air machine of a model; null where its blueprint says nothing of its air. */
export const airMachineOfModel = ({ blueprint, plate }: MachineModel): AirMachine | null => {
  const machine = airMachineOf(blueprint, plate)
  return machine.kind === 'ok' ? machine.value : null
}

/** What the suspects of a model do to the air. Two faults at different places are “more than one thing wrong”. */
export const suspectsInAir = (model: MachineModel, machine: AirMachine): SuspectsInAir => {
  const known = keptRoles.get(model)
  if (known !== undefined) return known
  const { faults } = model.blueprint
  const explanations = airExplanations(machine, true)
  const runs = chanceToRun(model)
  const shows = faults.map(({ id, air }) => {
    const explanation = explanations.find((one) => one.faults.includes(id))?.id
    return explanation === undefined || air === undefined ? null : { explanation, share: air.share }
  })
  const made = model.sets.map((set, s) => {
    const shown = set.flatMap((f) => shows[f] ?? [])
    return merged(shown).map(({ explanation, chance }) => ({ explanation, chance: chance * runs(s) }))
  })
  keptRoles.set(model, made)
  return made
}

type Shown = { readonly explanation: string; readonly share: number }

/** Which explanation the faults together look like, each of them showing or not by its share. */
const merged = (shown: readonly Shown[]) => {
  let looks = new Map([[soundId, 1]])
  for (const { explanation, share } of shown) {
    const next = new Map<string, number>()
    const add = (id: string, chance: number): void => {
      if (chance > 0) next.set(id, (next.get(id) ?? 0) + chance)
    }
    for (const [id, chance] of looks) {
      add(id, chance * (1 - share))
      add(id === soundId || id === explanation ? explanation : severalId, chance * share)
    }
    looks = next
  }
  return [...looks].map(([explanation, chance]) => ({ explanation, chance }))
}

/** How likely each suspect's motor turns when switched on, as the air checks of the blueprint have it. */
const chanceToRun = (model: MachineModel): ((suspect: number) => number) => {
  for (const check of model.blueprint.checks) {
    if (check.kind !== 'air' || check.driven === undefined) continue
    const { otherwise } = check.driven
    const column = check.outcomes.findIndex(({ id }) => id === otherwise)
    if (column >= 0) return (suspect) => 1 - model.graded(check, suspect)[column]
  }
  return () => 1
}

/** How likely each explanation is under these probabilities of the suspects, by id. */
export const weightsOf = (roles: SuspectsInAir, probability: ArrayLike<number>): AirWeights => {
  const weights: Record<string, number> = {}
  roles.forEach((looks, s) => {
    for (const { explanation, chance } of looks)
      weights[explanation] = (weights[explanation] ?? 0) + chance * probability[s]
  })
  return weights
}

const keptEvidence = new WeakMap<AirMachine['blueprint'], Map<string, ReadonlyMap<string, number>>>()

/**
 * Natural logarithm of how probable these readings are under each explanation, by id. It does not depend on how likely the
 * explanations are. Kept for the blueprint, as the belief asks for it again at every step.
 */
export const airEvidence = (
  machine: AirMachine,
  mainsV: number,
  readings: readonly NotedReading[],
): ReadonlyMap<string, number> => {
  const kept = keptEvidence.get(machine.blueprint) ?? new Map<string, ReadonlyMap<string, number>>()
  keptEvidence.set(machine.blueprint, kept)
  const key = JSON.stringify([mainsV, machine.fan.curve, readings])
  const known = kept.get(key)
  if (known !== undefined) return known
  const { explanations } = explainAir(airFitOf(machine, mainsV, readings, evenWeights(machine)))
  const evidence = byId(explanations)
  kept.set(key, evidence)
  return evidence
}

const byId = (explanations: AirExplanation['explanations']): ReadonlyMap<string, number> =>
  new Map(explanations.map(({ id, logEvidence }) => [id, logEvidence]))

const evenWeights = (machine: AirMachine): AirWeights =>
  Object.fromEntries(airExplanations(machine, false).map(({ id }) => [id, 1]))

/** Probability of the readings under each suspect, over that under the best explanation; all up to one factor. */
export const suspectLikelihood = (roles: SuspectsInAir, evidence: ReadonlyMap<string, number>): number[] => {
  const most = Math.max(...evidence.values())
  const plain = (id: string): number => Math.exp((evidence.get(id) ?? -Infinity) - most)
  // A machine with nothing wrong may still run on low mains.
  const ofSound = (1 - lowMainsShare) * plain(soundId) + lowMainsShare * plain(lowMainsId)
  const of = (id: string): number => (id === soundId && evidence.has(lowMainsId) ? ofSound : plain(id))
  return roles.map((looks) => looks.reduce((sum, { explanation, chance }) => sum + chance * of(explanation), 0))
}
