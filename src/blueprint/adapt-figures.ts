import { editsOf, type Edit, type EditOf } from './adapt-edits.ts'
import type { Blueprint } from './schema.ts'

/** Where a figure comes from that its owner put in. */
const ownFigure = { title: 'Own figure, put in for this variant', evidence: 'judgement' as const }

/** Names, words, notes and figures as the edits say; nothing that hangs together with anything else. */
export const withFigures = (blueprint: Blueprint, edits: readonly Edit[]): Blueprint => ({
  ...blueprint,
  plate: editsOf(edits, 'plate').reduce(withPlate, blueprint.plate),
  parts: renamed(blueprint.parts, 'part', edits).map((part) => {
    const note = editsOf(edits, 'part-note').findLast((edit) => edit.part === part.id)
    return note === undefined ? part : { ...part, note: note.text }
  }),
  controls: renamed(blueprint.controls, 'control', edits),
  points: renamed(blueprint.points, 'point', edits),
  covers: editsOf(edits, 'cover-fixings').reduce(withFixings, renamed(blueprint.covers, 'cover', edits)),
  checks: renamed(blueprint.checks, 'check', edits).map((check) => {
    const told = editsOf(edits, 'check-how').findLast((edit) => edit.check === check.id)
    return told === undefined ? check : { ...check, how: told.how }
  }),
  faults: editsOf(edits, 'fault-share').reduce(withShare, blueprint.faults),
  repairs: editsOf(edits, 'repair-cost').reduce(withCost, blueprint.repairs),
})

const renamed = <T extends { readonly id: string; readonly name: string }>(
  items: readonly T[],
  what: EditOf<'renamed'>['what'],
  edits: readonly Edit[],
): T[] =>
  items.map((item) => {
    const edit = editsOf(edits, 'renamed').findLast((one) => one.what === what && one.id === item.id)
    return edit === undefined ? item : { ...item, name: edit.name }
  })

const withPlate = (plate: Blueprint['plate'], { kind: _kind, ...change }: EditOf<'plate'>): Blueprint['plate'] => ({
  ...plate,
  ...said(change),
})

const withFixings = (
  covers: Blueprint['covers'],
  { kind: _kind, cover: id, ...change }: EditOf<'cover-fixings'>,
): Blueprint['covers'] => covers.map((cover) => (cover.id === id ? { ...cover, ...said(change) } : cover))

const withShare = (
  faults: Blueprint['faults'],
  { fault: id, perHundred, saleShareIfLeft }: EditOf<'fault-share'>,
): Blueprint['faults'] =>
  faults.map((fault) => {
    if (fault.id !== id) return fault
    // A figure of one's own stands alone: the share of the open data that belonged to the old one would pull it back.
    const rate = perHundred === undefined ? fault.rate : { perHundred, source: ownFigure }
    return { ...fault, rate, saleShareIfLeft: saleShareIfLeft ?? fault.saleShareIfLeft }
  })

const withCost = (
  repairs: Blueprint['repairs'],
  { repair: id, option: optionId, costMinor, minutes }: EditOf<'repair-cost'>,
): Blueprint['repairs'] =>
  repairs.map((repair) =>
    repair.id !== id
      ? repair
      : {
          ...repair,
          options: repair.options.map((option) =>
            option.id === optionId ? { ...option, ...said({ costMinor, minutes }) } : option,
          ),
        },
  )

/** The fields that are given. */
const said = <T extends object>(change: T): { [Key in keyof T]?: NonNullable<T[Key]> } =>
  Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined)) as never
