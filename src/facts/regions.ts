export const regions = ['UK', 'EU', 'AU', 'NZ', 'US', 'CA'] as const
export type Region = (typeof regions)[number]
export type ApplianceClass = 'I' | 'II'

export const regionNames: Readonly<Record<Region, string>> = {
  UK: 'the United Kingdom',
  EU: 'the European Union',
  AU: 'Australia',
  NZ: 'New Zealand',
  US: 'the United States',
  CA: 'Canada',
}

/** Nominal mains, what a plate of the region may say, and frequency. */
export const mains: Readonly<
  Record<
    Region,
    {
      readonly nominalV: number
      readonly lowestPlateV: number
      readonly highestPlateV: number
      readonly frequencyHz: number
    }
  >
> = {
  UK: { nominalV: 230, lowestPlateV: 220, highestPlateV: 250, frequencyHz: 50 },
  EU: { nominalV: 230, lowestPlateV: 220, highestPlateV: 250, frequencyHz: 50 },
  AU: { nominalV: 230, lowestPlateV: 220, highestPlateV: 250, frequencyHz: 50 },
  NZ: { nominalV: 230, lowestPlateV: 220, highestPlateV: 250, frequencyHz: 50 },
  US: { nominalV: 120, lowestPlateV: 110, highestPlateV: 127, frequencyHz: 60 },
  CA: { nominalV: 120, lowestPlateV: 110, highestPlateV: 127, frequencyHz: 60 },
}
