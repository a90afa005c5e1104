import type { Source } from '../base/source.ts'

/**
 * The top ohm range of an autoranging meter while it charges a capacitor: it compares the capacitor's voltage with that
 * across a known resistor in series. What it shows climbs until it passes the end of the range, and then it shows open.
 */
export const chargingMeter = {
  /** The known resistor in series, ohm. */
  seriesOhm: 10e6,
  /** End of the range, ohm. */
  rangeOhm: 40e6,
  /** Time between two figures on the display, second. */
  updateS: 1 / 3,
  source: {
    title: 'Usual build of autoranging multimeters: 10 MΩ reference on the 40 MΩ range, three figures a second',
    evidence: 'from memory',
  } as Source,
} as const

/** Share of the way to its final voltage that a capacitor has come after `timeS`: 1 − e^(−t/RC). */
export const chargedShare = (timeS: number, resistanceOhm: number, capacitanceF: number): number =>
  -Math.expm1(-timeS / (resistanceOhm * capacitanceF))

/**
 * How long a meter shows climbing figures on a capacitor before it goes to open, in seconds. With u the share of the way
 * charged, the meter shows R·u/(1 − u); it reaches the end of its range at t = R·C·ln(1 + range/R).
 */
export const climbingS = (capacitanceF: number): number =>
  chargingMeter.seriesOhm * capacitanceF * Math.log(1 + chargingMeter.rangeOhm / chargingMeter.seriesOhm)

/** From this size up a capacitor is in sight: the climb lasts for about one figure on the display. Farad. */
export const visibleCapacitanceF = 0.02e-6

/**
 * How often "rises, then open" is written down. A meter that is quick to settle, or an eye that is slow, sees only "open".
 * Nothing to charge: a reading that settles slowly is now and then taken for it. Judgement.
 */
export const chargingSeen = {
  whenVisible: 0.6,
  byMistake: 0.01,
  source: { title: 'How often a climbing reading is noticed on a cheap meter', evidence: 'judgement' } as Source,
} as const
