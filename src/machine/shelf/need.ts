import type { Blueprint } from '../../blueprint/schema.ts'
import { plateProblems, plugFuseA, ratedOf } from '../../engines/limits/index.ts'
import { partKinds, type SpecField } from '../../facts/part-kinds.ts'
import { plugs } from '../../facts/plugs.ts'
import { plugFuseStandard } from '../../facts/spares.ts'
import { partKindOf } from '../../blueprint/part-kind-of.ts'
import type { Spec, SpareWanted } from './spare.ts'

/** One field of a kind of part and what the machine asks of it; `value` null where nobody knows. */
export type Needed = {
  readonly field: SpecField
  readonly value: number | string | null
  /** More of it does no harm, less does: the current of a switch. */
  readonly isLeast: boolean
}

/** Fields of which a spare may have more than is asked. */
const least: Readonly<Record<string, readonly string[]>> = { switch: ['currentA', 'poles'] }

/**
 * What a machine's part asks of a spare, field by field of its kind: from what was measured on the old one, else from the
 * plate, the circuit and the air path of the blueprint.
 */
export const partNeed = (wanted: SpareWanted, part: string): readonly Needed[] => {
  const kind = partKindOf(part)
  const known: Spec = { ...blueprintNeed(wanted, part), ...wanted.measured }
  const fields: readonly SpecField[] = partKinds[kind].fields
  return fields.map((field) => ({
    field,
    value: known[field.id] ?? null,
    isLeast: least[kind]?.includes(field.id) ?? false,
  }))
}

const blueprintNeed = (wanted: SpareWanted, part: string): Spec => {
  const { blueprint, plate, region, model } = wanted
  switch (partKindOf(part)) {
    case 'motor':
      return { voltageV: plate.voltageV, ...given('powerW', motorPowerW(blueprint, plate.powerW, part)) }
    case 'flex':
      return given('lengthM', wanted.lead?.lengthM ?? flexLengthM(blueprint, part))
    case 'reel':
      return given('lengthM', flexLengthM(blueprint, 'flex'))
    case 'fuse':
      return fuseNeed(wanted, part)
    case 'plug':
      return {
        type: plugs[region][plate.protectionClass].name,
        ...(region === 'UK' ? { fuseA: plugFuseA(plate.powerW) } : {}),
      }
    case 'switch':
      return { currentA: ratedCurrentA(wanted), ...given('poles', polesOf(blueprint, part)) }
    case 'board':
      return { voltageV: plate.voltageV }
    case 'hose':
      return hoseNeed(blueprint, part)
    case 'casing':
      return model === undefined || model === '' ? {} : { model }
    default:
      return {}
  }
}

const given = (id: string, value: number | null): Spec => (value === null ? {} : { [id]: value })

const motorPowerW = ({ circuit }: Blueprint, plateW: number, part: string): number | null => {
  const motor = circuit.find((element) => element.kind === 'motor' && element.part === part)
  if (motor?.kind !== 'motor') return null
  return 'powerW' in motor.power ? motor.power.powerW : Math.round(motor.power.shareOfPlate * plateW)
}

/** The longest conductor of a part, in metres; null where the circuit has none of it. */
export const flexLengthM = ({ circuit }: Blueprint, part: string): number | null => {
  const lengths = circuit.flatMap((one) => (one.kind === 'wire' && one.part === part ? [one.lengthM] : []))
  return lengths.length === 0 ? null : Math.max(...lengths)
}

/** The fuse of a plug by the power of the machine, not by the one that happens to be in it; another fuse by its own rating. */
const fuseNeed = (wanted: SpareWanted, part: string): Spec => {
  const { blueprint, plate, region } = wanted
  const element = blueprint.circuit.find((one) => one.kind === 'fuse' && one.part === part)
  if (element?.kind !== 'fuse') return {}
  const isOfPlug = blueprint.supply.line === element.from || blueprint.supply.line === element.to
  if (!isOfPlug) return { ratingA: element.ratingA }
  const isOfRegion = plateProblems(ratedPlate(wanted), region, 'plate').length === 0
  return region === 'UK' && isOfRegion ? { ratingA: plugFuseA(plate.powerW), type: plugFuseStandard } : {}
}

/** What the machine draws by its plate, in ampere. */
const ratedCurrentA = (wanted: SpareWanted): number => ratedOf(ratedPlate(wanted)).currentA

const ratedPlate = ({ plate: { voltageV, powerW, protectionClass, massKg } }: SpareWanted) => ({
  voltageV,
  powerW,
  currentA: null,
  class: protectionClass,
  massKg: massKg ?? null,
})

/** How many contacts of a switch close together. */
const polesOf = ({ circuit }: Blueprint, part: string): number | null => {
  const positions = circuit.flatMap((one) =>
    one.kind === 'contact' && one.part === part ? one.closedWhen.positions : [],
  )
  const counts = positions.map((position) => positions.filter((other) => other === position).length)
  return counts.length === 0 ? null : Math.max(...counts)
}

const hoseNeed = ({ parts }: Blueprint, id: string): Spec => {
  const air = parts.find((part) => part.id === id)?.air
  if (air?.kind !== 'hose') return {}
  return { boreMm: Math.round(air.diameterM * 1000 * 10) / 10, lengthM: air.lengthM }
}
