import { z } from 'zod'
import { sourceSchema } from '../base/source.ts'
import { complaintIds } from '../facts/complaints.ts'
import { priceClassIds } from '../facts/sale-prices.ts'
import { airEffectSchema, airSectionSchema, airWaySchema } from './air-schema.ts'
import { signQuestionIds } from './signs.ts'

const id = z.string().regex(/^[a-z0-9]+([.-][a-z0-9]+)*$/, 'an id is lower-case words joined by . or -')
const text = z.string().min(1)
const probability = z.number().min(0).max(1)
const positive = z.number().positive()
const notNegative = z.number().min(0)
const minor = z.number().int().min(0)
/** A range that holds about nine cases in ten. */
const range = z
  .strictObject({ low: minor, high: minor })
  .refine((r) => r.low <= r.high, 'low must not be above high. Write the smaller one as low')
/** Place on the drawing: x to the right, y down, in steps of the drawing's grid. */
const place = z.tuple([z.number(), z.number()])

/** A place where a probe can be put. `behind`: the cover that must be off to reach it. */
export const pointSchema = z.strictObject({ id, name: text, at: place, behind: id.optional() })

/** Something that can be faulty, replaced or salvaged. */
export const partSchema = z.strictObject({
  id,
  name: text,
  does: text,
  group: z.enum(['electrical', 'air', 'mechanical', 'control']),
  behind: id.optional(),
  /** The part it is sold with as a spare: brushes go with their motor. A fault in it makes that spare unsound too. */
  within: id.optional(),
  /** What the air meets in it, where it is a part of the air path. */
  air: airSectionSchema.optional(),
  /** What it fetches as a tested spare. */
  spareMinor: range.optional(),
  /** What is worth knowing of it on this kind of machine. */
  note: text.optional(),
})

/** A switch or sensor and the positions that a person can put it in. The first position is the one at rest. */
export const controlSchema = z.strictObject({ id, name: text, positions: z.array(text).min(2) })

const element = { id, part: id, from: id, to: id }
/** Spread of the healthy value between machines: standard deviation of its natural logarithm. */
const spread = notNegative.default(0.1)
export const circuitElementSchema = z.discriminatedUnion('kind', [
  /** A conductor; its resistance follows from length and cross-section (IEC 60228). */
  z.strictObject({
    kind: z.literal('wire'),
    ...element,
    lengthM: positive,
    areaMm2: positive,
    spread: notNegative.default(0.06),
  }),
  z.strictObject({ kind: z.literal('resistor'), ...element, resistanceOhm: notNegative, spread }),
  /** A contact: closed in the named positions of a control. */
  z.strictObject({
    kind: z.literal('contact'),
    ...element,
    contactOhm: notNegative,
    spread: notNegative.default(0.5),
    closedWhen: z.strictObject({ control: id, positions: z.array(text).min(1) }),
  }),
  /** A cartridge fuse; cold resistance follows from its rating. */
  z.strictObject({ kind: z.literal('fuse'), ...element, ratingA: positive, spread: notNegative.default(0.3) }),
  z.strictObject({ kind: z.literal('capacitor'), ...element, capacitanceF: positive, spread }),
  z.strictObject({
    kind: z.literal('inductor'),
    ...element,
    inductanceH: positive,
    resistanceOhm: notNegative,
    spread,
  }),
  /** A brushed motor on the mains. Winding resistance and running current follow from its input power and the plate's voltage. */
  z.strictObject({
    kind: z.literal('motor'),
    ...element,
    power: z.union([z.strictObject({ shareOfPlate: probability }), z.strictObject({ powerW: positive })]),
  }),
  /** An electronic switch. `offOhm`: what a meter sees through it when it is not driven. */
  z.strictObject({ kind: z.literal('triac'), ...element, onOhm: notNegative, offOhm: positive.nullable(), spread }),
  /** A path that is not there in a healthy machine; faults bring it in. */
  z.strictObject({ kind: z.literal('stray'), ...element }),
])

