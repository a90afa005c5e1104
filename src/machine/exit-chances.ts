import type { Blueprint } from '../blueprint/schema.ts'

/** What the worth of an exit depends on: how likely a machine sold working comes back, and each part is sound. 0 to 1. */
export type ExitChances = { readonly comesBack: number; readonly sound: (part: string) => number }

/**
 * The chances when just these faults are there.
 * @param comebackShare how many sound machines sold working come back, 0 to 1
 */
export const chancesOfSet = (blueprint: Blueprint, comebackShare: number, set: readonly number[]): ExitChances => {
  const unsound = unsoundParts(blueprint, set)
  return { comesBack: comesBackWith(blueprint, comebackShare, set), sound: (part) => (unsound.has(part) ? 0 : 1) }
}

/** The chances over all suspects, each by its probability. */
export const chancesOfBelief = (
  blueprint: Blueprint,
  comebackShare: number,
  suspects: readonly { readonly set: readonly number[]; readonly probability: number }[],
): ExitChances => {
  const unsound = new Map<string | undefined, number>()
  let comesBack = 0
  let total = 0
  for (const { set, probability } of suspects) {
    total += probability
    comesBack += probability * comesBackWith(blueprint, comebackShare, set)
    for (const part of unsoundParts(blueprint, set)) unsound.set(part, (unsound.get(part) ?? 0) + probability)
  }
  return { comesBack: comesBack / total, sound: (part) => 1 - (unsound.get(part) ?? 0) / total }
}

const comesBackWith = (blueprint: Blueprint, comebackShare: number, set: readonly number[]): number => {
  const share = set.reduce((product, index) => product * (blueprint.faults[index]?.saleShareIfLeft ?? 0), 1)
  return comebackShare + (1 - comebackShare) * (1 - share)
}

/** Parts with a fault, and the spares they are sold with. */
const unsoundParts = (blueprint: Blueprint, set: readonly number[]): ReadonlySet<string | undefined> => {
  const faulty = set.map((index) => blueprint.faults[index]?.part)
  return new Set([...faulty, ...blueprint.parts.filter(({ id }) => faulty.includes(id)).map(({ within }) => within)])
}
