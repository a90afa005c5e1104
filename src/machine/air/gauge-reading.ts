import { z } from 'zod'
import { holeMakes } from '../../facts/orifice.ts'

const id = z.string().min(1).max(120)
const widestM = 0.3
const plateWords = 'a plate is 0 to 100 mm thick'
const edgeWords = 'an edge is rounded by 0 to 50 mm'
const toneWords = 'a tone one can hear is above 0 and up to 30,000 Hz'
const mainsWords = 'mains at the bench are 60 to 300 V'
const wattsWords = 'a vacuum cleaner takes above 0 and up to 5000 W'
const suctionWords = 'a suction is below the room’s pressure: write it as a positive number'
const flowWords = 'the airflow of a vacuum cleaner is 0 to 1000 L/s'
const humidityWords = 'humidity is 0 to 100 %'

/** What the machine breathes through in the rig. `open`: nothing on the end of the hose or inlet. */
const openingSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('sealed') }),
  z.strictObject({ kind: z.literal('open') }),
  z.strictObject({
    kind: z.literal('hole'),
    diameterM: z.number().positive('a hole is wider than 0 mm').max(widestM, 'a test hole is at most 300 mm wide'),
    thicknessM: z.number().min(0, plateWords).max(0.1, plateWords).default(0.001),
    edgeRadiusM: z.number().min(0, edgeWords).max(0.05, edgeWords).default(0),
    make: z.enum(Object.keys(holeMakes) as (keyof typeof holeMakes)[]).default('drilled-sheet'),
  }),
])

/** What was read: suction below the room, airflow through the opening, or the pitch of the motor beside that of a sound one. */
const readSchema = z.discriminatedUnion('measure', [
  z.strictObject({ measure: z.literal('suction'), suctionPa: z.number().min(0, suctionWords) }),
  z.strictObject({ measure: z.literal('airflow'), airflowM3PerS: z.number().min(0, flowWords).max(1, flowWords) }),
  z.strictObject({
    measure: z.literal('tone'),
    toneHz: z.number().positive(toneWords).max(30_000, toneWords),
    soundHz: z.number().positive(toneWords).max(30_000, toneWords),
  }),
])

/** The air of the shed, where it was looked at. */
const roomSchema = z.strictObject({
  barometerPa: z
    .number()
    .min(50_000, 'a barometer at the bench reads 500 to 1150 mbar')
    .max(115_000, 'a barometer at the bench reads 500 to 1150 mbar'),
  temperatureC: z.number().min(-30, 'a bench is between −30 and 60 °C').max(60, 'a bench is between −30 and 60 °C'),
  relativeHumidity: z.number().min(0, humidityWords).max(1, humidityWords).default(0.5),
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
  mainsV: z.number().min(60, mainsWords).max(300, mainsWords).optional(),
  /** Input power on the power meter meanwhile. */
  inputW: z.number().positive(wattsWords).max(5000, wattsWords).optional(),
  room: roomSchema.optional(),
})

export type GaugeReading = z.infer<typeof gaugeReadingSchema>
export type GaugeOpening = GaugeReading['opening']
