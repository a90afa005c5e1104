import { z } from 'zod'
import { holeMakes, holeUncertainty } from '../../facts/orifice.ts'
import { airflow, airNetworkSchema, airSchema, diameter, quantity, suction } from './schema.ts'

const id = z.string().min(1)
const name = z.string().min(1)
const length = quantity('lengthM').refine((m) => m >= 0, 'A length is zero or more')
const share = z.number().min(0).max(1)

export const plateSchema = z.strictObject({
  id,
  diameterM: diameter,
  thicknessM: length.default(0),
  edgeRadiusM: length.default(0),
  make: z.enum(Object.keys(holeMakes) as (keyof typeof holeMakes)[]).default('drilled-sheet'),
  diameterUncertaintyM: length.default(holeUncertainty.diameterM),
})

/** How well an instrument reads. `gain` is one factor for all its readings; `step` an amount in Pa, m³/s or a ratio; see facts/gauges.ts. */
export const instrumentSchema = z.strictObject({
  id,
  measures: z.enum(['suction', 'airflow', 'speed']).default('suction'),
  gain: share,
  step: z.number().min(0),
  repeatability: share,
  /** Largest reading in the same unit as `step`; null when it has no end. */
  fullScale: z.number().positive().nullable().default(null),
})

export const logNormalSchema = z.strictObject({ median: z.number().positive(), sigma: z.number().positive() })

/** What a parameter acts on: the loss, area or pressure of a branch; the speed of a fan; the mains where it was not measured. */
const target = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('scale'), branch: id }),
  z.strictObject({ kind: z.literal('speed'), branch: id }),
  z.strictObject({ kind: z.literal('mains') }),
])

export const parameterSchema = z.strictObject({
  id,
  name,
  unit: z.enum(['times', 'mm2']).default('times'),
  target,
  prior: logNormalSchema,
})

export const hypothesisKinds = [
  'sound',
  'leak',
  'blockage',
  'tired-motor',
  'worn-fan',
  'bleed-open',
  'low-mains',
  'several',
] as const

/** An explanation: priors that differ from the sound machine's, and its weight before any reading. */
export const hypothesisSchema = z.strictObject({
  id,
  kind: z.enum(hypothesisKinds),
  name,
  weight: z.number().min(0),
  priors: z.record(z.string(), logNormalSchema),
})

const setup = {
  id,
  name,
  /** Branches taken off: the hose, when the gauge sits on the machine's inlet. */
  removed: z.array(id).default([]),
  /** Plates through which the machine draws, and where. None: sealed. */
  openings: z.array(z.strictObject({ node: id, plate: id })).default([]),
  /** Mains voltage over nominal; null when it was not measured. */
  mainsRatio: z.number().min(0.5).max(1.5).nullable().default(null),
  /** The air of this reading, when it is not that of the network. */
  air: airSchema.nullable().default(null),
  instrument: id,
}

/** Suction at a node against the room, or against another node. */
const suctionAt = { ...setup, measure: z.literal('suction'), node: id, against: id.nullable().default(null) }
/** Airflow through all openings together. */
const airflowIn = { ...setup, measure: z.literal('airflow') }
/** Speed of a fan's motor as a ratio to the sound one's at nominal mains and the same opening. */
const speedOf = { ...setup, measure: z.literal('speed'), branch: id }

/** What was read. Pa for a suction, m³/s for an airflow, a ratio for a speed. */
const reading = z.discriminatedUnion('measure', [
  z.strictObject({ ...suctionAt, value: suction }),
  z.strictObject({ ...airflowIn, value: airflow }),
  z.strictObject({ ...speedOf, value: z.number().positive() }),
])

/** A reading that could be made, and the minutes it takes. */
const minutes = { minutes: z.number().positive().default(1) }
const candidate = z.discriminatedUnion('measure', [
  z.strictObject({ ...suctionAt, ...minutes }),
  z.strictObject({ ...airflowIn, ...minutes }),
  z.strictObject({ ...speedOf, ...minutes }),
])

const place = z.strictObject({ id, name, node: id })

/** The machine when sound, where it may leak, what was read, and what could be read next. */
export const airFitSchema = z.strictObject({
  network: airNetworkSchema,
  /** Places where a leak may be, and bleed valves, each between the room and a node. */
  leaks: z.array(place).default([]),
  bleeds: z.array(place).default([]),
  plates: z.array(plateSchema).default([]),
  instruments: z.array(instrumentSchema).min(1),
  readings: z.array(reading),
  candidates: z.array(candidate).default([]),
  /** What to call branches in answers; their ids otherwise. */
  names: z.record(z.string(), name).default({}),
  /** Priors and explanations; the usual ones from facts/air-faults.ts when left out. */
  parameters: z.array(parameterSchema).optional(),
  hypotheses: z.array(hypothesisSchema).min(1).optional(),
  /** Sampled evidence in place of the Laplace approximation: how many draws for each explanation, and the seed. */
  sampling: z
    .strictObject({ seed: z.number().int(), draws: z.number().int().min(100).max(100_000) })
    .nullable()
    .default(null),
})

export type AirFit = z.output<typeof airFitSchema>
export type Instrument = z.output<typeof instrumentSchema>
export type AirParameter = z.output<typeof parameterSchema>
export type AirHypothesis = z.output<typeof hypothesisSchema>
export type HypothesisKind = AirHypothesis['kind']
export type AirReading = AirFit['readings'][number]
export type AirCandidate = AirFit['candidates'][number]
/** How a machine is set up for a reading, and what is measured. */
export type AirSetup = AirReading | AirCandidate
