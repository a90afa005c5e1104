import {
  bestAirEfficiency,
  carelessEdge,
  chamberPipes,
  drills,
  gaugeMargin,
  plateRim,
  reliefOpensPa,
  sealedTime,
  sheets,
  tapPlace,
  usualHoses,
} from '../../facts/air-rig.ts'
import { hoseFriction } from '../../facts/air-losses.ts'
import { peakPoints } from '../../facts/air-power.ts'
import { gauges } from '../../facts/gauges.ts'
import { expansibility2003, freeHole, holeUncertainty, roundedHole, thickHole, weakHole } from '../../facts/orifice.ts'
import type { SuctionClass } from '../../facts/suction-classes.ts'
import { ok, type Result } from '../../base/result.ts'
import { sourceText } from '../../base/source-text.ts'
import type { Source } from '../../base/source.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { airPowerPeak, typicalHose, type AirPowerPeak } from '../../engines/airflow/index.ts'
import { rigGauges, wantedRangePa, type RigGauge } from './air-rig-gauge.ts'
import { chooseHoles, drillFor, pointAt, thickestSheet, widthFor, type RigPoint } from './air-rig-points.ts'
import { makingText, rigCautions } from './air-rig-words.ts'
import { fanForPlate, suctionClassOf } from './suction-class.ts'

/** A hole of the rig: what makes it, and what a typical machine of the kind shows at it. */
export type RigHole = RigPoint & {
  readonly drill: string
  /** Airflow over that of the open hose. */
  readonly shareOfOpen: number
}

/** A homemade rig for one machine or kind of machine. Figures are expectations for a typical machine in standard air. */
export type AirRig = {
  readonly kind: 'air-rig'
  /** The blueprint or kind it was made for. */
  readonly of: string
  readonly suctionClass: { readonly id: string; readonly name: string; readonly decided: readonly string[] }
  readonly hose: { readonly diameterM: number; readonly lengthM: number } | null
  /** Smallest first, which is the order of drilling. */
  readonly holes: readonly RigHole[]
  readonly sealed: { readonly suctionPa: number; readonly rangePa: readonly [number, number]; readonly forceN: number }
  readonly openM3PerS: number
  readonly peak: AirPowerPeak
  /** The hole that would sit at the peak, mm; null without a peak. */
  readonly peakHoleMm: number | null
  readonly plate: { readonly sideMm: number; readonly thicknessMm: number }
  readonly chamber: {
    readonly pipe: string
    readonly boreMm: number
    readonly lengthMm: number
    readonly tapMm: number
  }
  readonly gauge: { readonly rangePa: number; readonly gauges: readonly RigGauge[] }
  readonly making: readonly string[]
  readonly cautions: readonly string[]
  /** What each figure stands on. */
  readonly sources: readonly { readonly figure: string; readonly source: string }[]
}

type Machine = { readonly of: string; readonly blueprint: Blueprint | null; readonly decided: readonly string[] }

/** The rig for a blueprint. Refused where its kind of fan cannot be told from it. */
export const airRigOf = (blueprint: Blueprint): Result<AirRig> => {
  const found = suctionClassOf(blueprint)
  if (found.kind === 'refused') return found
  return ok(rigFor(found.value.class, { of: blueprint.id, blueprint, decided: found.value.decided }))
}

/** The rig for a kind of machine. */
export const airRigOfClass = (kind: SuctionClass): AirRig =>
  rigFor(kind, { of: kind.id, blueprint: null, decided: [`The kind was named: “${kind.name}”.`] })

