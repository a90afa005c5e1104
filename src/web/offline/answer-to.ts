/** What the answers are made from: the browser's stores and its network, so that it can be tried without either. */
export type Keeper = {
  readonly caches: Pick<CacheStorage, 'open' | 'keys' | 'delete'>
  readonly fetch: (request: Request | string) => Promise<Response>
  readonly origin: string
}

const filesName = 'thrum-files'
export const answersName = 'thrum-answers'
/** Written by the build: every file of the pages. */
const listOfFiles = '/files.json'
/** Where nothing comes from the network in this time, the last answer is given. */
const patienceMs = 6000

/** Fetches and keeps every file of the pages, and lets go of those of an older version. */
export const keepFiles = async ({ caches, fetch }: Keeper): Promise<void> => {
  const files = (await (await fetch(listOfFiles)).json()) as readonly string[]
  const store = await caches.open(filesName)
  await Promise.all(
    files.map(async (file) => {
      // Files under assets/ never change under their name.
      if (file.startsWith('/assets/') && (await store.match(file)) !== undefined) return
      const answer = await fetch(file)
      if (answer.ok) await store.put(file, answer)
    }),
  )
  const wanted = new Set(files)
  for (const { url } of await store.keys()) {
    const { pathname } = new URL(url)
    if (!wanted.has(pathname)) await store.delete(pathname)
  }
}

/** The answer to a request of a page, or null where the browser should see to it itself: whatever is sent, and other places. */
export const answerTo = (keeper: Keeper, request: Request): Promise<Response> | null => {
  const url = new URL(request.url)
  if (url.origin !== keeper.origin) return null
  if (request.method === 'POST' && comesOrGoes.includes(url.pathname)) return forgetting(keeper, keeper.fetch(request))
  if (request.method !== 'GET') return null
  // It has no end that could be kept.
  if (/^\/api\/bench\/[^/]+\/changes$/.test(url.pathname)) return null
  if (url.pathname.startsWith('/assets/')) return keptFirst(keeper, request)
  if (request.mode === 'navigate') return newestFirst(keeper, request, filesName, '/index.html')
  if (url.pathname.startsWith('/api/')) return newestFirst(keeper, request, answersName, request.url)
  return null
}

/** With these another person comes to the device, or this one goes: what the bench told before is for neither. */
const comesOrGoes: readonly string[] = ['/api/sign-in', '/api/sign-out']

const forgetting = async ({ caches }: Keeper, answer: Promise<Response>): Promise<Response> => {
  const answered = await answer
  await caches.delete(answersName)
  return answered
}

const keptFirst = async ({ caches, fetch }: Keeper, request: Request): Promise<Response> => {
  const store = await caches.open(filesName)
  const kept = await store.match(request.url)
  if (kept !== undefined) return kept
  const answer = await fetch(request)
  if (answer.ok) await store.put(request.url, answer.clone())
  return answer
}

/** The network's answer, kept for later; the last one kept where none comes in time. */
const newestFirst = async (
  { caches, fetch }: Keeper,
  request: Request,
  storeName: string,
  key: string,
): Promise<Response> => {
  const store = await caches.open(storeName)
  try {
    const answer = await inTime(fetch(request))
    if (answer.ok) await store.put(key, answer.clone())
    // This device was shut out, or its time is over.
    if (answer.status === 401) await caches.delete(answersName)
    return answer
  } catch (fault) {
    const kept = await store.match(key)
    if (kept === undefined) throw fault
    return kept
  }
}

const inTime = (answer: Promise<Response>): Promise<Response> =>
  Promise.race([
    answer,
    new Promise<never>((_, reject) => {
      setTimeout(() => reject(new Error('no answer in time')), patienceMs)
    }),
  ])
