import type { Source } from '../base/source.ts'

/** A plug-in power meter: sits between plug and socket, so nothing live is touched. */
export const powerMeter = {
  id: 'plug-in-power-meter',
  name: 'Plug-in power meter',
  /** Typically a few per cent of the figure shown. */
  percent: 3,
  resolutionW: 1,
  source: {
    title: 'Measuring power with plug-in meters',
    url: 'http://energy-saving-electronics.info/power-measurement.htm',
    clause: 'typically a few percent; resolution 1 W',
    evidence: 'retrieved',
  } as Source,
} as const

/**
 * Where the watts of a brushed vacuum motor lie, as shares of the rating plate's power.
 * One published pair: label 1300 W, open 1100 W (0.85), blocked by hand 900 W (0.82 of open). Plates of older machines state
 * the highest input, so less than the plate is information and no failure; the upper edge is the tolerance of the label.
 */
export const wattShares = {
  /** Below this nothing runs: at most the few milliampere of a capacitor before an open switch, which is next to no power. */
  nothing: 0.02,
  /** Open hose: below this the watts are low. Judgement, with the published pair well above. */
  low: 0.7,
  /** Open hose: above this they are too high: label tolerance of motor appliances, +15 % (IEC 60335-1, clause 10.1). */
  high: 1.15,
  /** Fall when the hose is blocked: below the first none, below the second little. 10 to 25 % of open is usual, 0.15 of the plate published. */
  noFall: 0.03,
  littleFall: 0.07,
  source: {
    title: 'Back-EMF of a vacuum cleaner motor, measured on a power meter',
    url: 'http://hydraraptor.blogspot.com/2007/06/lenzs-law.html',
    clause: '1300 W label, 1100 W open, 900 W blocked',
    evidence: 'retrieved',
  } as Source,
  highSource: {
    title: 'IEC 60335-1, clause 10.1, Table 1: input of motor appliances above 300 W, +15 %',
    evidence: 'from memory',
  } as Source,
} as const

/** Brush on carpet less brush off, as shares of the brush motor's own power: idle below the first, overloaded above the second. Judgement. */
export const brushShares = { idle: 0.3, overloaded: 1.9 } as const
