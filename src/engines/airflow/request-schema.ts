import { z } from 'zod'
import { heatRatio } from '../../facts/air.ts'
import { airFitSchema, instrumentSchema, plateSchema } from './fit-schema.ts'
import { airNetworkSchema, airSchema, diameter, quantity, standardRoom, suction } from './schema.ts'

const plateReading = z.strictObject({ plate: z.string().min(1), suctionPa: suction })

const session = z.strictObject({
  air: airSchema.default(standardRoom),
  mainsRatio: z.number().min(0.5).max(1.5).nullable().default(null),
  readings: z
    .array(z.strictObject({ plate: z.string().min(1).nullable(), suctionPa: suction, instrument: z.string().min(1) }))
    .min(1),
})

const pressure = quantity('pressurePa').refine((pa) => pa > 0, 'A pressure against vacuum is above zero')

/** What to find out about air. Quantities are numbers in the unit of their name, or text with a unit. */
export const airflowRequestSchema = z.strictObject({
  format: z.literal('thrum-airflow-1'),
  do: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('density'), air: airSchema }),
    z.strictObject({
      kind: z.literal('plate'),
      plate: plateSchema,
      suctionPa: suction,
      air: airSchema.default(standardRoom),
    }),
    z.strictObject({
      kind: z.literal('meter-run'),
      pipeM: diameter,
      holeM: diameter,
      taps: z.enum(['corner', 'flange', 'd-and-half-d']),
      upstreamPa: pressure,
      differentialPa: pressure,
      densityKgPerM3: z.number().positive(),
      viscosityPaS: z.number().positive(),
      kappa: z.number().min(1).default(heatRatio.value),
    }),
    z.strictObject({ kind: z.literal('solve'), network: airNetworkSchema }),
    z.strictObject({
      kind: z.literal('air-power'),
      air: airSchema.default(standardRoom),
      /** Mains voltage over nominal; null when it was not measured. */
      mainsRatio: z.number().min(0.5).max(1.5).nullable().default(null),
      plates: z.array(plateSchema).min(1),
      readings: z.array(plateReading).min(1),
    }),
    z.strictObject({
      kind: z.literal('american-air-power'),
      diameterIn: z.number().positive(),
      suctionInH2O: z.number().min(0).max(220),
      barometerInHg: z.number().min(15).max(34),
      dryBulbF: z.number().min(-20).max(140),
      wetBulbF: z.number().min(-20).max(140),
    }),
    z.strictObject({ kind: z.literal('explain'), ...airFitSchema.shape }),
    z.strictObject({
      kind: z.literal('before-after'),
      plates: z.array(plateSchema).default([]),
      instruments: z.array(instrumentSchema).min(1),
      before: session,
      after: session,
      seed: z.number().int().default(1),
    }),
  ]),
})

export type AirflowRequest = z.output<typeof airflowRequestSchema>
