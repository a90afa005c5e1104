import { z } from 'zod'

const id = z.string().min(1).max(120)
const text = z.string().trim().min(1).max(2000)
const minutes = z.number().min(0).max(10_000)
const minor = z.number().int().min(0).max(100_000_000)
const share = z.number().min(0).max(1)
const costRange = z
  .strictObject({ low: minor, high: minor })
  .refine((range) => range.low <= range.high, 'low must not be above high. Write the smaller one as low')
const atLeastOne = (value: object): boolean => Object.values(value).some((one) => one !== undefined)

/** What becomes of an element whose part is not there: its two ends joined, or nothing between them. */
export const elementFateSchema = z.enum(['bridged', 'taken-away'])

/** What can be renamed. */
export const renamedKinds = ['part', 'control', 'cover', 'point', 'check'] as const

/** One way in which a machine differs from its blueprint. */
export const editSchema = z.discriminatedUnion('kind', [
  /** The machine has no such part. `elements` says what becomes of its elements; one left out follows from the circuit. */
  z.strictObject({
    kind: z.literal('part-absent'),
    part: id,
    elements: z.record(id, elementFateSchema).optional(),
  }),
  /** The part, with its probe points, is behind another cover; null: behind none. */
  z.strictObject({ kind: z.literal('part-moved'), part: id, behind: id.nullable() }),
  /** The cover is held in another way; what is left out stays. */
  z.strictObject({
    kind: z.literal('cover-fixings'),
    cover: id,
    fixings: z.array(z.strictObject({ count: z.number().int().min(1).max(99), kind: text })).optional(),
    openMin: minutes.optional(),
    closeMin: minutes.optional(),
  }),
  /** There is no such cover: what was behind it is behind the cover that came off before it. */
  z.strictObject({ kind: z.literal('cover-absent'), cover: id }),
  z.strictObject({ kind: z.literal('renamed'), what: z.enum(renamedKinds), id, name: text }),
  /** What is to be done at a check, in other words: where the probes go on this one. */
  z.strictObject({ kind: z.literal('check-how'), check: id, how: text }),
  /** What is worth knowing of the part on this one. */
  z.strictObject({ kind: z.literal('part-note'), part: id, text }),
  /** The rating plate; what is left out stays. */
  z.strictObject({
    kind: z.literal('plate'),
    voltageV: z.number().positive().optional(),
    frequencyHz: z.number().positive().optional(),
    powerW: z.number().positive().optional(),
    protectionClass: z.enum(['I', 'II']).optional(),
    massKg: z.number().positive().optional(),
  }),
  /** How often a fault comes up in a hundred machines bought as faulty, and what the machine fetches with it left in. */
  z.strictObject({
    kind: z.literal('fault-share'),
    fault: id,
    perHundred: z.number().min(0).max(100).optional(),
    saleShareIfLeft: share.optional(),
  }),
  /** What a way of mending costs and how long it takes; what is left out stays. */
  z.strictObject({
    kind: z.literal('repair-cost'),
    repair: id,
    option: id,
    costMinor: costRange.optional(),
    minutes: minutes.optional(),
  }),
])

/** Edits in the order in which they were made. Of two that say the same thing of one part, cover or check the later counts. */
export const editsSchema = z.array(editSchema).max(500)

/** Edits as a file. */
export const editsFileSchema = z.strictObject({ format: z.literal('thrum-edits-1'), edits: editsSchema })

export type Edit = z.infer<typeof editSchema>
export type EditOf<Kind extends Edit['kind']> = Extract<Edit, { kind: Kind }>
export type ElementFate = z.infer<typeof elementFateSchema>

/** The edits of one kind, in their order. */
export const editsOf = <Kind extends Edit['kind']>(edits: readonly Edit[], kind: Kind): readonly EditOf<Kind>[] =>
  edits.filter((edit): edit is EditOf<Kind> => edit.kind === kind)

/** Whether an edit that may leave everything out changes anything. */
export const changesSomething = (edit: Edit): boolean => {
  switch (edit.kind) {
    case 'cover-fixings': {
      const { kind: _kind, cover: _cover, ...rest } = edit
      return atLeastOne(rest)
    }
    case 'plate': {
      const { kind: _kind, ...rest } = edit
      return atLeastOne(rest)
    }
    case 'fault-share': {
      const { kind: _kind, fault: _fault, ...rest } = edit
      return atLeastOne(rest)
    }
    case 'repair-cost': {
      const { kind: _kind, repair: _repair, option: _option, ...rest } = edit
      return atLeastOne(rest)
    }
    case 'part-absent':
    case 'part-moved':
    case 'cover-absent':
    case 'renamed':
    case 'check-how':
    case 'part-note':
      return true
  }
}
