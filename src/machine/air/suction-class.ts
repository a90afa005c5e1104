import { bestAirEfficiency } from '../../facts/air-rig.ts'
import { suctionClasses, type SuctionClass } from '../../facts/suction-classes.ts'
import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { signQuestions } from '../../blueprint/signs.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { typicalFan, type FanCurve, type TypicalFan } from '../../engines/airflow/index.ts'

/** The kind of fan a machine has, and by what that was decided, as sentences. */
export type ClassOfMachine = { readonly class: SuctionClass; readonly decided: readonly string[] }

/** Names of the kinds, as they are typed. */
export const suctionClassIds: readonly string[] = suctionClasses.map(({ id }) => id)

/** The kind with this id; undefined when there is none. */
export const suctionClassById = (id: string): SuctionClass | undefined => suctionClasses.find((one) => one.id === id)

const byStand: Readonly<Record<string, string>> = { cylinder: 'cylinder', drum: 'tub', stick: 'stick' }

/**
 * The kind of fan of a blueprint, from how the machine stands and, of an upright, from whether the fan comes before the dust in the
 * air path. Refused where the blueprint does not say how it stands, or says two ways that are different kinds.
 */
export const suctionClassOf = (blueprint: Blueprint): Result<ClassOfMachine> => {
  const stands = blueprint.signs.stands ?? []
  const ids = new Set(stands.map((stand) => byStand[stand] ?? uprightClass(blueprint)))
  const [id] = ids
  const found = ids.size === 1 ? suctionClassById(id) : undefined
  if (found === undefined) return refused(cannotDecide(blueprint, stands.length > 0))
  const said = [`It stands like this: ${standText(stands[0])}. So it is of the kind “${found.name}”.`]
  if (byStand[stands[0]] !== undefined) return ok({ class: found, decided: said })
  const why = dirtyAir(blueprint)
    ? 'In its air path the fan comes before the bag: dirty air goes through the fan.'
    : 'In its air path the bag or bin comes before the fan: clean air goes through the fan.'
  return ok({ class: found, decided: [said[0], why] })
}

const uprightClass = (blueprint: Blueprint): string => (dirtyAir(blueprint) ? 'direct-air-upright' : 'by-pass-upright')

/** Whether the fan is met before the bag or bin; where the path does not hold both, whether the bag hangs outside. */
const dirtyAir = ({ airPath, signs }: Blueprint): boolean => {
  const fan = airPath.findIndex((id) => /(^|-)fan$/.test(id))
  const dust = airPath.findIndex((id) => /(^|-)(bag|bin)$/.test(id))
  if (fan >= 0 && dust >= 0) return fan < dust
  return signs.dust?.includes('cloth-bag') ?? false
}

const standText = (stand: string): string => {
  const answers = signQuestions.find(({ id }) => id === 'stands')?.answers ?? []
  const name = answers.find(({ id }) => id === stand)?.name ?? stand
  return name.charAt(0).toLowerCase() + name.slice(1)
}

const cannotDecide = ({ id }: Blueprint, several: boolean) =>
  problem(
    'suction-class-unknown',
    id,
    several ? 'This blueprint stands in ways that are different kinds' : 'This blueprint does not say how it stands',
    `Name the kind instead of the blueprint: ${suctionClassIds.join(', ')}`,
  )

/** The typical fan of a kind that is known. */
export const typicalFanOf = ({ id }: SuctionClass): TypicalFan => {
  const fan = typicalFan(id)
  if (fan === null) throw new Error(`${id} has no typical fan`)
  return fan
}

/**
 * The typical fan of a kind, brought down by the fan laws (airflow as speed, suction as its square) where its peak would be more than
 * the rating plate can give. `remark` says what the plate had to say.
 */
export const fanForPlate = (
  kind: SuctionClass,
  powerW: number | null,
): { readonly sealedPa: number; readonly openM3PerS: number; readonly curve: FanCurve; readonly remark: string } => {
  const { curve } = typicalFanOf(kind)
  if (curve.kind !== 'power') throw new Error(`${kind.id} has no typical fan`)
  const peakW = (curve.sealedPa * curve.openM3PerS) / 4
  const limitW = powerW === null ? Infinity : powerW * bestAirEfficiency.share
  const speed = Math.min(1, Math.cbrt(limitW / peakW))
  const scaled = { ...curve, sealedPa: curve.sealedPa * speed ** 2, openM3PerS: curve.openM3PerS * speed }
  return {
    curve: scaled,
    sealedPa: scaled.sealedPa,
    openM3PerS: scaled.openM3PerS,
    remark: plateRemark(powerW, peakW, speed),
  }
}

const plateRemark = (powerW: number | null, peakW: number, speed: number): string => {
  if (powerW === null) return 'No rating plate was given: the typical fan of the kind is taken as it is.'
  const share = `${Math.round((100 * peakW) / powerW)} % of the ${powerW} W on the rating plate`
  return speed < 1
    ? `The typical fan of the kind would give ${share} as air power, more than any gives: it is taken weaker.`
    : `The typical fan of the kind gives ${share} as air power at its own inlet, which such a machine can do: it is taken as it is.`
}
