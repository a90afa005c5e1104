import { z } from '@hono/zod-openapi'
import { currencies, type Currency } from '../base/money.ts'
import type { Problem } from '../base/problem.ts'
import type { BenchId, MachineDocument, MachineList, MachineState, NoteLine } from '../bench/contract.ts'
import { noteContentSchema, noteSchema } from '../bench/note.ts'
import { featureIds, type BlueprintEntry } from '../blueprint/entry.ts'
import { blueprintSchema } from '../blueprint/schema.ts'
import { grades } from '../facts/asking.ts'
import { complaintIds } from '../facts/complaints.ts'
import { repairBarriers } from '../facts/open-repair-data.ts'
import { wearLevels } from '../facts/age-and-wear.ts'
import { sourceIds } from '../facts/where-from.ts'
import { plateSchema } from '../machine/plate.ts'
import { rulesSchema } from '../machine/proof/finding.ts'
import { markReadingSchema } from '../machine/stamps/stamp.ts'
import type { ExitId } from '../machine/view.ts'

/** What the API takes and gives, for its document. Each is checked against the type that the program uses. */
const id = z.string().min(1).max(120)
const minor = z.number().int()
const complaint = z.enum(complaintIds)
const exit: z.ZodType<ExitId> = z.enum(['sell-working', 'sell-for-spares', 'break-for-parts', 'scrap'])

const setPrice = z.strictObject({ minor, at: z.string() })

export const benchSchema = z.enum(['own', 'demo']) satisfies z.ZodType<BenchId>

const problemSchema = z
  .strictObject({ code: z.string(), what: z.string(), where: z.string(), mend: z.string() })
  .openapi('Problem') satisfies z.ZodType<Problem>

export const problemsSchema = z.strictObject({ problems: z.array(problemSchema).readonly() }).openapi('Problems')

const machineStateSchema = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    blueprint: z.string(),
    plate: plateSchema,
    currency: z.enum(currencies as readonly [Currency, ...Currency[]]),
    hourMinor: minor,
    hourSetAt: z.string(),
    prices: z.strictObject({
      working: setPrice.nullable(),
      spares: setPrice.nullable(),
      parts: z.record(z.string(), setPrice),
    }),
    practiceSeed: z.number().int().nullable(),
    ageYears: z.number().nullable(),
    wear: z.enum(wearLevels).nullable(),
    marks: z.array(z.strictObject({ note: z.string(), part: z.string(), reading: markReadingSchema })),
    rules: rulesSchema.nullable(),
    lead: z.strictObject({ size: z.string(), lengthM: z.number() }).nullable(),
    version: z.number().int(),
    addedAt: z.string(),
    claimed: z.strictObject({ complaints: z.array(complaint), words: z.string() }),
    seen: z.array(z.strictObject({ note: z.string(), complaints: z.array(complaint), text: z.string() })),
    confirmed: z.array(z.strictObject({ note: z.string(), fault: z.string() })),
    fixed: z.array(z.strictObject({ note: z.string(), repair: z.string(), option: z.string() })),
    missing: z.array(z.string()),
    off: z.array(z.string()),
    out: z.array(z.string()),
    drying: z.array(
      z.strictObject({
        note: z.string(),
        task: z.string(),
        part: z.string().nullable(),
        from: z.string(),
        readyAt: z.string(),
      }),
    ),
    struck: z.array(z.string()),
    model: z.string(),
    make: z.string().optional(),
    source: z.enum(sourceIds).nullable(),
    advert: z.string().nullable(),
    paidMinor: minor,
    spentMinor: minor,
    toShelfMinor: minor,
    receivedMinor: minor,
    feesMinor: minor,
    minutes: z.number(),
    listed: z.array(
      z.strictObject({
        note: z.string(),
        priceMinor: minor,
        where: z.string(),
        grade: z.enum(grades),
        from: z.string(),
        to: z.string().nullable(),
        sold: z.boolean(),
      }),
    ),
    left: z
      .strictObject({
        exit,
        receivedMinor: minor,
        profitMinor: minor,
        safety: z.string(),
        barrier: z.enum(repairBarriers).optional(),
        at: z.string(),
      })
      .nullable(),
  })
  .openapi('MachineState') satisfies z.ZodType<MachineState>

const noteKinds = noteContentSchema.options.map((option) => option.shape.kind.value)

const noteLineSchema = z
  .strictObject({
    id: z.string(),
    seq: z.number().int(),
    at: z.string(),
    kind: z.enum(noteKinds),
    text: z.string(),
    by: z.string().optional(),
    struck: z.boolean(),
    canStrike: z.boolean(),
  })
  .openapi('NoteLine') satisfies z.ZodType<NoteLine>

export const machineListSchema = z
  .strictObject({
    machines: z.array(machineStateSchema),
    inHand: z.number().int(),
    left: z.number().int(),
    after: z.number().int().nullable(),
  })
  .openapi('MachineList') satisfies z.ZodType<MachineList>

export const machineDocumentSchema = z
  .strictObject({ state: machineStateSchema, notes: z.array(noteSchema), lines: z.array(noteLineSchema) })
  .openapi('MachineDocument') satisfies z.ZodType<MachineDocument>

export const conflictSchema = z
  .strictObject({ problems: z.array(problemSchema), document: machineDocumentSchema })
  .openapi('Conflict')

const blueprintEntrySchema = z
  .strictObject({
    id: z.string(),
    name: z.string(),
    summary: z.string(),
    recognise: z.array(z.string()),
    signs: blueprintSchema.shape.signs,
    plate: blueprintSchema.shape.plate,
    plugFuse: z.boolean(),
    features: z.array(z.enum(featureIds)),
  })
  .openapi('BlueprintEntry') satisfies z.ZodType<BlueprintEntry>

export const blueprintListSchema = z
  .strictObject({
    blueprints: z.array(blueprintEntrySchema),
  })
  .openapi('BlueprintList')

/** An id that can stand in an address. */
export const chosenId = id.regex(/^[A-Za-z0-9][A-Za-z0-9._-]*$/, 'an id is letters, digits and . _ -')

export const newMachineSchema = z.strictObject({ id: chosenId.optional(), content: noteContentSchema })
export const newNoteSchema = z.strictObject({
  /** The note's id, chosen by the writer so that sending it again does no harm. */
  id: chosenId.optional(),
  version: z.number().int().min(0),
  /** When it was made, where it waited to be sent; a time yet to come counts as now. */
  madeAt: z.iso
    .datetime()
    .refine((at) => at >= '1970', 'no device was there to make it before 1970')
    .optional(),
  content: noteContentSchema,
})
