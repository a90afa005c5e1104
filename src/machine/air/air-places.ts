import { inSentence } from '../../base/in-sentence.ts'
import type { AirEffect } from '../../blueprint/air-schema.ts'
import type { Blueprint, Fault } from '../../blueprint/schema.ts'
import type { AirPaths } from './air-paths.ts'

type Opening = Extract<AirEffect, { side: unknown }>

/** A place where air may come in, with the faults that would let it in there. */
export type LeakPlace = {
  readonly id: string
  readonly does: Opening['does']
  readonly name: string
  readonly node: string
  /** Between which parts the air comes in, in words. */
  readonly between: string
  readonly faults: readonly Fault[]
  /** Branches that belong to it: with this part off, it is gone too. */
  readonly part: string
}

/** The places where faults of a blueprint let air in: faults at one part of the path, on one side of it, share one. */
export const leakPlacesOf = (blueprint: Blueprint, paths: AirPaths): readonly LeakPlace[] => {
  const places = new Map<string, LeakPlace>()
  for (const fault of blueprint.faults) {
    const { air } = fault
    if (air === undefined || !('side' in air)) continue
    const node = paths.placeOf(air)
    if (node === null) continue
    const id = `${air.does === 'leaks' ? 'leak' : 'open'} ${air.side} ${air.part}`
    const faults = [...(places.get(id)?.faults ?? []), fault]
    places.set(id, {
      id,
      does: air.does,
      node,
      part: air.part,
      faults,
      name: placeName(blueprint, air.does, faults),
      between: betweenText(paths, blueprint, node),
    })
  }
  return [...places.values()]
}

/** The parts whose faults it is, as `bag door seal or latch`. */
const placeName = ({ parts }: Blueprint, does: Opening['does'], faults: readonly Fault[]): string => {
  if (does === 'stands-open' && faults.length === 1) return inSentence(faults[0].name)
  const names = [...new Set(faults.map(({ part }) => inSentence(parts.find(({ id }) => id === part)?.name ?? part)))]
  return names.length > 2 ? `${names.slice(0, -1).join(', ')} or ${names.at(-1)}` : names.join(' or ')
}

const betweenText = (paths: AirPaths, { parts }: Blueprint, node: string): string => {
  const nameOf = (id: string | undefined): string => inSentence(parts.find((part) => part.id === id)?.name ?? 'machine')
  const before = paths.sections.filter(({ to }) => to === node).map(({ part }) => nameOf(part))
  const after = paths.sections.find(({ from }) => from === node)
  const next = nameOf(after?.part)
  return before.length === 0 ? `before the ${next}` : `between the ${before.join(' or ')} and the ${next}`
}
