/**
 * Runs in the browser between the pages and the network, so that a page opens where the bench is out of reach: its own files are kept
 * once, and the last answer to every question is kept for when no new one comes. It never keeps what is sent to the bench.
 */
import { answerTo, keepFiles, type Keeper } from './answer-to.ts'

/** What is used of the scope of a service worker; the library of pages does not know these. */
type Extendable = Event & { readonly waitUntil: (work: Promise<unknown>) => void }
type Fetching = Extendable & { readonly request: Request; readonly respondWith: (answer: Promise<Response>) => void }
type Scope = {
  readonly addEventListener: {
    (kind: 'install' | 'activate', listener: (event: Extendable) => void): void
    (kind: 'fetch', listener: (event: Fetching) => void): void
  }
  readonly skipWaiting: () => Promise<void>
  readonly clients: { readonly claim: () => Promise<void> }
}
const scope = self as unknown as Scope

const keeper: Keeper = { caches, fetch: (request) => fetch(request), origin: self.location.origin }

scope.addEventListener('install', (event) => {
  event.waitUntil(keepFiles(keeper).then(() => scope.skipWaiting()))
})
scope.addEventListener('activate', (event) => {
  event.waitUntil(scope.clients.claim())
})
scope.addEventListener('fetch', (event) => {
  const answer = answerTo(keeper, event.request)
  if (answer !== null) event.respondWith(answer)
})
