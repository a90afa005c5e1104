import type { Wording } from '../reword.ts'

/** The mains a machine was made for: what its plug, plate and cores are like. */
export interface Mains {
  /** Ending of a blueprint’s id; none for the first. */
  readonly suffix: string
  readonly name: string
  readonly voltageV: number
  readonly frequencyHz: number
  /** Rating of the fuse in the plug, or null where plugs have none. */
  readonly fuseA: number | null
  /** What the trade there says otherwise. */
  readonly wording: Wording
}

/** BS 1363 plug with a BS 1362 fuse. */
export const fusedPlug: Mains = {
  suffix: '',
  name: '230 V, fused plug',
  voltageV: 230,
  frequencyHz: 50,
  fuseA: 13,
  wording: [],
}

/** Moulded plug of IEC 60884 without a fuse. */
export const mouldedPlug: Mains = {
  suffix: '-moulded-plug',
  name: '230 V, moulded plug',
  voltageV: 230,
  frequencyHz: 50,
  fuseA: null,
  // The plug goes in either way round: which pin is line is told by the core it leads to.
  wording: [
    ['brown to L, blue to N', 'one core to each pin, the pins are alike'],
    ['line pin of the plug', 'pin that leads to the brown core'],
    ['neutral pin of the plug', 'pin that leads to the blue core'],
  ],
}

/** Moulded plug with flat blades, 120 V. The wide blade is neutral; cores are black and white, or smooth and ribbed. */
export const flatBlades: Mains = {
  suffix: '-120-v',
  name: '120 V, flat blades',
  voltageV: 120,
  frequencyHz: 60,
  fuseA: null,
  wording: [
    ['brown to L, blue to N', 'line (black or smooth) to the brass screw, neutral (white or ribbed) to the silver one'],
    ['brown core', 'line core'],
    ['H05VV-F', 'cord of the same type mark'],
    ['blue core', 'neutral core'],
    ['earth core', 'ground core'],
    ['two cores', 'two cores: line black or smooth, neutral white or ribbed'],
    ['three cores', 'three cores: line black, neutral white, ground green'],
    ['RCD socket of 30 mA or less', 'GFCI socket'],
    ['line pin', 'narrow blade'],
    ['neutral pin', 'wide blade'],
    ['pin to pin', 'blade to blade'],
    ['pins', 'blades'],
    ['each pin', 'each blade'],
    ['a pin', 'a blade'],
    ['pin loose', 'blade loose'],
    ['earth', 'ground'],
    ['flex', 'cord'],
    ['torch', 'flashlight'],
    ['cylinder', 'canister'],
  ],
}
