import type { OpenAPIHono } from '@hono/zod-openapi'
import type { Context } from 'hono'
import type { BlueprintDeps, FindBlueprint } from '../bench/blueprints.ts'
import type { BenchId, MachineDocument } from '../bench/contract.ts'
import { jobOf } from '../bench/job.ts'
import type { BenchStores, SettingsStore } from '../bench/ports.ts'
import type { PhotoStore } from '../bench/photos/photo-ports.ts'
import { machineDocument, noSuchMachine } from '../bench/queries.ts'
import { currentSettings } from '../bench/settings.ts'
import { chaptersText, filmsOf } from '../bench/story/chapters.ts'
import { plainTexts } from '../bench/story/plain-text.ts'
import { storyView } from '../bench/story/story-view.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { storyHtml, storyPolicy } from '../report/story-html.ts'
import { noBlueprint } from './blueprints.ts'
import { refuse } from './refusals.ts'
import * as routes from './story-routes.ts'
import { typed } from './typed.ts'

type StoryDeps = {
  readonly benches: Readonly<Record<BenchId, BenchStores>>
  readonly settings: SettingsStore
  readonly photos: PhotoStore
}

type Told = (document: MachineDocument, blueprint: Blueprint) => Response | Promise<Response>

/** The addresses of stories: the file of the whole job, and the marks of its films. */
export const addStories = (
  app: OpenAPIHono,
  { benches, settings, photos }: StoryDeps,
  blueprints: BlueprintDeps,
  find: FindBlueprint,
): void => {
  const answer = async (
    c: Context,
    { bench, id }: { readonly bench: BenchId; readonly id: string },
    tell: Told,
  ): Promise<Response> => {
    const document = await machineDocument({ store: benches[bench].notes, blueprintById: find }, id)
    if (document === null) return refuse(c, 404, noSuchMachine(id))
    const blueprint = await find(document.state.blueprint)
    if (blueprint === undefined) return noBlueprint(c, 422, document.state.blueprint, blueprints)
    return tell(document, blueprint)
  }
  app.openapi(routes.storyRoute, async (c) => {
    const asked = c.req.valid('param')
    const withMoney = c.req.valid('query').money === 'yes'
    const tell: Told = async (document, blueprint) => {
      const job = jobOf(document.state, document.notes, blueprint)
      const { region } = await currentSettings(settings)
      const view = storyView({ document, blueprint, job, region, withMoney, isDemo: asked.bench === 'demo' })
      // The page's own policy would keep the style of the file from it; the file brings a stricter one.
      c.header('content-security-policy', `${storyPolicy}; frame-ancestors 'none'`)
      return c.html(await storyHtml(view, ({ photo, size }) => photos.get(photo, size)), 200)
    }
    return typed(await answer(c, asked, tell))
  })
  app.openapi(routes.chaptersRoute, async (c) => {
    const tell: Told = ({ notes }, blueprint) => c.text(chaptersText(filmsOf(notes, plainTexts(notes, blueprint))), 200)
    return typed(await answer(c, c.req.valid('param'), tell))
  })
}
