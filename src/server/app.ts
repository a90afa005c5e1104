import { OpenAPIHono } from '@hono/zod-openapi'
import type { Context, Env, MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import { problem, type Problem } from '../base/problem.ts'
import { blueprintFinder, blueprintIds, type BlueprintDeps, type FindBlueprint } from '../bench/blueprints.ts'
import { addMachine, addNote, type CommandDeps } from '../bench/commands.ts'
import type { BenchId, MachineDocument } from '../bench/contract.ts'
import { demoNow } from '../bench/demo.ts'
import { jobOf } from '../bench/job.ts'
import { makeReckoner } from '../bench/prices/reckoner.ts'
import { marketPriceOfMachine, type AskingDeps } from '../bench/prices/what-to-ask.ts'
import type { BenchStores, BlueprintStore, Clock, Ids, SettingsStore } from '../bench/ports.ts'
import type { OriginalStore } from '../bench/photos/original-ports.ts'
import type { PhotoStore } from '../bench/photos/photo-ports.ts'
import { machineDocument, machineList, noSuchMachine } from '../bench/queries.ts'
import { costsOf } from '../bench/costs.ts'
import { partsAtHand, withShelf } from '../bench/shelf/at-hand.ts'
import { signedStores } from '../bench/people/signed-stores.ts'
import { takeOff } from '../bench/shelf/take-off.ts'
import { currentSettings } from '../bench/settings.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { Job } from '../machine/job.ts'
import type { MachineView } from '../machine/view.ts'
import { addAdverts } from './adverts.ts'
import { addBooks } from './books.ts'
import { addChanges, type ChangesDeps } from './changes.ts'
import { addBlueprints, noBlueprint } from './blueprints.ts'
import { commandAnswer } from './command-answer.ts'
import { formRefusal } from './form-refusal.ts'
import { noPrototypeKeys, nothingPacked, onlyHosts, onlyOwnPages, strictHeaders, type Hosts } from './guards.ts'
import { jsonSchema, schemaNames } from '../bench/json-schemas.ts'
import { isRefusal, notFound, refuse, refuseThrown, tooLarge } from './refusals.ts'
import { openAccess, type Access } from './sign-in/access.ts'
import { addDevices } from './sign-in/devices.ts'
import { gate } from './sign-in/gate.ts'
import { notTooOften } from './sign-in/not-too-often.ts'
import { addPeople } from './sign-in/people.ts'
import { addSignIn } from './sign-in/sign-in.ts'
import { watchedAccess } from './sign-in/still-in.ts'
import { whoAsks } from './sign-in/who-asks.ts'
import { addAsking } from './asking.ts'
import { addOpenData } from './open-data.ts'
import { addPhotos } from './photos.ts'
import { addRecords } from './record.ts'
import { addRigs } from './rig.ts'
import * as routes from './routes.ts'
import { addSaleSheets } from './sale.ts'
import { addSettings } from './settings.ts'
import { addLogs } from './logs.ts'
import { addStories } from './story.ts'
import { servePages, type StaticFiles } from './static-files.ts'
import { typed } from './typed.ts'

const largestBodyBytes = 1024 * 1024
/** A name and a passphrase, from anyone. */
const largestOfStrangersBytes = 4096

export type AppDeps = {
  readonly benches: Readonly<Record<BenchId, BenchStores>>
  readonly blueprints: readonly Blueprint[]
  readonly ownBlueprints: BlueprintStore
  readonly settings: SettingsStore
  readonly photos: PhotoStore
  /** Where files of photographs are kept as they were sent; left out, none are. */
  readonly originals?: OriginalStore
  readonly machineView: (job: Job) => MachineView
  readonly now: Clock
  readonly newId: Ids
  readonly pages: StaticFiles
  /** Host names that are answered to; null when every name is. */
  readonly hosts: Hosts | null
  /** Who may come in and by what passphrase; left out, everyone may. */
  readonly access?: Access
  /** Told of each answer and of each thing thrown. */
  readonly log: (entry: LogEntry) => void
} & ChangesDeps

export type LogEntry =
  | {
      readonly kind: 'answered'
      readonly method: string
      readonly path: string
      readonly status: number
      readonly ms: number
    }
  | { readonly kind: 'thrown'; readonly method: string; readonly path: string; readonly thrown: unknown }

/** The API and the pages as one application; it opens no socket and reads no clock of its own. */
export const makeApp = (deps: AppDeps): OpenAPIHono => {
  const { access, whenOut } = watchedAccess(deps.access ?? openAccess(deps))
  const app: OpenAPIHono = new OpenAPIHono<Env>({ defaultHook: formRefusal(() => app) })
  app.use(logged(deps.log), strictHeaders)
  if (deps.hosts !== null) app.use(onlyHosts(deps.hosts))
  app.use(onlyOwnPages, nothingPacked)
  app.use('/api/*', notTooOften(access), fresh, gate(access), notForPhotos(limited), notForPhotos(noPrototypeKeys))
  app.onError((thrown, c) => {
    // What is wrong with a body is told to whoever sent it; its words in the log could hold a passphrase.
    if (!isRefusal(thrown)) deps.log({ kind: 'thrown', method: c.req.method, path: c.req.path, thrown })
    return refuseThrown(c, thrown)
  })
  app.notFound((c) => refuse(c, 404, notFound))
  const find = blueprintFinder(deps.blueprints, deps.ownBlueprints)
  addBlueprints(app, blueprintDeps(deps), find)
  addRigs(app, blueprintDeps(deps), find)
  addRecords(app, deps, blueprintDeps(deps), find)
  addStories(app, deps, blueprintDeps(deps), find)
  addBench(app, deps, find)
  addChanges(app, { ...deps, whenOut })
  addPhotos(app, deps)
  addSettings(app, deps)
  addSignIn(app, access)
  addDevices(app, access)
  addPeople(app, access)
  addDocuments(app, deps)
  app.all('/api/*', (c) => refuse(c, 404, notFound))
  app.get('*', servePages(deps.pages))
  return app
}

const limitOf = (maxSize: number): MiddlewareHandler => bodyLimit({ maxSize, onError: (c) => refuse(c, 413, tooLarge) })
const [limit, limitOfStrangers] = [limitOf(largestBodyBytes), limitOf(largestOfStrangersBytes)]
const limited: MiddlewareHandler = (c, next) => (c.req.path === '/api/sign-in' ? limitOfStrangers : limit)(c, next)

/** Everything but a photograph is small. */
const notForPhotos =
  (guard: MiddlewareHandler): MiddlewareHandler =>
  (c, next) =>
    c.req.path === '/api/photos' ? next() : guard(c, next)

const logged =
  (log: AppDeps['log']) =>
  async (c: Context, next: () => Promise<void>): Promise<void> => {
    const start = performance.now()
    await next()
    const ms = Math.round(performance.now() - start)
    log({ kind: 'answered', method: c.req.method, path: c.req.path, status: c.res.status, ms })
  }

/** What the API says changes with every note, so no browser keeps it; a photograph never changes and says so itself. */
const fresh = async (c: Context, next: () => Promise<void>): Promise<void> => {
  await next()
  if (!c.res.headers.has('cache-control')) c.header('cache-control', 'no-store')
}

const addBench = (app: OpenAPIHono, deps: AppDeps, find: FindBlueprint): void => {
  const commands = commandDeps(deps, find)
  const reckoner = makeReckoner()
  addLogs(app, commands)
  addAsking(app, { commands, blueprints: blueprintDeps(deps), find, reckoner })
  addSaleSheets(app, { commands, blueprints: blueprintDeps(deps), reckoner, photos: deps.photos })
  addBooks(app, commands)
  addOpenData(app, commands)
  addAdverts(app, commands)
  app.openapi(routes.machinesRoute, async (c) => {
    return typed(c.json(await machineList(commands(c.req.valid('param').bench), c.req.valid('query')), 200))
  })
  app.openapi(routes.newMachineRoute, async (c) => {
    const { id, content } = c.req.valid('json')
    return typed(commandAnswer(c, 201, await addMachine(commands(c.req.valid('param').bench), content, id)))
  })
  app.openapi(routes.machineRoute, async (c) => {
    const { bench, id } = c.req.valid('param')
    const document = await machineDocument(commands(bench), id)
    return typed(document === null ? refuse(c, 404, noSuchMachine(id)) : c.json(document, 200))
  })
  app.openapi(routes.newNoteRoute, async (c) => {
    const { bench, id } = c.req.valid('param')
    const note = c.req.valid('json')
    const at = madeAt(commands(bench), note.madeAt)
    return typed(commandAnswer(c, 200, await addNote(at, id, note.version, note.content, note.id)))
  })
  app.openapi(routes.takeOffRoute, async (c) => {
    const { bench, id } = c.req.valid('param')
    return typed(commandAnswer(c, 200, await takeOff(commands(bench), id, c.req.valid('json'))))
  })
  app.openapi(routes.viewRoute, async (c) => {
    const { bench, id } = c.req.valid('param')
    const document = await machineDocument(commands(bench), id)
    if (document === null) return typed(refuse(c, 404, noSuchMachine(id)))
    return typed(await viewAnswer(c, deps, { ...commands(bench), reckoner }, document))
  })
}

/** The use-cases as of the time that a note was made, which is never yet to come. */
const madeAt = (commands: CommandDeps, at: string | undefined): CommandDeps => {
  if (at === undefined) return commands
  const now = commands.now()
  return { ...commands, now: () => (at < now ? at : now) }
}

/** What the use-cases of blueprints need of the application's. */
const blueprintDeps = ({ blueprints, ownBlueprints, now }: AppDeps): BlueprintDeps => ({
  library: blueprints,
  own: ownBlueprints,
  now,
})

const commandDeps = (deps: AppDeps, blueprintById: FindBlueprint): ((bench: BenchId) => CommandDeps) => {
  const { benches, settings, now, newId } = deps
  const shared = { settings, now, newId, blueprintById, blueprintIds: () => blueprintIds(blueprintDeps(deps)) }
  return (bench) => {
    const { notes: store, logs, books } = signedStores(benches[bench], () => whoAsks()?.person?.id ?? null)
    return { ...shared, store, logs, books, bench, now: bench === 'demo' ? () => demoNow : now }
  }
}

const viewAnswer = async (
  c: Context,
  deps: AppDeps,
  asking: CommandDeps & AskingDeps,
  { state, notes }: MachineDocument,
): Promise<Response> => {
  const blueprint = await asking.blueprintById(state.blueprint)
  if (blueprint === undefined) return noBlueprint(c, 422, state.blueprint, blueprintDeps(deps))
  const settings = await currentSettings(deps.settings)
  const reckoned = jobOf(state, notes, blueprint, settings.attitude, costsOf(settings, state.currency))
  const atHand = { parts: await partsAtHand(asking), region: settings.region }
  const job = withShelf(reckoned, state, atHand)
  return c.json(deps.machineView({ ...job, market: await marketPriceOfMachine(asking, blueprint, state) }), 200)
}

const addDocuments = (app: OpenAPIHono, deps: AppDeps): void => {
  app.openapi(routes.schemaRoute, (c) => {
    const { name } = c.req.valid('param')
    const schema = jsonSchema(name)
    return typed(schema === null ? refuse(c, 404, noSchema(name)) : c.json(schema, 200))
  })
  app.openapi(routes.healthRoute, async (c) => {
    const isWell = await deps.benches.own.notes.notes('').then(
      () => true,
      (thrown: unknown) => {
        deps.log({ kind: 'thrown', method: c.req.method, path: c.req.path, thrown })
        return false
      },
    )
    return typed(isWell ? c.json({ status: 'ok' as const }, 200) : refuse(c, 503, noStore))
  })
  app.doc31('/api/openapi.json', {
    openapi: '3.1.0',
    info: {
      title: 'Thrum',
      version: '1',
      description: 'Machines on a bench, their notes, and what follows from them.',
    },
  })
}

const noStore = problem('no-store', '', 'The store does not answer', 'Look at the log, and whether the disk is there')

const noSchema = (name: string): Problem =>
  problem('unknown-schema', 'name', `There is no schema “${name}”`, `There are: ${schemaNames.join(', ')}`)
