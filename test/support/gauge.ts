import type { GaugeOpening, GaugeReading } from '../../src/machine/air/gauge-reading.ts'

/** A hole of the usual rig. */
export const hole = (diameterMm: number): GaugeOpening => ({
  kind: 'hole',
  diameterM: diameterMm / 1000,
  thicknessM: 0.001,
  edgeRadiusM: 0,
  make: 'drilled-sheet',
})

export const sealed: GaugeOpening = { kind: 'sealed' }

/** A suction read at the end of the hose, unless it is said otherwise. */
export const suctionAt = (
  opening: GaugeOpening,
  suctionPa: number,
  over: Partial<GaugeReading> = {},
): GaugeReading => ({
  way: 'hose-end',
  opening,
  out: [],
  read: { measure: 'suction', suctionPa },
  instrument: 'digital-manometer-5-psi',
  mainsV: 230,
  ...over,
})