/** What a fault does to one element of the circuit. */
const electricalEffect = z.strictObject({
  element: id,
  becomes: z.union([
    z.literal('open'),
    z.literal('short'),
    /** This many ohms instead of its own. */
    z.strictObject({ ohm: notNegative, spread: notNegative.default(0.5) }),
    /** This many ohms on top of its own. */
    z.strictObject({ plusOhm: positive, spread: notNegative.default(0.5) }),
    /** This multiple of its own resistance. */
    z.strictObject({ timesOhm: positive, spread: notNegative.default(0.2) }),
  ]),
})

/** How often: figures from which the rate is fitted, each with where it comes from. */
const rateBasis = z.strictObject({
  /** Component of the open repair data, and the share of that component's cases that are this fault. */
  component: z.strictObject({ id, share: probability }).optional(),
  /** Cases in a hundred machines bought as faulty, by the trade's judgement. */
  perHundred: notNegative,
  source: sourceSchema,
})

export const faultSchema = z.strictObject({
  id,
  part: id,
  name: text,
  /** How it comes about or looks. */
  how: text,
  rate: rateBasis,
  /** What it does to the circuit. */
  electrical: z.array(electricalEffect).default([]),
  /** What it does to the air. */
  air: airEffectSchema.optional(),
  /** The effect comes and goes when the part is moved; `badShare` is the share of time it is there at rest. */
  comesAndGoes: z.strictObject({ badShare: probability }).optional(),
  /** Probability that an owner complains of this when this fault is there (and the machine runs at all, for those that need it). */
  complaints: z.partialRecord(z.enum(complaintIds), probability).default({}),
  /** Set when the machine must not be run while this is suspected from a failed check or confirmed; says why. */
  danger: text.optional(),
  /** Faults that cannot be there at the same time (of the same element, mostly). */
  excludes: z.array(id).default([]),
  /**
   * What the machine is worth working with this fault left in, as a share of the full price: 1 for a blemish, 0 for one that
   * comes straight back. Counted after the cleaning, new bag and new filters that go with every sale of a working machine.
   */
  saleShareIfLeft: probability.default(0),
})

export const coverSchema = z.strictObject({
  id,
  name: text,
  openMin: notNegative,
  closeMin: notNegative,
  after: z.array(id).default([]),
  fixings: z.array(z.strictObject({ count: z.number().int().positive(), kind: text })).default([]),
  hint: text.optional(),
})

const outcomes = z.partialRecord(z.string(), probability)

const commonCheck = {
  id,
  name: text,
  /** What to do, in plain words. */
  how: text,
  minutes: notNegative,
  costMinor: minor.default(0),
  /** Covers that must be off, besides those that the probe points are behind. */
  coversOff: z.array(id).default([]),
  cannotTell: probability.default(0.03),
  /** Must have passed before anything is run. */
  beforeRunning: z.boolean().default(false),
  caution: text.optional(),
  /** Every cover must be on for it, though nothing is run. */
  coversOn: z.boolean().default(false),
}

/** An ohmmeter between two points, plug out. */
export const meterCheckSchema = z.strictObject({
  kind: z.literal('meter'),
  ...commonCheck,
  red: id,
  black: id,
  /** Positions of the controls; those not named are at rest. */
  controls: z.record(id, text).default({}),
  /** Elements to be unplugged first, so that the meter sees one path. */
  unplug: z.array(id).default([]),
  /** Parts bent, pressed or turned while the meter is watched. */
  moving: z.array(id).default([]),
  /** The check before running passes when the reading is at or above this; `open` passes too. */
  passesAtLeastOhm: positive.optional(),
  /** The check before running passes when the reading is at or below this. */
  passesAtMostOhm: positive.optional(),
})

const grade = z.strictObject({
  id,
  name: text,
  /** Seeing this means danger: nothing is run until it is mended. */
  danger: z.boolean().default(false),
})

/**
 * A check that is read as a number: it stands for an outcome by its share of the rating plate's power.
 * `order`: every outcome once, from the lowest number to the highest; `edges`: the shares between them, ascending.
 */
const scale = z.strictObject({
  unit: z.literal('W'),
  ofPlate: z.literal(true),
  order: z.array(id).min(2),
  edges: z.array(positive).min(1),
  /** What is to be typed. */
  asks: text.default('The power meter shows'),
})

