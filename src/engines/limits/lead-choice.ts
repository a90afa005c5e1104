import type { Source } from '../../base/source.ts'
import {
  americanCapacitySource,
  applianceCordSource,
  cordTypes,
  cordTypeSources,
  dropTemperatureC,
  ukCapacitySource,
  ukDropSource,
  type CordFamily,
} from '../../facts/cords.ts'
import { flexBehindFuse, flexBehindFuseSource, hardStart, plugFuses } from '../../facts/fuses.ts'
import { runningPowerFactor } from '../../facts/motors.ts'
import { ratedCurrentSource } from '../../facts/plate.ts'
import { noPlugFuse, plugDuty, plugs, type Plug } from '../../facts/plugs.ts'
import type { Region } from '../../facts/regions.ts'
import { wiring, type Conductor } from '../../facts/wiring.ts'
import { amountText } from './amount-text.ts'
import { cableFit, type CableFit, type LeadNeed, type ListedCable } from './cable-fit.ts'
import { ratedOf, type Plate, type Rated } from './rated-current.ts'
import { sizeText, type ConductorSize } from './sizes.ts'
import { isAmerican, smallestConductor } from './smallest-conductor.ts'
import { voltageDrop, type VoltageDrop } from './voltage-drop.ts'

/** A replacement lead for one machine, each part with the clause behind it. */
export type LeadChoice = {
  readonly rated: Rated & { readonly source: Source }
  readonly conductor: { readonly size: string; readonly areaMm2: number; readonly sources: readonly Source[] }
  readonly cords: {
    readonly types: readonly { readonly id: string; readonly sheath: string }[]
    readonly source: Source
  }
  readonly cores: number
  readonly plug: Plug
  readonly fuse: { readonly ratingA: number; readonly colour: string } | null
  readonly fuseSource: Source
  readonly conductors: readonly Conductor[]
  readonly conductorSources: readonly Source[]
  readonly drop: VoltageDrop & { readonly sources: readonly Source[] }
  readonly remarks: readonly string[]
  readonly cables: readonly CableFit[]
}

/** The fuse of a British plug by power, in ampere. */
export const plugFuseA = (powerW: number): number =>
  powerW <= plugFuses.small.upToW ? plugFuses.small.ratingA : plugFuses.large.ratingA

/** Chooses conductor, cord, plug, fuse, colours and terminals, and says of each cable whether it would do. Undefined where no cord of the tables carries the current. */
export const chooseLead = (
  plate: Plate,
  region: Region,
  lengthM: number,
  cables: readonly ListedCable[],
): LeadChoice | undefined => {
  const rated = ratedOf(plate)
  const size = smallestConductor(region, rated.currentA, lengthM)
  if (size === undefined) return undefined
  const family: CordFamily = isAmerican(region) ? 'american' : 'harmonised'
  const cores = plate.class === 'I' ? 3 : 2
  const need: LeadNeed = { size, family, cores, lengthM, massKg: plate.massKg }
  const colours = wiring[region]
  return {
    rated: { ...rated, source: rated.isEstimated ? runningPowerFactor.source : ratedCurrentSource },
    conductor: { size: size.id, areaMm2: size.areaMm2, sources: conductorSources(region) },
    cords: { types: fittingTypes(family, plate.massKg), source: cordTypeSources[family] },
    cores,
    plug: plugs[region][plate.class],
    ...fuseFor(region, rated.powerW),
    conductors: [colours.line, colours.neutral, ...(plate.class === 'I' ? [colours.earth] : [])],
    conductorSources: [colours.source, colours.terminalSource],
    drop: {
      ...voltageDrop(size, lengthM, rated.currentA, plate.voltageV, dropTemperatureC),
      sources: [size.source, ukDropSource],
    },
    remarks: remarksFor(plate, region, rated, size),
    cables: cables.map((cable) => cableFit(cable, need)),
  }
}

const conductorSources = (region: Region): readonly Source[] => {
  if (isAmerican(region)) return [americanCapacitySource]
  return region === 'UK' ? [applianceCordSource, ukCapacitySource, flexBehindFuseSource] : [applianceCordSource]
}

const fittingTypes = (family: CordFamily, massKg: number | null) =>
  cordTypes
    .filter((type) => type.family === family && !type.tooLight)
    .filter(({ upToKg }) => upToKg === null || (massKg !== null && massKg <= upToKg))
    .map(({ id, sheath }) => ({ id, sheath }))

const fuseFor = (region: Region, powerW: number): Pick<LeadChoice, 'fuse' | 'fuseSource'> => {
  if (region !== 'UK') return { fuse: null, fuseSource: noPlugFuse }
  const { colour, ratingA } = plugFuseA(powerW) === plugFuses.small.ratingA ? plugFuses.small : plugFuses.large
  return { fuse: { ratingA, colour }, fuseSource: plugFuses.source }
}

const remarksFor = (plate: Plate, region: Region, rated: Rated, size: ConductorSize): readonly string[] => {
  const remarks: string[] = []
  if (rated.isEstimated) {
    remarks.push(
      `The current is watts over volts (${amountText(rated.currentA, 'ampere')}); amperes on the plate go before it.`,
    )
  }
  if (plate.massKg === null) remarks.push('The mass is not known, so only cords for any mass are named.')
  if (region === 'UK') remarks.push(...ukRemarks(rated.powerW, size))
  if (region === 'AU' || region === 'NZ') {
    remarks.push('The cord table of AS/NZS 3191 was not at hand; the size is by IEC 60335-1.')
  }
  remarks.push('On a reel, unwind the lead fully for long runs.')
  return remarks
}

const ukRemarks = (powerW: number, size: ConductorSize): readonly string[] => {
  const remarks: string[] = []
  const duty = plugDuty.UK
  if (duty !== undefined) remarks.push(`${duty.title}.`)
  if (powerW >= hardStart.fromW && powerW <= hardStart.toW) {
    remarks.push(
      'Around 700 W a hard start may blow a 3 A fuse; the rating marked on the machine’s own plug goes before this.',
    )
  }
  const least = flexBehindFuse.find(({ fuseA }) => fuseA === plugFuseA(powerW))
  if (least !== undefined && size.areaMm2 < least.areaMm2) {
    remarks.push(
      `${sizeText(size)} behind a ${least.fuseA} A fuse is allowed at a restricted length only, and ${least.areaMm2} mm² at any.`,
    )
  }
  return remarks
}
