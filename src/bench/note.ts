import { z } from 'zod'
import { editsSchema } from '../blueprint/adapt-edits.ts'
import { conditionIds } from '../facts/buying.ts'
import { grades } from '../facts/asking.ts'
import { complaintIds } from '../facts/complaints.ts'
import { sourceIds } from '../facts/where-from.ts'
import { repairBarriers } from '../facts/open-repair-data.ts'
import { wearLevels } from '../facts/age-and-wear.ts'
import { gaugeReadingSchema } from '../machine/air/gauge-reading.ts'
import { answersSchema, claimsSchema } from '../machine/buying/advert.ts'
import { cleanedSchema, driedSchema, gradedSchema } from './cleaning/clean-note.ts'
import { triedSchema } from './functions/tried-note.ts'
import { photoNoteSchema } from './photos/photo-note.ts'
import { cameraSchema, wordedSchema } from './sale/worded-note.ts'
import { coverFixings, coverFixingsBack, putInSchema, takenOutSchema } from './stripping/strip-note.ts'
import { findingSchema, provedLeadSchema, rulesSchema } from '../machine/proof/finding.ts'
import { plateSchema } from '../machine/plate.ts'
import { resultSchema } from '../machine/result.ts'
import { markReadingSchema } from '../machine/stamps/stamp.ts'

const id = z.string().min(1).max(120)
const words = z.string().trim().min(1).max(2000)
const minutes = z.number().min(0).max(10_000)
const minor = z.number().int().min(0).max(100_000_000)
const complaint = z.enum(complaintIds)
const ageYears = z.number().min(0, 'an age is 0 to 120 years').max(120, 'an age is 0 to 120 years')