const rigFor = (kind: SuctionClass, { of, blueprint, decided }: Machine): AirRig => {
  const fan = fanForPlate(kind, blueprint?.plate.powerW ?? null)
  const hose = usualHose(kind.id)
  const hosePaS2PerM6 = hose === null ? 0 : typicalHose(hose.make, hose.diameterM, hose.lengthM).median
  const machine = { curve: fan.curve, hosePaS2PerM6 }
  const { pipe, points, openM3PerS } = chooseHoles(machine, peakPoints.count)
  const smallestMm = points[0].diameterMm
  const thicknessMm = thickestSheet(smallestMm)
  const holes = points.map(({ diameterMm }): RigHole => {
    const point = pointAt(machine, diameterMm, thicknessMm)
    return { ...point, drill: drillFor(diameterMm), shareOfOpen: point.airflowM3PerS / openM3PerS }
  })
  const peak = airPowerPeak(holes)
  const chamber = chamberOf(pipe)
  const forceN = kind.sealedPa[1] * (Math.PI / 4) * (pipe.boreMm / 1000) ** 2
  return {
    kind: 'air-rig',
    of,
    suctionClass: { id: kind.id, name: kind.name, decided: [...decided, fan.remark, hoseText(hose)] },
    hose: hose === null ? null : { diameterM: hose.diameterM, lengthM: hose.lengthM },
    holes,
    sealed: { suctionPa: fan.sealedPa, rangePa: kind.sealedPa, forceN },
    openM3PerS,
    peak,
    peakHoleMm: peak.kind === 'peak' ? widthFor(peak.airflowM3PerS, peak.suctionPa) : null,
    plate: { sideMm: pipe.boreMm + 2 * plateRim.widthMm, thicknessMm },
    chamber,
    gauge: { rangePa: wantedRangePa(kind.sealedPa[1]), gauges: rigGauges(holes, kind.sealedPa[1]) },
    making: makingText({ hose: hose !== null, thicknessMm, smallestMm, ...chamber }),
    cautions: rigCautions(blueprint, forceN),
    sources: sourcesOf(kind),
  }
}

const usualHose = (classId: string) => {
  const byClass: Readonly<Record<string, (typeof usualHoses.byClass)[keyof typeof usualHoses.byClass]>> =
    usualHoses.byClass
  return byClass[classId] ?? null
}

const hoseText = (hose: { readonly diameterM: number; readonly lengthM: number } | null): string =>
  hose === null
    ? 'The rig goes to the inlet itself: no hose is reckoned with.'
    : `A stretch hose of ${(hose.diameterM * 1000).toFixed(0)} mm and ${hose.lengthM} m is reckoned with. Some figures of the kind were quoted at the end of a hose: at large holes a sound machine may show more.`

const chamberOf = ({ name, boreMm }: { readonly name: string; readonly boreMm: number }): AirRig['chamber'] => ({
  pipe: name,
  boreMm,
  lengthMm: 2 * boreMm,
  tapMm: Math.round(tapPlace.behindBores * boreMm),
})

const sourcesOf = (kind: SuctionClass): AirRig['sources'] =>
  (
    [
      ['sealed suction and open airflow of the kind', kind.source],
      ['limit by the rating plate', bestAirEfficiency.source],
      ['hose', usualHoses.source],
      ['friction of the hose', hoseFriction.source],
      ['drills', drills.source],
      ['number of holes: those the peak is laid through', peakPoints.source],
      ['smallest hole and lowest suction', weakHole.source],
      ['coefficient of a sharp hole', freeHole.source],
      ['expansion of the air', expansibility2003.source],
      ['thickness of the plate', thickHole.source],
      ['rounded edge', roundedHole.source],
      ['edge broken by a countersink', carelessEdge.source],
      ['sheet', sheets.source],
      ['rim of the plate', plateRim.source],
      ['chamber', chamberPipes.source],
      ['width of the chamber', tapPlace.source],
      ['place of the tap', tapPlace.behindSource],
      ['uncertainty of the holes', holeUncertainty.source],
      ['range of the gauge', gaugeMargin.source],
      ...gauges.map(({ name, source }) => [name, source] as const),
      ['time sealed', sealedTime.source],
      ['relief valve', reliefOpensPa.source],
    ] as readonly (readonly [string, Source])[]
  ).map(([figure, source]) => ({ figure, source: sourceText(source) }))
