import { branchLaw, type BranchLaw, type Surroundings } from './branch-law.ts'
import { airOfRoom, airViscosityPaS, type RoomAir } from './density.ts'
import { standardAir } from '../../facts/air.ts'
import type { AirBranch, AirNetwork, AirSpec } from './schema.ts'

/** A network with numbers for names. The room has no number of its own: −1. */
export type CompiledAir = {
  readonly air: Surroundings
  readonly nodes: readonly string[]
  readonly ids: readonly string[]
  readonly from: Int32Array
  readonly to: Int32Array
  readonly laws: readonly BranchLaw[]
  /** What the branches themselves say; a fit multiplies these. */
  readonly scale: Float64Array
  readonly speed: Float64Array
  /** Nodes that no branch joins to the room, however far round. */
  readonly floating: readonly string[]
}

/** The node outside the machine. */
export const room = 'room'

/** Pressure, density and viscosity of the air outside; air given by its density is taken to be at 20 °C. */
export const roomAirOf = (air: AirSpec): RoomAir =>
  air.kind === 'room'
    ? airOfRoom(air)
    : {
        pressurePa: air.pressurePa,
        densityKgPerM3: air.densityKgPerM3,
        viscosityPaS: airViscosityPaS(standardAir.temperatureC),
        insideRange: true,
      }

/** Branches are taken in the order of their ids, so the order they were written in leaves no trace. */
export const compileAir = ({ air: spec, losses, branches }: AirNetwork): CompiledAir => {
  const air = roomAirOf(spec)
  const ordered = [...branches].sort((a, b) => (a.id < b.id ? -1 : 1))
  const nodes = [...new Set(ordered.flatMap(({ from, to }) => [from, to]))].filter((name) => name !== room).sort()
  const index = new Map(nodes.map((name, i) => [name, i]))
  const numberOf = (name: string): number => index.get(name) ?? -1
  const from = Int32Array.from(ordered, (branch) => numberOf(branch.from))
  const to = Int32Array.from(ordered, (branch) => numberOf(branch.to))
  return {
    air,
    nodes,
    ids: ordered.map(({ id }) => id),
    from,
    to,
    laws: ordered.map((branch) => branchLaw(branch, air, losses === 'local-density')),
    scale: Float64Array.from(ordered, ownScale),
    speed: Float64Array.from(ordered, (branch) => (branch.kind === 'fan' ? branch.speed : 1)),
    floating: floatingNodes(nodes, from, to),
  }
}

const ownScale = (branch: AirBranch): number => (branch.kind === 'fan' ? branch.pressure : 1)

const floatingNodes = (nodes: readonly string[], from: Int32Array, to: Int32Array): readonly string[] => {
  const reached = new Set([-1])
  for (let before = 0; before !== reached.size;) {
    before = reached.size
    from.forEach((a, k) => {
      if (reached.has(a) || reached.has(to[k])) reached.add(a).add(to[k])
    })
  }
  return nodes.filter((_, i) => !reached.has(i))
}
