import { airPassages, emptyFrame, passageAirflow } from '../../facts/air-passages.ts'
import { standardAir } from '../../facts/air.ts'
import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { typicalHose, type AirBranch, type TypicalFan } from '../../engines/airflow/index.ts'
import type { Plate as RatingPlate } from '../plate.ts'
import { airPathsOf, type AirPaths, type PathSection } from './air-paths.ts'
import { leakPlacesOf, type LeakPlace } from './air-places.ts'
import { fanForPlate, suctionClassOf, typicalFanOf, type ClassOfMachine } from './suction-class.ts'

/** The air of a blueprint as a network: its fan, its losses, its ways in, and where it may leak. Figures for standard air. */
export type AirMachine = {
  readonly blueprint: Blueprint
  readonly kind: ClassOfMachine
  readonly fan: TypicalFan
  /** What the rating plate says about the fan, as a sentence. */
  readonly fanRemark: string
  readonly fanPart: string
  readonly paths: AirPaths
  readonly places: readonly LeakPlace[]
  /** Fan and losses, and beside each part that comes out what the air meets without it. */
  readonly branches: readonly AirBranch[]
  /** Parts that can be left out for a reading. */
  readonly comesOut: readonly string[]
}

/** The id of the free way past a part that has been left out. */
export const withoutPart = (part: string): string => `without ${part}`

const emptyFramePaS2PerM6 = emptyFrame.lossPa / passageAirflow ** 2

/** The air machine of a blueprint under a rating plate. Refused where the blueprint says nothing of its air, or not what kind it is. */
export const airMachineOf = (blueprint: Blueprint, plate: Pick<RatingPlate, 'powerW'>): Result<AirMachine> => {
  if (blueprint.airWays.length === 0) return refused(noAirWays(blueprint))
  const kind = suctionClassOf(blueprint)
  if (kind.kind === 'refused') return kind
  const fan = typicalFanOf(kind.value.class)
  const { curve, remark } = fanForPlate(kind.value.class, plate.powerW)
  const paths = airPathsOf(blueprint)
  const fanPart = paths.sections.find(({ section }) => section.kind === 'fan')?.part
  if (fanPart === undefined) return refused(noAirWays(blueprint))
  const comesOut = paths.sections.filter(({ section }) => canComeOut(section)).map(({ part }) => part)
  return ok({
    blueprint,
    kind: kind.value,
    fan: { ...fan, curve },
    fanRemark: remark,
    fanPart,
    paths,
    places: leakPlacesOf(blueprint, paths),
    branches: paths.sections.flatMap((one) => branchesOf(one, curve)),
    comesOut,
  })
}

const canComeOut = (section: PathSection['section']): boolean =>
  section.kind === 'passage' && airPassages[section.like].comesOut

const branchesOf = ({ part, section, from, to }: PathSection, curve: TypicalFan['curve']): readonly AirBranch[] => {
  const ends = { from, to }
  switch (section.kind) {
    case 'fan':
      return [
        {
          kind: 'fan',
          id: part,
          ...ends,
          curve,
          densityKgPerM3: standardAir.densityKgPerM3,
          airflowAs: 'room',
          speed: 1,
          pressure: 1,
        },
      ]
    case 'hose': {
      const { median } = typicalHose(section.make, section.diameterM, section.lengthM)
      return [{ kind: 'loss', id: part, ...ends, linearPaSPerM3: 0, quadraticPaS2PerM6: median }]
    }
    case 'passage': {
      const { lossPa, linearShare, comesOut } = airPassages[section.like]
      const own: AirBranch = {
        kind: 'loss',
        id: part,
        ...ends,
        linearPaSPerM3: (lossPa * linearShare) / passageAirflow,
        quadraticPaS2PerM6: (lossPa * (1 - linearShare)) / passageAirflow ** 2,
      }
      if (!comesOut) return [own]
      return [own, { ...own, id: withoutPart(part), linearPaSPerM3: 0, quadraticPaS2PerM6: emptyFramePaS2PerM6 }]
    }
  }
}

const noAirWays = ({ id }: Blueprint) =>
  problem(
    'no-air-ways',
    id,
    'This blueprint does not say where a gauge rig can be fitted',
    'Add “airWays” to it, and an “air” to the parts of its air path',
  )