/** A check with graded outcomes, from good to bad; what is worst decides when several faults are there. */
export const gradedCheckSchema = z.strictObject({
  kind: z.enum(['look', 'run', 'air']),
  ...commonCheck,
  /** From good to bad; the first is what a sound machine shows. */
  outcomes: z.array(grade).min(2),
  /** Probability of each outcome on a sound machine. */
  sound: outcomes,
  /** Probability of each outcome when this fault is there; faults not named show what a sound machine shows. */
  under: z.record(id, outcomes),
  /** For a run or air check: positions of the controls. */
  controls: z.record(id, text).default({}),
  /** The motor element that must be driven for this check to show anything, and the outcome when it is not. */
  driven: z.strictObject({ element: id, otherwise: id }).optional(),
  /** The outcome when the supply's protection or the plug fuse goes. */
  whenTrips: id.optional(),
  /** The short first run: after work on anything electrical, all other running waits until it has passed. */
  firstRun: z.boolean().default(false),
  /** Read as a number of watts. */
  scale: scale.optional(),
  /** Passing this check (its first outcome) shows that the machine works. */
  provesWorking: z.boolean().default(false),
})

export const checkSchema = z.discriminatedUnion('kind', [meterCheckSchema, gradedCheckSchema])

export const repairSchema = z.strictObject({
  id,
  name: text,
  part: id,
  removes: z.array(id).min(1),
  coversOff: z.array(id).default([]),
  options: z
    .array(
      z.strictObject({
        id: z.enum(['new', 'salvaged', 'refit', 'clean', 'adjust']),
        name: text,
        minutes: notNegative,
        costMinor: range,
        /** Probability that it removes the fault. */
        success: probability,
        /** Probability of breaking something on the way. */
        breakRisk: probability,
      }),
    )
    .min(1),
  note: text.optional(),
  /** A tempting short cut that is not offered, with the reason. */
  forbidden: text.optional(),
})

export const blueprintSchema = z.strictObject({
  format: z.literal('thrum-blueprint-1'),
  id,
  name: text,
  summary: text,
  /** How to know one when it stands before you. */
  recognise: z.array(text).min(1),
  /** The answers that fit, to each question that can be answered by looking; a question left out is answered by any. */
  signs: z.partialRecord(z.enum(signQuestionIds), z.array(id).min(1)).default({}),
  plate: z.strictObject({
    voltageV: positive,
    frequencyHz: positive,
    powerW: positive,
    protectionClass: z.enum(['I', 'II']),
    massKg: positive.optional(),
  }),
  /** `earth`: the earth pin of a class I machine. */
  supply: z.strictObject({ line: id, neutral: id, earth: id.optional() }),
  points: z.array(pointSchema).min(2),
  parts: z.array(partSchema).min(1),
  controls: z.array(controlSchema).default([]),
  circuit: z.array(circuitElementSchema).min(1),
  /** The air path from the floor to the outlet: part ids in the order the air meets them. */
  airPath: z.array(id).default([]),
  /** Where a gauge rig can be fitted, the usual place first. */
  airWays: z.array(airWaySchema).default([]),
  covers: z.array(coverSchema).default([]),
  faults: z.array(faultSchema).min(1),
  checks: z.array(checkSchema).min(1),
  repairs: z.array(repairSchema).min(1),
  worth: z.strictObject({
    /** Cleaned, working, with its tools. */
    workingMinor: range,
    /** As it stands, sold for spares or repair. */
    sparesMinor: range,
    /** Which sales it is compared with: the class of machine, and its architecture among those of the class. Variants keep both. */
    priceClass: z.enum(priceClassIds).optional(),
    priceKind: id.optional(),
    source: sourceSchema,
  }),
})

export type Blueprint = z.infer<typeof blueprintSchema>
export type BlueprintInput = z.input<typeof blueprintSchema>
export type Point = z.infer<typeof pointSchema>
export type CircuitElement = z.infer<typeof circuitElementSchema>
export type Fault = z.infer<typeof faultSchema>
export type Cover = z.infer<typeof coverSchema>
export type Check = z.infer<typeof checkSchema>
export type MeterCheck = z.infer<typeof meterCheckSchema>
export type GradedCheck = z.infer<typeof gradedCheckSchema>
export type Repair = z.infer<typeof repairSchema>
