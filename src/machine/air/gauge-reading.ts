import { z } from 'zod'
import { holeMakes } from '../../facts/orifice.ts'

const id = z.string().min(1).max(120)
const widestM = 0.3

/** What the machine breathes through in the rig. `open`: nothing on the end of the hose or inlet. */
const openingSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sealed') }),
  z.strictObject({ kind: z.literal('open') }),
  z.strictObject({
    kind: z.literal('hole'),
    diameterM: z.number().positive('a hole is wider than 0 mm').max(widestM, 'a test hole is at most 300 mm wide'),
    thicknessM: z.number().min(0).max(0.1).default(0.001),
    edgeRadiusM: z.number().min(0).max(0.05).default(0),
    make: z.enum(Object.keys(holeMakes) as (keyof typeof holeMakes)[]).default('drilled-sheet'),
  }),
])

/** What was read: suction below the room, airflow through the opening, or the pitch of the motor beside that of a sound one. */
const readSchema = z.discriminatedUnion('measure', [
  z.strictObject({ measure: z.literal('suction'), suctionPa: z.number().min(0) }),
  z.strictObject({ measure: z.literal('airflow'), airflowM3PerS: z.number().min(0).max(1) }),
  z.strictObject({
    measure: z.literal('tone'),
    toneHz: z.number().positive().max(30_000),
    soundHz: z.number().positive().max(30_000),
  }),
])

/** The air of the shed, where it was looked at. */
const roomSchema = z.strictObject({
  barometerPa: z
    .number()
    .min(50_000, 'a barometer at the bench reads 500 to 1150 mbar')
    .max(115_000, 'a barometer at the bench reads 500 to 1150 mbar'),
  temperatureC: z.number().min(-30, 'a bench is between −30 and 60 °C').max(60, 'a bench is between −30 and 60 °C'),
  relativeHumidity: z.number().min(0).max(1).default(0.5),
})

/** One reading with a gauge on the running machine: where the rig sits, what it breathes through, and what the gauge showed. */
export const gaugeReadingSchema = z.strictObject({
  /** A way in of the blueprint. */
  way: id,
  opening: openingSchema,
  /** The gauge taps the path before this part; left out, it taps the rig itself. */
  tapBefore: id.optional(),
  /** Parts left out of the path: a bag, a filter. */
  out: z.array(id).max(10).default([]),
  read: readSchema,
  instrument: id,
  mainsV: z.number().min(60).max(300).optional(),
  /** Input power on the power meter meanwhile. */
  inputW: z.number().positive().max(5000).optional(),
  room: roomSchema.optional(),
})

export type GaugeReading = z.infer<typeof gaugeReadingSchema>
export type GaugeOpening = GaugeReading['opening']
