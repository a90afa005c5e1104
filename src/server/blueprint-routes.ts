import { createRoute, z } from '@hono/zod-openapi'
import type { BlueprintOrigin } from '../bench/contract.ts'
import { editsSchema } from '../blueprint/adapt-edits.ts'
import { json, jsonBody, object, refusal, writingRefusals } from './answers.ts'
import { blueprintListSchema } from './schemas.ts'

const known = z.strictObject({ id: z.string().min(1) })
const notThere = { 404: refusal('There is none of this name') }
const refusals = {
  ...writingRefusals,
  422: refusal('Not a sound blueprint; each problem says where and the mend. Nothing was written'),
}

export const keptBlueprintSchema = z
  .strictObject({
    id: z.string(),
    /** False when the very same one was kept already. */
    isNew: z.boolean(),
    /** In the form of /api/schemas/blueprint. */
    blueprint: z.looseObject({}),
  })
  .openapi('KeptBlueprint')

export const variantSchema = z
  .strictObject({ name: z.string().trim().min(1).max(120), edits: editsSchema })
  .openapi('Variant')

export const blueprintsRoute = createRoute({
  method: 'get',
  path: '/api/blueprints',
  summary: "The architectures that are known: those that come with the program, then one's own",
  responses: { 200: json('Each with how to tell it from the others', blueprintListSchema) },
})

export const blueprintRoute = createRoute({
  method: 'get',
  path: '/api/blueprints/{id}',
  summary: 'One architecture in full, in the form of /api/schemas/blueprint',
  request: { params: known },
  responses: { 200: object('The blueprint'), ...notThere },
})

export const blueprintFileRoute = createRoute({
  method: 'get',
  path: '/api/blueprints/{id}/file',
  summary: 'One architecture as a file to keep or to hand on',
  request: { params: known },
  responses: { 200: object('The blueprint, to be saved'), ...notThere },
})

export const originSchema = z
  .strictObject({
    savedAt: z.string(),
    /** What it was made from; null when it was written or imported whole. */
    base: z.strictObject({ id: z.string(), name: z.string() }).nullable(),
    /** What was changed on the base, each in words. */
    differences: z.array(z.string()),
  })
  .openapi('Origin') satisfies z.ZodType<BlueprintOrigin>

export const originRoute = createRoute({
  method: 'get',
  path: '/api/blueprints/{id}/origin',
  summary: "What a blueprint of one's own was made from, and when",
  request: { params: known },
  responses: { 200: json('Its origin', originSchema), ...notThere },
})

export const newBlueprintRoute = createRoute({
  method: 'post',
  path: '/api/blueprints',
  summary: 'Takes in a whole blueprint; it gets an id of its own, and the same one again is not kept twice',
  request: jsonBody(z.looseObject({})),
  responses: { 201: json('What is kept', keptBlueprintSchema), ...refusals },
})

export const adaptRoute = createRoute({
  method: 'post',
  path: '/api/blueprints/{id}/adapt',
  summary: 'Keeps a variant of a blueprint under a name of its own; the same name again makes a new revision',
  request: { params: known, ...jsonBody(variantSchema) },
  responses: { 201: json('What is kept', keptBlueprintSchema), ...notThere, ...refusals },
})
