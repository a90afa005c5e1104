import { compileAir, room, type CompiledAir } from './compile.ts'
import { motorScaling } from './corrections.ts'
import type { AirFit, AirParameter, AirSetup } from './fit-schema.ts'
import { plateAreaM2, plateDischarge } from './plate.ts'
import type { AirBranch, AirNetwork } from './schema.ts'

/** Leaks and bleeds stand in the network with this area, so that their scale is their area in mm². */
export const leakUnitM2 = 1e-6

/** One way in which a coordinate acts: on the scale or the speed of a branch, to a power. */
export type Effect = { readonly branch: number; readonly on: 'scale' | 'speed'; readonly power: number }

/** A machine set up for readings: its network, and what each coordinate of the fit does to it. */
export type CompiledSetup = {
  readonly compiled: CompiledAir
  readonly scale: Float64Array
  readonly speed: Float64Array
  /** For each coordinate: parameters first, then plates. */
  readonly effects: readonly (readonly Effect[])[]
  readonly openings: readonly number[]
}

/** Two setups with one key have the same air in the same machine, so they share a solution. */
export const setupKey = ({ removed, openings, mainsRatio, air }: AirSetup): string =>
  JSON.stringify([removed, openings, mainsRatio, air])

/** The network of a setup: leaks and bleeds added, what is taken off left out, a hole for each opening. */
export const networkOfSetup = (fit: AirFit, setup: AirSetup): AirNetwork => {
  const leaks = [...fit.leaks, ...fit.bleeds].map(({ id, node }) => openingBranch(id, node, leakUnitM2))
  const openings = setup.openings.map(({ node, plate: id }, i) => {
    const plate = fit.plates.find((one) => one.id === id)
    if (plate === undefined) throw new RangeError(`no plate ${id}`)
    return openingBranch(openingId(i), node, plateAreaM2(plate), plateDischarge(plate))
  })
  const branches = [...fit.network.branches, ...leaks].filter(({ id }) => !setup.removed.includes(id))
  return { ...fit.network, air: setup.air ?? fit.network.air, branches: [...branches, ...openings] }
}

const openingId = (i: number): string => `opening:${i}`

const openingBranch = (id: string, node: string, areaM2: number, discharge = 0.6): AirBranch => ({
  kind: 'hole',
  id,
  from: room,
  to: node,
  areaM2,
  discharge,
})

export const compileSetup = (fit: AirFit, parameters: readonly AirParameter[], setup: AirSetup): CompiledSetup => {
  const network = networkOfSetup(fit, setup)
  const compiled = compileAir(network)
  const indexOf = (id: string): number => compiled.ids.indexOf(id)
  const fans = network.branches.filter((branch) => branch.kind === 'fan')
  const speed = Float64Array.from(compiled.speed)
  for (const { id, densityKgPerM3 } of fans) {
    speed[indexOf(id)] *= motorScaling(compiled.air.densityKgPerM3 / densityKgPerM3, setup.mainsRatio ?? 1).speed
  }
  const perMains = Math.log(motorScaling(1, Math.E).speed)
  const mains =
    setup.mainsRatio === null
      ? fans.map(({ id }): Effect => ({ branch: indexOf(id), on: 'speed', power: perMains }))
      : []
  const effectsOf = ({ target }: AirParameter): readonly Effect[] => {
    if (target.kind === 'mains') return mains
    const branch = indexOf(target.branch)
    return branch < 0 ? [] : [{ branch, on: target.kind, power: 1 }]
  }
  const effectsOfPlate = ({ id }: { readonly id: string }): readonly Effect[] =>
    setup.openings.flatMap(({ plate }, i) =>
      plate === id ? [{ branch: indexOf(openingId(i)), on: 'scale', power: 1 } as const] : [],
    )
  return {
    compiled,
    scale: Float64Array.from(compiled.scale),
    speed,
    effects: [...parameters.map(effectsOf), ...fit.plates.map(effectsOfPlate)],
    openings: setup.openings.map((_, i) => indexOf(openingId(i))),
  }
}
