import { z } from 'zod'

const id = z.string().min(1)
const node = z.string().min(1)
const notNegative = z.number().min(0, 'a resistance, capacitance or inductance is zero or more')
const between = { id, from: node, to: node }

/** Fixed resistance; 0 is an ideal link. */
const resistor = z.strictObject({ kind: z.literal('resistor'), ...between, resistanceOhm: notNegative })
const capacitor = z.strictObject({ kind: z.literal('capacitor'), ...between, capacitanceF: notNegative })
const inductor = z.strictObject({
  kind: z.literal('inductor'),
  ...between,
  inductanceH: notNegative,
  resistanceOhm: notNegative.default(0),
})
const contact = z.strictObject({
  kind: z.literal('switch'),
  ...between,
  closed: z.boolean(),
  contactOhm: notNegative.default(0),
})
const fuse = z.strictObject({
  kind: z.literal('fuse'),
  ...between,
  intact: z.boolean(),
  resistanceOhm: notNegative.default(0),
})
/** `backEmfOhm` is back-EMF over current of a series-wound motor at its speed (0 at standstill); `backEmfV` that of a permanent-magnet one. */
const motor = z.strictObject({
  kind: z.literal('motor'),
  ...between,
  resistanceOhm: notNegative,
  inductanceH: notNegative.default(0),
  backEmfOhm: notNegative.default(0),
  backEmfV: z.number().default(0),
})
/** Off: `offOhm`, or nothing at all when null. */
const triac = z.strictObject({
  kind: z.literal('triac'),
  ...between,
  on: z.boolean(),
  onOhm: notNegative.default(0),
  offOhm: notNegative.nullable().default(null),
})
/** `from` is driven above `to` by `voltageV` (amplitude and phase in AC). */
const voltageSource = z.strictObject({
  kind: z.literal('voltage-source'),
  ...between,
  voltageV: z.number(),
  phaseRad: z.number().default(0),
})
/** Pushes `currentA` out of `to` into the network and draws it at `from`. */
const currentSource = z.strictObject({
  kind: z.literal('current-source'),
  ...between,
  currentA: z.number(),
  phaseRad: z.number().default(0),
})

export const elementSchema = z.discriminatedUnion('kind', [
  resistor,
  capacitor,
  inductor,
  contact,
  fuse,
  motor,
  triac,
  voltageSource,
  currentSource,
])

/** A network of two-ended elements. Nodes are the names that the elements use. */
export const networkSchema = z.strictObject({
  format: z.literal('thrum-network-1'),
  elements: z.array(elementSchema),
})

export type NetworkElement = z.infer<typeof elementSchema>
export type Network = z.infer<typeof networkSchema>