/** The things that can be written about a machine. Nothing is ever erased; a slip is struck out by a later note. */
export const noteContentSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('added'),
    name: words,
    blueprint: id,
    plate: plateSchema,
    paidMinor: minor,
    currency: z.enum(['GBP', 'EUR', 'USD', 'AUD', 'CAD', 'NZD']),
    complaints: z.array(complaint).default([]),
    /** What the seller said, in the seller's words. */
    claim: z.string().trim().max(2000).default(''),
    /** What else the seller claimed, and answered before it was bought. */
    claims: claimsSchema.optional(),
    answers: answersSchema.optional(),
    /** Part ids of the blueprint that are not there. */
    missing: z.array(id).default([]),
    /** How it looks for its age; takes a share off the blueprint's prices. */
    condition: z.enum(conditionIds).optional(),
    /** What an hour of one's own time is worth; the bench fills it in from the settings when it is left out. */
    hourMinor: minor.optional(),
    /** Years since it was made, and how hard it was used; left out where nobody knows. */
    ageYears: ageYears.optional(),
    wear: z.enum(wearLevels).optional(),
    /** The model as it stands on the plate, in one's own words; machines of one model share their prices. */
    model: z.string().trim().max(120).optional(),
    /** The make as it stands on the machine; given out with open repair data. */
    make: z.string().trim().max(120).optional(),
    /** Where it came from, and the advert that was weighed before. */
    source: z.enum(sourceIds).optional(),
    advert: id.optional(),
    /** What fetching it took. */
    travelMinor: minor.optional(),
    travelMin: minutes.optional(),
    /** Set on a virtual machine: the seed that hides its fault. */
    practiceSeed: z.number().int().min(0).max(0xffffffff).optional(),
  }),
  z.strictObject({
    kind: z.literal('seen'),
    complaints: z.array(complaint).default([]),
    text: z.string().trim().max(2000).default(''),
  }),
  z.strictObject({
    kind: z.literal('reading'),
    check: id,
    result: resultSchema,
    instrument: id.default('budget-multimeter'),
    minutes,
  }),
  /** What a gauge showed of the air while the machine ran. */
  z.strictObject({ kind: z.literal('gauge'), reading: gaugeReadingSchema, minutes: minutes.default(1) }),
  /** By which rules it is proved safe from here on, and the lead it has; a lead left out stays as it was. */
  z.strictObject({ kind: z.literal('rules'), rules: rulesSchema, lead: provedLeadSchema.optional() }),
  /** What was found in one of the checks after repair. */
  z.strictObject({ kind: z.literal('proof'), finding: findingSchema, minutes: minutes.default(0) }),
  z.strictObject({ kind: z.literal('opened'), cover: id, minutes, ...coverFixings }),
  z.strictObject({ kind: z.literal('closed'), cover: id, minutes, ...coverFixingsBack }),
  z.strictObject({ kind: z.literal('confirmed'), fault: id, text: z.string().trim().max(2000).default('') }),
  z.strictObject({
    kind: z.literal('repaired'),
    repair: id,
    option: id,
    minutes,
    costMinor: minor,
    /** The part of the shelf that went in; `costMinor` is then what it stood there at. */
    shelfPart: id.optional(),
    text: z.string().trim().max(2000).default(''),
  }),
  /** A part taken off it and put on the shelf, with its share of what the machine has cost. */
  z.strictObject({
    kind: z.literal('took-off'),
    part: id,
    shelfPart: id,
    costMinor: minor,
    minutes: minutes.default(0),
  }),
  z.strictObject({ kind: z.literal('spent'), costMinor: minor, minutes: minutes.default(0), text: words }),
  z.strictObject({ kind: z.literal('said'), text: words }),
  z.strictObject({ kind: z.literal('struck'), note: id, reason: z.string().trim().max(2000).default('') }),
  /** From here on the machine is read by this blueprint. `edits`: in what it differs from the one before, for the log. */
  z.strictObject({ kind: z.literal('described-by'), blueprint: id, edits: editsSchema.default([]) }),
  /** What came to be known of its age, use and make; what is left out stays as it was. */
  z.strictObject({
    kind: z.literal('history'),
    ageYears: ageYears.optional(),
    wear: z.enum(wearLevels).optional(),
    make: z.string().trim().min(1).max(120).optional(),
  }),
  /** What the plan reckons with for this machine from here on, minor units; what is left out stays as it was. */
  z.strictObject({
    kind: z.literal('valued'),
    hourMinor: minor.optional(),
    /** Cleaned and working; as it stands, for spares or repair; single parts. */
    workingMinor: minor.optional(),
    sparesMinor: minor.optional(),
    parts: z.array(z.strictObject({ part: id, priceMinor: minor })).default([]),
    text: z.string().trim().max(2000).default(''),
  }),
  photoNoteSchema,
  takenOutSchema,
  putInSchema,
  cleanedSchema,
  driedSchema,
  gradedSchema,
  triedSchema,
  wordedSchema,
  cameraSchema,
  /** It is offered at this price from here on; a later one takes its place. */
  z.strictObject({
    kind: z.literal('listed'),
    priceMinor: minor.min(1, 'a price is above zero'),
    where: z.string().trim().max(2000).default(''),
    /** The grade of its looks. */
    grade: z.enum(grades).default('B'),
  }),
  /** A date mark read off a part: a moulded stamp, the serial number, or what plate and plug show. */
  z.strictObject({
    kind: z.literal('stamp'),
    part: id,
    reading: markReadingSchema,
    text: z.string().trim().max(2000).default(''),
  }),
  z.strictObject({
    kind: z.literal('left'),
    exit: z.enum(['sell-working', 'sell-for-spares', 'break-for-parts', 'scrap']),
    receivedMinor: minor,
    /** Taken off what was received: the fee of selling it, and postage paid by oneself. */
    feeMinor: minor.optional(),
    postageMinor: minor.optional(),
    minutes: minutes.default(0),
    /** For "sell working": who made the safety checks after the repair, with what, or why it is sold without. */
    safety: z.string().trim().max(2000).default(''),
    /** For one broken or scrapped: what stood in the way of mending it, in the words of the open repair data. */
    barrier: z.enum(repairBarriers).optional(),
  }),
  /** The buyer brought it back: money given back, and it is in hand again. */
  z.strictObject({
    kind: z.literal('came-back'),
    refundMinor: minor,
    minutes: minutes.default(0),
    text: z.string().trim().max(2000).default(''),
  }),
])

/** One dated entry in a machine's log. */
export const noteSchema = z.strictObject({
  id,
  machine: id,
  /** Place in the machine's log, from 1. */
  seq: z.number().int().min(1),
  /** When it was made, ISO 8601 in UTC. */
  at: z.iso.datetime(),
  /** Who wrote it, where people have names. */
  by: id.optional(),
  content: noteContentSchema,
})

/** A whole set of bench notes, as exported and imported. */
export const benchNotesSchema = z.strictObject({ format: z.literal('thrum-notes-1'), notes: z.array(noteSchema) })

export type NoteContent = z.infer<typeof noteContentSchema>
export type NoteContentInput = z.input<typeof noteContentSchema>
export type Note = z.infer<typeof noteSchema>
