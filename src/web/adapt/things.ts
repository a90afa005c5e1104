import type { Edit } from '../../blueprint/adapt-edits.ts'
import type { Blueprint } from '../../blueprint/schema.ts'

/** What of a blueprint can be said to be different. */
export type ThingKind = 'part' | 'cover' | 'control' | 'point' | 'check' | 'fault' | 'repair' | 'plate'
/** In which way. */
export type Way = Edit['kind']

type Named<Id extends string = string> = { readonly id: Id; readonly name: string }

export const thingKinds: readonly Named<ThingKind>[] = [
  { id: 'part', name: 'A part' },
  { id: 'cover', name: 'A cover' },
  { id: 'control', name: 'A switch or handle' },
  { id: 'point', name: 'A place for a probe' },
  { id: 'check', name: 'A check' },
  { id: 'fault', name: 'A fault' },
  { id: 'repair', name: 'A repair' },
  { id: 'plate', name: 'The rating plate' },
]

/** The ways in which each kind of thing can be different; the first is the one met most. */
export const waysOf: Readonly<Record<ThingKind, readonly Named<Way>[]>> = {
  part: [
    { id: 'part-absent', name: 'Not there' },
    { id: 'part-moved', name: 'Behind another cover' },
    { id: 'renamed', name: 'Other name' },
    { id: 'part-note', name: 'A note on it' },
  ],
  cover: [
    { id: 'cover-fixings', name: 'Other fixings' },
    { id: 'cover-absent', name: 'Not there' },
    { id: 'renamed', name: 'Other name' },
  ],
  control: [{ id: 'renamed', name: 'Other name' }],
  point: [{ id: 'renamed', name: 'Other name' }],
  check: [
    { id: 'check-how', name: 'Done in another way' },
    { id: 'renamed', name: 'Other name' },
  ],
  fault: [{ id: 'fault-share', name: 'How often, and what it leaves of the price' }],
  repair: [{ id: 'repair-cost', name: 'Cost and time' }],
  plate: [{ id: 'plate', name: 'What it says' }],
}

/** All things of a kind, by name. The plate is one thing. */
export const thingsOf = (blueprint: Blueprint, kind: ThingKind): readonly Named[] => {
  const lists: Readonly<Record<ThingKind, readonly Named[]>> = {
    part: blueprint.parts,
    cover: blueprint.covers,
    control: blueprint.controls,
    point: blueprint.points,
    check: blueprint.checks,
    fault: blueprint.faults,
    repair: blueprint.repairs,
    plate: [{ id: 'plate', name: 'Rating plate' }],
  }
  return lists[kind].toSorted((a, b) => a.name.localeCompare(b.name))
}
