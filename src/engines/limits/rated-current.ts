import { problem, type Problem } from '../../base/problem.ts'
import { runningPowerFactor } from '../../facts/motors.ts'
import { platePowerFactor } from '../../facts/plate.ts'
import { plugs } from '../../facts/plugs.ts'
import { mains, regionNames, type ApplianceClass, type Region } from '../../facts/regions.ts'
import { amountText, figures } from './amount-text.ts'

/** What stands on a machine's plate. Power or current may be missing, not both. */
export type Plate = {
  readonly voltageV: number
  readonly powerW: number | null
  readonly currentA: number | null
  readonly class: ApplianceClass
  readonly massKg: number | null
}

export type Rated = { readonly currentA: number; readonly powerW: number; readonly isEstimated: boolean }

/** Current and power by the plate; what is missing from the other by the power factor of a running motor. */
export const ratedOf = ({ voltageV, powerW, currentA }: Plate): Rated => {
  const factor = runningPowerFactor.value
  if (currentA !== null) return { currentA, powerW: powerW ?? voltageV * currentA * factor, isEstimated: false }
  const watts = powerW ?? 0
  return { currentA: watts / (voltageV * factor), powerW: watts, isEstimated: true }
}

/** What is wrong with a plate in a region: nothing to go by, watts that contradict amperes, another mains, more than a plug carries. */
export const plateProblems = (plate: Plate, region: Region, where: string): readonly Problem[] => {
  const { voltageV, powerW, currentA } = plate
  if (powerW === null && currentA === null) {
    const mend = 'Give the watts or the amperes of the plate'
    return [problem('plate-empty', where, 'Without watts or amperes no lead can be chosen', mend)]
  }
  return [
    ...contradiction(voltageV, powerW, currentA, where),
    ...wrongMains(voltageV, region, where),
    ...tooMuch(plate, region, where),
  ]
}

const contradiction = (
  voltageV: number,
  powerW: number | null,
  currentA: number | null,
  where: string,
): readonly Problem[] => {
  if (powerW === null || currentA === null) return []
  const factor = powerW / (voltageV * currentA)
  if (factor >= platePowerFactor.low && factor <= platePowerFactor.high) return []
  const drawn = amountText(powerW / (voltageV * runningPowerFactor.value), 'ampere')
  const what = `${figures(powerW)} W at ${figures(voltageV)} V is about ${drawn}, and the plate is said to have ${amountText(currentA, 'ampere')}`
  const mend = 'Read watts, volts and amperes on the plate again; leave out what cannot be read'
  return [problem('plate-contradicts-itself', where, what, mend)]
}

const wrongMains = (voltageV: number, region: Region, where: string): readonly Problem[] => {
  const { lowestPlateV, highestPlateV, nominalV } = mains[region]
  if (voltageV >= lowestPlateV && voltageV <= highestPlateV) return []
  const what = `The plate says ${figures(voltageV)} V, and sockets in ${regionNames[region]} give ${nominalV} V`
  return [
    problem('other-mains', `${where}.voltageV`, what, 'Read the plate again, or choose the region it was made for'),
  ]
}

const tooMuch = (plate: Plate, region: Region, where: string): readonly Problem[] => {
  const { currentA } = ratedOf(plate)
  const plug = plugs[region][plate.class]
  if (currentA <= plug.ratedA) return []
  const what = `${amountText(currentA, 'ampere')} is more than the plug carries (${plug.ratedA} A)`
  return [
    problem('more-than-a-plug', where, what, 'Read the plate again; a machine that draws this needs an electrician'),
  ]
}
