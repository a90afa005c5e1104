import { z } from 'zod'
import { airQuantityFromText, type AirQuantity } from '../../base/air-units.ts'
import { standardAir } from '../../facts/air.ts'
import { freeHole } from '../../facts/orifice.ts'
import { strongestSuction } from '../../facts/suction-classes.ts'

/** A quantity at the door: a number in the SI unit of its name, or text with a unit, such as `78 inH2O`. */
export const quantity = (kind: AirQuantity) =>
  z.union([z.number(), z.string()]).transform((given, context): number => {
    if (typeof given === 'number') return given
    const read = airQuantityFromText(given, kind, '')
    if (read.kind === 'ok') return read.value
    for (const { what, mend } of read.problems) context.addIssue({ code: 'custom', message: `${what}. ${mend}` })
    return z.NEVER
  })

const kPa = (pressurePa: number): string => `${(pressurePa / 1000).toFixed(1)} kPa`

/** A suction that some fan could give. */
export const suction = quantity('pressurePa')
  .refine((pa) => pa >= 0, 'A suction is below the room’s pressure; write it as a positive number')
  .refine((pa) => pa <= strongestSuction.pressurePa, {
    error: ({ input }) =>
      `${kPa(Number(input))} is more than the fan of any vacuum cleaner gives (${kPa(strongestSuction.pressurePa)}). Check the unit`,
  })

/** Above this a hole is no test hole, and a length in mm was probably given as metres. */
const widestM = 0.3
export const diameter = quantity('lengthM')
  .refine((m) => m > 0, 'A hole of 0 mm lets nothing through. Leave the hole out if the place is sealed')
  .refine((m) => m < widestM, {
    error: ({ input }) => `A hole ${Number(input)} m wide is none of a vacuum cleaner. Write the unit, such as 19 mm`,
  })

const positive = (kind: AirQuantity, what: string) =>
  quantity(kind).refine((value) => value > 0, `${what} is above zero`)

export const airflow = quantity('airflowM3PerS').refine((value) => value >= 0, 'An airflow is zero or more')

/** Air as found with barometer, thermometer and hygrometer, or as already worked out. */
export const airSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('room'),
    barometerPa: quantity('pressurePa').refine(
      (pa) => pa >= 50_000 && pa <= 115_000,
      'A barometer at the bench reads 500 to 1150 mbar. Give the station’s own pressure, not one below the room’s',
    ),
    temperatureC: quantity('temperatureC').refine((c) => c > -30 && c < 60, 'A bench is between −30 and 60 °C'),
    relativeHumidity: z
      .number()
      .min(0, 'Humidity is a share from 0 to 1')
      .max(1, 'Humidity is a share from 0 to 1')
      .default(0.5),
  }),
  z.strictObject({
    kind: z.literal('given'),
    pressurePa: positive('pressurePa', 'The pressure of the room'),
    densityKgPerM3: z.number().positive(),
  }),
])

export const standardRoom = {
  kind: 'given',
  pressurePa: standardAir.pressurePa,
  densityKgPerM3: standardAir.densityKgPerM3,
} as const

const id = z.string().min(1)
/** The room is the node called `room`. */
const node = z.string().min(1)
const ends = { id, from: node, to: node }
const coefficient = z.number().min(0, 'A loss is zero or more')

/** Pressure lost, from `from` to `to`: linear · q + quadratic · q², q as air of the room, coefficients for standard air. */
const loss = z.strictObject({
  kind: z.literal('loss'),
  ...ends,
  linearPaSPerM3: coefficient.default(0),
  quadraticPaS2PerM6: coefficient.default(0),
})

/** A sharp-edged opening: a leak, a bleed valve, a nozzle. */
const hole = z.strictObject({
  kind: z.literal('hole'),
  ...ends,
  areaM2: positive('areaM2', 'The area of a hole'),
  discharge: z.number().min(0.3).max(1).default(freeHole.discharge),
})

const curve = z.discriminatedUnion('kind', [
  /** Suction = sealed · (1 − (flow/open)^exponent). */
  z.strictObject({
    kind: z.literal('power'),
    sealedPa: suction.refine((pa) => pa > 0, 'The suction of a sealed fan is above zero'),
    openM3PerS: positive('airflowM3PerS', 'The open airflow of a fan'),
    exponent: z.number().min(1).max(3).default(1),
  }),
  z.strictObject({
    kind: z.literal('points'),
    points: z.array(z.strictObject({ airflowM3PerS: airflow, suctionPa: suction })).min(2),
  }),
])

/** Draws from `from`, its inlet, and blows into `to`. */
const fan = z.strictObject({
  kind: z.literal('fan'),
  ...ends,
  curve,
  /** Density of the air in which the curve was taken. */
  densityKgPerM3: z.number().positive().default(standardAir.densityKgPerM3),
  /** Whether the curve's airflow is counted as air of the room, as air data are, or as it enters the fan. */
  airflowAs: z.enum(['room', 'inlet']).default('room'),
  speed: z.number().positive().default(1),
  pressure: z.number().positive().default(1),
})

export const branchSchema = z.discriminatedUnion('kind', [loss, hole, fan])

export const airNetworkSchema = z.strictObject({
  air: airSchema.default(standardRoom),
  /** Whether losses grow as the air thins on its way to the fan, or are taken as in the room. */
  losses: z.enum(['local-density', 'room-density']).default('local-density'),
  branches: z.array(branchSchema).min(1),
})

export type AirSpec = z.output<typeof airSchema>
export type AirBranch = z.output<typeof branchSchema>
export type FanCurve = z.output<typeof curve>
export type AirNetwork = z.output<typeof airNetworkSchema>
