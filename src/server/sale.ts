import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import type { BlueprintDeps } from '../bench/blueprints.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { BenchId } from '../bench/contract.ts'
import type { PhotoStore } from '../bench/photos/photo-ports.ts'
import type { Reckoner } from '../bench/prices/reckoner.ts'
import { machineDocument, noSuchMachine } from '../bench/queries.ts'
import { photographed } from '../bench/sale/photographed.ts'
import { saleSheetOf } from '../bench/sale/sale-sheet.ts'
import { sheetPaper, type SheetPaper } from '../bench/sale/sheet-paper.ts'
import type { SaleSheetView } from '../bench/sale/sheet-view.ts'
import { saleSheetHtml } from '../report/sale-sheet-html.ts'
import { saleSheetPdf } from '../report/sale-sheet-pdf.ts'
import { saleSheetText } from '../report/sale-sheet-text.ts'
import { noBlueprint } from './blueprints.ts'
import { refuse } from './refusals.ts'
import * as routes from './sale-routes.ts'
import { typed } from './typed.ts'

type Deps = {
  readonly commands: (bench: BenchId) => CommandDeps
  readonly blueprints: BlueprintDeps
  readonly reckoner: Reckoner
  readonly photos: PhotoStore
}

/** The page brings its own style and photographs and may load nothing. */
const ownPage = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'"

/** The addresses of the sale sheet: to look at and edit, to print, to hand on, to copy. */
export const addSaleSheets = (app: OpenAPIHono, { commands, blueprints, reckoner, photos }: Deps): void => {
  type Place = { readonly bench: BenchId; readonly id: string }
  const answer = async (
    c: Context,
    { bench, id }: Place,
    make: (view: SaleSheetView) => Response | Promise<Response>,
  ): Promise<Response> => {
    const deps = commands(bench)
    const document = await machineDocument(deps, id)
    if (document === null) return refuse(c, 404, noSuchMachine(id))
    const view = await saleSheetOf({ ...deps, reckoner }, document)
    return view.kind === 'ok' ? make(view.value) : noBlueprint(c, 422, document.state.blueprint, blueprints)
  }
  const paperOf = async (view: SaleSheetView): Promise<ReturnType<typeof photographed>> =>
    photographed(sheetPaper(view), photos)
  app.openapi(routes.saleSheetRoute, async (c) =>
    typed(await answer(c, c.req.valid('param'), (view) => c.json(view, 200))),
  )
  app.openapi(routes.salePdfRoute, async (c) =>
    typed(
      await answer(c, c.req.valid('param'), async (view) => {
        const bytes = await saleSheetPdf(await paperOf(view))
        return c.body(new Uint8Array(bytes).buffer, 200, { 'content-type': 'application/pdf' })
      }),
    ),
  )
  app.openapi(routes.saleHtmlRoute, async (c) =>
    typed(
      await answer(c, c.req.valid('param'), async (view) => {
        c.header('content-security-policy', ownPage)
        return c.html(saleSheetHtml(await paperOf(view)))
      }),
    ),
  )
  app.openapi(routes.saleTextRoute, async (c) =>
    typed(await answer(c, c.req.valid('param'), (view) => c.text(saleSheetText(withoutPhotos(sheetPaper(view)))))),
  )
}

const withoutPhotos = ({ photos: _, ...paper }: SheetPaper): Omit<SheetPaper, 'photos'> => paper
