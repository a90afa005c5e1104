import type { OpenAPIHono, z } from '@hono/zod-openapi'
import { adverts } from '../bench/adverts/adverts.ts'
import { advertContentSchema } from '../bench/adverts/advert-note.ts'
import { expenseContentSchema } from '../bench/books/expense-note.ts'
import { expenses } from '../bench/books/expenses.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { BenchId } from '../bench/contract.ts'
import type { LogKind } from '../bench/logs/entry.ts'
import { noSuchLog, type LogCommands } from '../bench/logs/log-commands.ts'
import { recordContentSchema } from '../bench/open-data/fields.ts'
import { repairRecords } from '../bench/open-data/records.ts'
import { priceContentSchema } from '../bench/prices/price-note.ts'
import { seenPrices } from '../bench/prices/seen-prices.ts'
import { partContentSchema } from '../bench/shelf/part-note.ts'
import { shelf } from '../bench/shelf/shelf-commands.ts'
import { commandAnswer } from './command-answer.ts'
import { logRoutes, type LogNames } from './log-routes.ts'
import { refuse } from './refusals.ts'
import { typed } from './typed.ts'

/** What the schema of a kind has let through. */
type Body<Content> = { readonly id?: string; readonly content: Content }

type Deps = (bench: BenchId) => CommandDeps

/** The addresses of the shelf, of adverts, of prices seen, of spending and of repair records taken in. */
export const addLogs = (app: OpenAPIHono, deps: Deps): void => {
  addLog(app, deps, { path: 'shelf', one: 'part', many: 'Parts on the shelf' }, 'part', partContentSchema, shelf)
  addLog(app, deps, { path: 'adverts', one: 'advert', many: 'Adverts weighed' }, 'advert', advertContentSchema, adverts)
  addLog(app, deps, { path: 'prices', one: 'price', many: 'Prices seen' }, 'price', priceContentSchema, seenPrices)
  addLog(
    app,
    deps,
    { path: 'expenses', one: 'expense', many: 'Spending on no machine in particular' },
    'expense',
    expenseContentSchema,
    expenses,
  )
  addLog(
    app,
    deps,
    { path: 'records', one: 'repair record', many: 'Repair records of others, taken in from open data' },
    'record',
    recordContentSchema,
    repairRecords,
  )
}

const addLog = <Content extends { readonly kind: string }, State>(
  app: OpenAPIHono,
  deps: Deps,
  names: LogNames,
  kind: LogKind,
  content: z.ZodType<Content>,
  commands: LogCommands<Content, State>,
): void => {
  const routes = logRoutes(names, content)
  app.openapi(routes.list, async (c) => {
    const { bench } = c.req.valid('param')
    const { state, ...asked } = c.req.valid('query')
    const { books } = deps(bench)
    const page = await books.logs(bench, kind, { ...asked, open: state === 'there' })
    return typed(c.json({ ...page, groups: await books.groups(bench, kind) }, 200))
  })
  app.openapi(routes.begin, async (c) => {
    const { id, content: first } = c.req.valid('json') as Body<Content>
    return typed(commandAnswer(c, 201, await commands.begin(deps(c.req.valid('param').bench), first, id)))
  })
  app.openapi(routes.one, async (c) => {
    const { bench, id } = c.req.valid('param')
    const document = await commands.document(deps(bench), id)
    return typed(document === null ? refuse(c, 404, noSuchLog(names.one, id)) : c.json(document, 200))
  })
  app.openapi(routes.add, async (c) => {
    const { bench, id } = c.req.valid('param')
    const entry = c.req.valid('json') as Body<Content> & { readonly version: number }
    return typed(commandAnswer(c, 200, await commands.add(deps(bench), id, entry.version, entry.content, entry.id)))
  })
}
