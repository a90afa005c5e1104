import { createRoute, z } from '@hono/zod-openapi'
import { refusal } from './answers.ts'
import { benchSchema } from './schemas.ts'

const known = z.strictObject({ bench: benchSchema, id: z.string().min(1) })
const pdf = (description: string) => ({
  200: { description, content: { 'application/pdf': { schema: z.string() } } },
  404: refusal('There is no machine of this id'),
  422: refusal('The blueprint of this machine is not known'),
})

export const recordRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/machines/{id}/record.pdf',
  summary: 'The safety record of a machine as its notes stand, to print',
  request: { params: known },
  responses: pdf('The record'),
})

export const labelRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/machines/{id}/label.pdf',
  summary: 'A small label with a code that leads to the page of the proof',
  request: { params: known },
  responses: pdf('The label'),
})
