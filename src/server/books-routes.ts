import { createRoute, z } from '@hono/zod-openapi'
import { currencies, type Currency } from '../base/money.ts'
import { bookFileNames, type BookFileName } from '../bench/books/book-files.ts'
import { json, object, refusal } from './answers.ts'
import { importRoute } from './import-route.ts'
import { benchSchema } from './schemas.ts'

const bench = z.strictObject({ bench: benchSchema })
const notThere = { 404: refusal('There is no such bench, month or file') }

const fileNames = bookFileNames.map((name) => `${name}.csv` as const) as [
  `${BookFileName}.csv`,
  ...`${BookFileName}.csv`[],
]

export const booksRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/books',
  summary: 'The books: by currency, month and tax year, what is tied up, and what kind of machine pays',
  request: { params: bench, query: z.strictObject({ year: z.string().max(20).optional() }) },
  responses: {
    200: object('The books'),
    422: refusal('There is no such tax year'),
    ...notThere,
  },
})

export const bookLinesRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/books/lines/{month}',
  summary: 'The lines that the figures of one month are made of',
  request: {
    params: bench.extend({ month: z.string().regex(/^\d{4}-\d{2}$/, 'a month is written as 2026-03') }),
    query: z.strictObject({
      months: z.enum(['calendar', 'from-6th']).default('calendar'),
      currency: z.enum(currencies as readonly [Currency, ...Currency[]]).optional(),
      limit: z.coerce.number().int().min(1).max(100_000).optional(),
    }),
  },
  responses: {
    200: json(
      'The lines, by day, and how many there are in all',
      z.strictObject({ lines: z.array(z.looseObject({})), total: z.number().int() }),
    ),
    ...notThere,
  },
})

export const bookFileRoute = createRoute({
  method: 'get',
  path: '/api/bench/{bench}/books/{file}',
  summary: `One of the books as a file: ${fileNames.join(', ')}`,
  request: { params: bench.extend({ file: z.enum(fileNames) }) },
  responses: {
    200: { description: 'The file, CSV in UTF-8', content: { 'text/csv': { schema: z.string() } } },
    ...notThere,
  },
})

export const importBooksRoute = importRoute({
  path: '/api/bench/{bench}/books/import',
  summary: 'Takes in a CSV file of past machines; sending the same file again does no harm',
  answer: 'How many were taken in, were there already, and what was left out',
})
