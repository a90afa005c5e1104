import type { Source } from '../base/source.ts'

const practice = (title: string): Source => ({ title, evidence: 'common practice' })
const judged = (title: string): Source => ({ title, evidence: 'judgement' })
const recalled = (title: string): Source => ({ title, evidence: 'from memory' })

/** What makes a hole, and the diameters it is sold in: first, last and step in mm, or a list. */
export const drills = {
  twist: { name: 'twist drill', firstMm: 1, lastMm: 13, stepMm: 0.5 },
  step: { name: 'step drill', firstMm: 4, lastMm: 32, stepMm: 2 },
  saw: { name: 'hole saw', firstMm: 35, lastMm: 38, stepMm: 3 },
  source: practice('Drill sets of 1 to 13 mm by halves, step drills to 32 mm by twos, hole saws of 35 and 38 mm'),
} as const

/** Pipe that a chamber behind the plate can be made of, narrowest first. */
export const chamberPipes = {
  sizes: [
    { name: 'drain pipe of 110 mm', boreMm: 104 },
    { name: 'drain pipe of 160 mm', boreMm: 152 },
  ],
  source: recalled('Plastic drain pipe: 110 mm with a wall of about 3 mm, 160 mm with one of about 4 mm'),
} as const

/** Where suction is read behind a hole. */
export const tapPlace = {
  /** Away from the axis of the jet, in diameters of the hole. */
  offAxisDiameters: 2,
  /** Area of the chamber over that of the hole, at least. */
  leastAreaRatio: 4,
  /** Behind the plate, in bores of the chamber. */
  behindBores: 0.5,
  /** Hole in the wall for the tap. */
  holeMm: 3,
  source: judged(
    'Static suction is read in the wall of a chamber of four times the area, two hole diameters off the jet',
  ),
  behindSource: recalled('ISO 5167-2: downstream tap half a pipe diameter behind the plate'),
} as const

/** Sheet that can be had, mm. */
export const sheets = {
  thicknessMm: [0.5, 0.8, 1, 1.2, 1.5, 2],
  source: practice('Thicknesses of aluminium and steel sheet'),
} as const

/** How far the plate reaches over the chamber's rim all round. */
export const plateRim = { widthMm: 10, source: judged('Room for a flat seal on the rim of the chamber') } as const

/** How much further a gauge must read than the strongest machine of the kind sucks. */
export const gaugeMargin = {
  factor: 1.2,
  source: judged(
    'A fifth above the strongest sealed suction of the kind, so that a needle or display never stops at its end',
  ),
} as const

/** The hose a machine of a kind is measured with; null where the rig goes to the body or the floor head itself. */
export const usualHoses = {
  byClass: {
    cylinder: { make: 'stretch', diameterM: 0.032, lengthM: 1.8 },
    'by-pass-upright': { make: 'stretch', diameterM: 0.032, lengthM: 1.8 },
    'direct-air-upright': null,
    tub: { make: 'stretch', diameterM: 0.032, lengthM: 1.8 },
    stick: null,
  },
  source: recalled('Household hoses: 32 mm (a quarter over an inch) wide and about 1.8 m long'),
} as const

/** The largest share of the plate's watts that comes out as air power at the hose of a household machine. */
export const bestAirEfficiency = {
  share: 0.42,
  source: recalled('Air power over input power: 15 to 23 % of old machines of 1400 to 2000 W, up to 42 % of good ones'),
} as const

/** How long the inlet may be shut at a time. */
export const sealedTime = {
  longestS: 5,
  restS: 30,
  source: judged('The air that is sucked in cools the motor of most machines: shut, it heats within seconds'),
} as const

/** Suction at which valves that let air in by themselves open. */
export const reliefOpensPa = {
  low: 12_000,
  high: 22_000,
  source: recalled('Relief and bleed valves of household machines open at 12 to 22 kPa'),
} as const

/** Rounding of a hole's edge that is asked about: what a heavy hand with a countersink does. */
export const carelessEdge = { radiusMm: 0.5, source: judged('Edge broken by half a millimetre') } as const

/** Minutes for one gauge reading with the rig in place, and more where something must be taken off or tapped first. */
export const gaugeMinutes = {
  value: 1,
  otherWay: 2,
  partOut: 2,
  tapped: 8,
  source: judged(
    'One plate on the rig: half a minute to settle, half to read and write; a tap in the body to be drilled',
  ),
} as const

/** An open end of a hose or inlet, as a hole: as wide as a household hose, its edge so round that air enters with hardly a loss. */
export const openEnd = {
  diameterM: 0.032,
  edgeRadiusM: 0.02,
  make: 'unknown',
  source: recalled('Household hoses: 32 mm wide; an inlet rounded by more than a sixth of its width lets 0.97 through'),
} as const

/** The hole of a usual rig nearest to the most air power of household fans, and how many are read before the motor is heated sealed. */
export const middleHole = {
  diameterM: 0.019,
  source: recalled('Most air power of household motors lies at a hole of 16 to 22 mm'),
} as const
export const holesBeforeSealed = {
  count: 2,
  source: judged('Sealed heats the motor, and heat lowers what is read after it'),
} as const
