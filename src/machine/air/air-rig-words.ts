import { carelessEdge, reliefOpensPa, sealedTime, tapPlace } from '../../facts/air-rig.ts'
import { holeMakes } from '../../facts/orifice.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { freeDischarge } from '../../engines/airflow/index.ts'
import { kPa } from './air-rig-gauge.ts'

/** How the rig is made, in order, as sentences. */
export const makingText = (rig: {
  readonly hose: boolean
  readonly thicknessMm: number
  readonly smallestMm: number
  readonly pipe: string
  readonly boreMm: number
  readonly lengthMm: number
  readonly tapMm: number
}): readonly string[] => [
  `Chamber: a length of ${rig.pipe}, bore about ${rig.boreMm} mm and ${rig.lengthMm} mm long. One end is open with a smooth flat rim; into a stout cap on the other end the ${rig.hose ? 'hose' : 'inlet of the machine'} fits tightly.`,
  `Plates: one for each hole, of aluminium or steel ${rig.thicknessMm} mm thick or less. Each lies on the rim with a soft flat seal; suction holds it.`,
  `Edge: square and crisp on the side of the room. Take burrs off flat with a fine file or stone, never with a countersink: an edge rounded by ${carelessEdge.radiusMm} mm lets ${edgePercent(rig.smallestMm)} % more through the ${rig.smallestMm} mm hole. With a step drill, stop before the next step touches: it bevels the edge. Measure each hole with a calliper, twice, crosswise: drills wander.`,
  `Tap: a hole of ${tapPlace.holeMm} mm through the wall of the chamber, ${rig.tapMm} mm behind the plate and square to the flow. Its inner edge is flush and free of burrs; a grommet or barb must not stand into the air.`,
  `Drilled and deburred in sheet, the airflow is good to ${(100 * holeMakes['drilled-sheet'].uncertainty).toFixed(0)} % at best; the ratio of before to after is better, as the same hole stands in both.`,
]

const edgePercent = (diameterMm: number): string => {
  const rounded = freeDischarge(diameterMm, 0, carelessEdge.radiusMm)
  return (100 * (rounded / freeDischarge(diameterMm, 0, 0) - 1)).toFixed(0)
}

/** Cautions for whoever makes and uses the rig. */
export const rigCautions = (blueprint: Blueprint | null, forceN: number): readonly string[] => [
  'Eye protection when drilling and filing. Clamp the sheet, never hold it by hand: a drill that breaks through turns it. Gloves are for handling the sheet, not for a turning drill.',
  `The machine runs for this. Run it only after its checks before running have passed${gatesOf(blueprint)}, all covers on, behind an RCD of 30 mA or less. Local rules and licensed people come first.`,
  `Never shut the inlet for more than ${sealedTime.longestS} s at a time, and let it run open for ${sealedTime.restS} s after: the air cools the motor. Where a motor has cooling air of its own, keep to it all the same.`,
  `Sealed, suction presses with up to about ${Math.round(forceN)} N on the chamber's end. No thin tins, food boxes or glass. Keep fingers, hair and sleeves off the holes.`,
  'Read the largest hole first and the sealed suction last; write the mains voltage beside each reading.',
  ...reliefCaution(blueprint),
]

const gatesOf = (blueprint: Blueprint | null): string => {
  const names = blueprint?.checks.filter((check) => check.beforeRunning).map(({ name }) => name) ?? []
  return names.length === 0 ? '' : ` (${names.join('; ')})`
}

const reliefCaution = (blueprint: Blueprint | null): readonly string[] => {
  const valve = blueprint?.parts.find(({ id }) => /(^|-)(relief|bleed)(-|$)/.test(id))
  if (valve === undefined) return []
  const { low, high } = reliefOpensPa
  return [
    `${valve.name}: it opens by itself, mostly between ${kPa(low)} and ${kPa(high)}, and then sealed suction reads low. Leave it as it is, and note whether you hear it.`,
  ]
}
