import { createRoute, z } from '@hono/zod-openapi'
import { takeOffSchema } from '../bench/shelf/take-off.ts'
import { json, jsonBody, object, refusal, writingRefusals } from './answers.ts'
import {
  benchSchema,
  conflictSchema,
  machineDocumentSchema,
  machineListSchema,
  newMachineSchema,
  newNoteSchema,
} from './schemas.ts'

const bench = z.strictObject({ bench: benchSchema })
const machine = z.strictObject({ bench: benchSchema, id: z.string().min(1) })
const named = z.strictObject({ name: z.string().min(1) })

/** A stretch of a list that is given out bit by bit. */
const listQuery = z.strictObject({
  after: z.coerce.number().int().min(0).optional(),
  limit: z.coerce.number().int().min(1).max(500).optional(),
  text: z.string().max(200).optional(),
})

const notThere = { 404: refusal('There is none of this name') }
const refusals = {
  ...writingRefusals,
  422: refusal('Against the rules of the bench; nothing was written'),
}

export const machinesRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/machines',
  summary: 'Machines of a bench: those in hand, then a stretch of those that left, the one that came in last first',
  request: { params: bench, query: listQuery },
  responses: { 200: json('What the notes of each add up to', machineListSchema), ...notThere },
})

export const newMachineRoute = createRoute({
  method: 'post',
  path: '/api/bench/{bench}/machines',
  summary: 'Adds a machine; sending the same id and content again does no harm',
  request: { params: bench, ...jsonBody(newMachineSchema) },
  responses: {
    201: json('The machine', machineDocumentSchema),
    409: json('There is another machine with this id', conflictSchema),
    ...notThere,
    ...refusals,
  },
})

export const machineRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/machines/{id}',
  summary: 'One machine with its history',
  request: { params: machine },
  responses: { 200: json('The machine', machineDocumentSchema), ...notThere },
})

export const newNoteRoute = createRoute({
  method: 'post',
  path: '/api/bench/{bench}/machines/{id}/notes',
  summary: 'Adds a note to a machine; sending the same id and content again does no harm',
  request: { params: machine, ...jsonBody(newNoteSchema) },
  responses: {
    200: json('The machine with the note', machineDocumentSchema),
    409: json('Something else was written meanwhile; the machine as it is now comes with it', conflictSchema),
    ...notThere,
    ...refusals,
  },
})

export const takeOffRoute = createRoute({
  method: 'post',
  path: '/api/bench/{bench}/machines/{id}/take-off',
  summary:
    'Takes parts off a machine and puts them on the shelf, or breaks it for parts; all of it is written or nothing',
  request: { params: machine, ...jsonBody(takeOffSchema) },
  responses: {
    200: json('The machine', machineDocumentSchema),
    409: json('Something else was written meanwhile; the machine as it is now comes with it', conflictSchema),
    ...notThere,
    ...refusals,
  },
})

export const viewRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/machines/{id}/view',
  summary: 'What may be wrong with a machine, what to do next and what it is worth',
  request: { params: machine },
  responses: {
    200: object('Suspects, next move, other moves, exits, worth, red flags'),
    422: refusal('Its blueprint is not known here'),
    ...notThere,
  },
})

export const schemaRoute = createRoute({
  method: 'get',
  path: '/api/schemas/{name}',
  summary: 'The JSON Schema of a form that input may take',
  request: { params: named },
  responses: { 200: object('The schema'), ...notThere },
})

export const healthRoute = createRoute({
  method: 'get',
  path: '/healthz',
  summary: 'Whether the program answers and can read its store',
  responses: {
    200: json('It does', z.strictObject({ status: z.literal('ok') })),
    503: refusal('The store does not answer'),
  },
})
