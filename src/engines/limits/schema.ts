import { z } from 'zod'
import { quantityFromText, type Quantity } from '../../base/units.ts'
import { longestLead } from '../../facts/cords.ts'
import { regions } from '../../facts/regions.ts'
import { conductorSizes, sizeNamed } from './sizes.ts'
import { unitOf, type Measurand } from './amount-text.ts'

/** A quantity at the door: a number in the unit of its name, or text with a unit, such as `1400 W`. */
export const quantity = (kind: Quantity) =>
  z.union([z.number(), z.string()]).transform((given, context): number => {
    if (typeof given === 'number') return given
    const read = quantityFromText(given, kind, '')
    if (read.kind === 'ok') return read.value
    for (const { what, mend } of read.problems) context.addIssue({ code: 'custom', message: `${what}. ${mend}` })
    return z.NEVER
  })

export const regionSchema = z.enum(regions)
export const classSchema = z.enum(['I', 'II'])

/** The length of a lead that some appliance could have. */
export const leadLength = quantity('lengthM')
  .refine((m) => m > 0, 'A lead of 0 m is no lead. Measure it from plug to machine')
  .refine((m) => m <= longestLead.lengthM, {
    error: ({ input }) =>
      `No appliance has a lead of ${Number(input)} m (${longestLead.lengthM} m is the most taken here). Write the unit, such as 6 m`,
  })

export const sizeSchema = z.string().transform((name, context) => {
  const size = sizeNamed(name)
  if (size !== undefined) return size
  const known = conductorSizes.map(({ id }) => id).join(', ')
  context.addIssue({ code: 'custom', message: `“${name}” is no size of conductor known here. Use one of ${known}` })
  return z.NEVER
})

export const leadSchema = z.strictObject({ lengthM: leadLength, size: sizeSchema })

export const machineSchema = z.strictObject({
  class: classSchema,
  isPortable: z.boolean().default(true),
  hasElectronicSwitch: z.boolean().default(false),
  hasSurgeSuppressor: z.boolean().default(false),
  massKg: quantity('massKg')
    .refine((kg) => kg > 0, 'A machine’s mass is above zero')
    .nullable()
    .default(null),
})

const quantityKinds: Readonly<Record<ReturnType<typeof unitOf>, Quantity>> = {
  ohm: 'resistanceOhm',
  ampere: 'currentA',
  volt: 'voltageV',
}

/** How a quantity that is measured is written as text. */
export const textQuantity = (measured: Measurand): Quantity => quantityKinds[unitOf(measured)]

/** A value whose unit depends on what is measured: read as text once that is known. */
export const valueSchema = z.union([z.number(), z.string()])

/** Reads a number or text such as `0.28 mA` in the unit of the quantity; reports what is wrong with it. */
export const readValue = (given: number | string, measured: Measurand, report: (message: string) => void): number => {
  if (typeof given === 'number') {
    if (given < 0) report(`${given} is negative. Nothing measured here is below zero`)
    return given
  }
  const read = quantityFromText(given, textQuantity(measured), '')
  if (read.kind === 'ok') return read.value
  for (const { what, mend } of read.problems) report(`${what}. ${mend}`)
  return 0
}
