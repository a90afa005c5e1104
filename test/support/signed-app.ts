import type { OpenAPIHono } from '@hono/zod-openapi'
import { addPerson } from '../../src/bench/people/people-commands.ts'
import type { MachineView } from '../../src/machine/view.ts'
import { makeApp, type AppDeps } from '../../src/server/app.ts'
import { memoryBench } from '../../src/store/memory/bench.ts'
import { memoryBlueprintStore } from '../../src/store/memory/blueprint-store.ts'
import { memorySettingsStore } from '../../src/store/memory/settings-store.ts'
import { accessAt } from './access.ts'
import { noPhotos } from './no-photos.ts'
import { tinyBlueprint } from './tiny-blueprint.ts'

export const passphrases = { Ada: 'correct horse battery', Ben: 'four plain words here' } as const

/** The application in memory, open to others. */
export const openApp = (over: Partial<AppDeps> = {}) => {
  const { access, pass } = accessAt()
  let ids = 0
  const app = makeApp({
    photos: noPhotos,
    benches: { own: memoryBench(), demo: memoryBench() },
    blueprints: [tinyBlueprint],
    ownBlueprints: memoryBlueprintStore(),
    settings: memorySettingsStore(),
    machineView: () => ({ suspects: [] }) as unknown as MachineView,
    now: access.now,
    newId: () => `id-${++ids}`,
    pages: new Map(),
    hosts: null,
    access,
    log: () => {},
    ...over,
  })
  return { app, access: over.access ?? access, pass }
}

/** The same with Ada, who keeps the books, and Ben at the bench. */
export const peopledApp = async (over: Partial<AppDeps> = {}) => {
  const made = openApp(over)
  await addPerson(made.access, { name: 'Ada', role: 'keeper', passphrase: passphrases.Ada })
  await addPerson(made.access, { name: 'Ben', role: 'bench', passphrase: passphrases.Ben })
  return made
}

export const send = (
  app: OpenAPIHono,
  path: string,
  body: unknown,
  headers: Record<string, string> = {},
  method = 'POST',
): Response | Promise<Response> =>
  app.request(path, {
    method,
    headers: { 'content-type': 'application/json', ...headers },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  })

/** The cookie that an answer sets, as a browser sends it back; null where it sets none. */
export const cookieOf = (answer: Response): string | null => answer.headers.get('set-cookie')?.split(';')[0] ?? null

/** Signs in by name; gives the cookie. */
export const signedInAs = async (app: OpenAPIHono, name: keyof typeof passphrases): Promise<string> => {
  const answer = await send(app, '/api/sign-in', { name, passphrase: passphrases[name] })
  const cookie = cookieOf(answer)
  if (cookie === null) throw new Error(await answer.text())
  return cookie
}

/** Every address in the document of the API, with names in it filled in. */
export const addressesOf = (app: OpenAPIHono): readonly { method: string; path: string; named: string }[] => {
  // What is not let in cannot be asked for its document, so it is made here.
  const { paths } = app.getOpenAPI31Document({ openapi: '3.1.0', info: { title: '', version: '' } })
  const filled = { bench: 'own', id: 'tiny', name: 'notes', month: '2026-03', file: 'expenses.csv' } as Record<
    string,
    string
  >
  return Object.entries(paths ?? {}).flatMap(([named, ways]) =>
    Object.keys(ways as object).map((method) => ({
      method: method.toUpperCase(),
      named: `${method} ${named}`,
      path: named.replace(/\{(\w+)\}/g, (_, name: string) => filled[name] ?? 'x'),
    })),
  )
}
