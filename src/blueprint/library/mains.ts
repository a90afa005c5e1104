/** The mains a machine was made for: what its plug, plate and cores are like. */
export interface Mains {
  /** Ending of a blueprint’s id; none for the first. */
  readonly suffix: string
  readonly name: string
  readonly voltageV: number
  readonly frequencyHz: number
  /** Rating of the fuse in the plug, or null where plugs have none. */
  readonly fuseA: number | null
}

/** BS 1363 plug with a BS 1362 fuse. */
export const fusedPlug: Mains = { suffix: '', name: '230 V, fused plug', voltageV: 230, frequencyHz: 50, fuseA: 13 }

/** Moulded plug of IEC 60884 without a fuse. */
export const mouldedPlug: Mains = {
  suffix: '-moulded-plug',
  name: '230 V, moulded plug',
  voltageV: 230,
  frequencyHz: 50,
  fuseA: null,
}

/** Moulded plug with flat blades, 120 V. */
export const flatBlades: Mains = {
  suffix: '-120-v',
  name: '120 V, flat blades',
  voltageV: 120,
  frequencyHz: 60,
  fuseA: null,
}
