import { createRoute, z } from '@hono/zod-openapi'
import { refusal } from './answers.ts'
import { benchSchema } from './schemas.ts'

const known = z.strictObject({ bench: benchSchema, id: z.string().min(1) })
const refusals = {
  404: refusal('There is no machine of this id'),
  422: refusal('The blueprint of this machine is not known'),
}
const file = (description: string, type: string) => ({
  200: { description, content: { [type]: { schema: z.string() } } },
  ...refusals,
})
const sheetPath = '/api/bench/{bench}/machines/{id}/sale-sheet' as const

export const saleSheetRoute = createRoute({
  method: 'get',
  path: sheetPath,
  summary:
    'The sale sheet of a machine: its sections with each claim held against the notes, condition, price, photographs',
  request: { params: known },
  responses: {
    200: { description: 'The sheet', content: { 'application/json': { schema: z.looseObject({}) } } },
    ...refusals,
  },
})

export const salePdfRoute = createRoute({
  method: 'get',
  path: `${sheetPath}.pdf`,
  summary: 'The sale sheet to print',
  request: { params: known },
  responses: file('The sheet', 'application/pdf'),
})

export const saleHtmlRoute = createRoute({
  method: 'get',
  path: `${sheetPath}.html`,
  summary: 'The sale sheet as one page that needs nothing else, photographs inside it',
  request: { params: known },
  responses: file('The page', 'text/html'),
})

export const saleTextRoute = createRoute({
  method: 'get',
  path: `${sheetPath}.txt`,
  summary: 'The sale sheet as plain text, to be copied',
  request: { params: known },
  responses: file('The text', 'text/plain'),
})
