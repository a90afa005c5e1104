import { z } from 'zod'

const largestMinor = 1_000_000_000
const minor = z
  .number()
  .int('Money is a whole number of minor units, such as 450 for £4.50')
  .min(0, 'An amount is zero or more')
  .max(largestMinor, 'An amount is at most ten million')
const told = { day: z.iso.date('A day is written as 2026-03-31'), note: z.string().trim().min(1) }
const sale = { receivedMinor: minor, feeMinor: minor.default(0), postageMinor: minor.default(0) }
const part = z.string().trim().min(1)

const machineEvent = z.discriminatedUnion('kind', [
  z.strictObject({ ...told, kind: z.literal('bought'), minor }),
  z.strictObject({ ...told, kind: z.literal('spent'), minor }),
  z.strictObject({ ...told, kind: z.literal('part-fitted'), part, minor }),
  z.strictObject({ ...told, kind: z.literal('part-taken'), part, minor }),
  z.strictObject({ ...told, kind: z.literal('sold'), ...sale }),
  z.strictObject({ ...told, kind: z.literal('written-off') }),
  z.strictObject({ ...told, kind: z.literal('came-back'), refundMinor: minor }),
])

const shelfEvent = z.discriminatedUnion('kind', [
  z.strictObject({ ...told, kind: z.literal('bought'), minor }),
  z.strictObject({ ...told, kind: z.literal('found') }),
  z.strictObject({ ...told, kind: z.literal('from-machine'), minor }),
  z.strictObject({ ...told, kind: z.literal('to-machine'), minor }),
  /** `costMinor`: what the sold ones stood at; left out, all of it went. */
  z.strictObject({ ...told, kind: z.literal('sold'), ...sale, costMinor: minor.optional() }),
  z.strictObject({ ...told, kind: z.literal('written-off'), costMinor: minor.optional() }),
])

const most = 10_000
const tooMany = `At most ${most.toLocaleString('en-GB')} events in a log`

const log = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('machine'), events: z.array(machineEvent).max(most, tooMany) }),
  z.strictObject({ kind: z.literal('part'), part, events: z.array(shelfEvent).max(most, tooMany) }),
  z.strictObject({
    kind: z.literal('expenses'),
    events: z.array(z.strictObject({ ...told, minor, what: z.string().trim().min(1) })).max(most, tooMany),
  }),
])

/** The books of machines, parts and expenses, each log's events in the order they happened. */
export const booksTask = z.strictObject({
  kind: z.literal('books'),
  logs: z.array(log).max(most, 'At most 10,000 logs'),
  /** Own time that went into it, for what an hour brought. */
  minutes: z.number().min(0).max(100_000_000).default(0),
})
