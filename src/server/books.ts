import type { OpenAPIHono } from '@hono/zod-openapi'
import { stream } from 'hono/streaming'
import { createHash } from 'node:crypto'
import { booksOf } from '../bench/books/books.ts'
import { bookFile, type BookFileName } from '../bench/books/book-files.ts'
import { importBooks } from '../bench/books/import/import-books.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { BenchId } from '../bench/contract.ts'
import { csvText } from '../report/csv.ts'
import * as routes from './books-routes.ts'
import { refuse } from './refusals.ts'
import { typed } from './typed.ts'

/** The addresses of the books. */
export const addBooks = (app: OpenAPIHono, deps: (bench: BenchId) => CommandDeps): void => {
  app.openapi(routes.booksRoute, async (c) => {
    const view = await booksOf(deps(c.req.valid('param').bench), c.req.valid('query').year)
    return typed(view.kind === 'ok' ? c.json(view.value, 200) : refuse(c, 422, ...view.problems))
  })
  app.openapi(routes.bookLinesRoute, async (c) => {
    const { bench, month } = c.req.valid('param')
    const { months, currency, limit } = c.req.valid('query')
    const { books } = deps(bench)
    const lines = await books.lines(bench, months, month, { currency, limit })
    return typed(c.json({ lines, total: await books.lineCount(bench, months, month, currency) }, 200))
  })
  app.openapi(routes.bookFileRoute, async (c) => {
    const { bench, file } = c.req.valid('param')
    const { header, stretches } = await bookFile(deps(bench), file.replace(/\.csv$/, '') as BookFileName)
    c.header('content-type', 'text/csv; charset=utf-8; header=present')
    c.header('content-disposition', `attachment; filename="thrum-${file}"`)
    return typed(
      stream(c, async (out) => {
        for await (const text of csvText(header, stretches)) await out.write(text)
      }),
    )
  })
  app.openapi(routes.importBooksRoute, async (c) => {
    const { csv, leaveOutWrong } = c.req.valid('json')
    const outcome = await importBooks({ ...deps(c.req.valid('param').bench), hash }, csv, leaveOutWrong)
    if (outcome.kind === 'imported') return typed(c.json(outcome, 200))
    return typed(refuse(c, outcome.kind === 'refused' ? 422 : 507, ...outcome.problems))
  })
}

const hash = (text: string): string => createHash('sha256').update(text).digest('hex')
