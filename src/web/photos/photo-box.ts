/**
 * Photographs that wait on this device to be sent, in the browser's own database: they are too large for the place where notes wait.
 * Each stands under the name that its note gives it.
 */
const databaseName = 'thrum-photographs'
const storeName = 'waiting'
/** What nobody names any more after this time was left behind by a page that was closed halfway. */
const leftBehindMs = 24 * 60 * 60 * 1000

type Kept = { readonly blob: Blob; readonly putAt: number }

const opened = (): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open(databaseName, 1)
    request.onupgradeneeded = () => request.result.createObjectStore(storeName)
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error ?? new Error('the database of this browser cannot be opened'))
  })

/** One piece of work that is done wholly or not at all; rejects when the browser has no room or allows no database. */
const inBox = async <T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> => {
  const database = await opened()
  try {
    return await new Promise<T>((resolve, reject) => {
      const transaction = database.transaction(storeName, mode)
      const request = work(transaction.objectStore(storeName))
      transaction.oncomplete = () => resolve(request.result)
      transaction.onabort = () => reject(transaction.error ?? request.error ?? new Error('not kept'))
    })
  } finally {
    database.close()
  }
}

/** Keeps a photograph under a name. Rejects when it could not be kept; nothing of it is then there. */
export const putInBox = async (key: string, blob: Blob): Promise<void> => {
  const kept: Kept = { blob, putAt: Date.now() }
  await inBox('readwrite', (store) => store.put(kept, key))
}

/** The photograph of a name; null when it is not here. */
export const photoInBox = async (key: string): Promise<Blob | null> => {
  const kept = await inBox(
    'readonly',
    (store): IDBRequest<Kept | undefined> => store.get(key) as IDBRequest<Kept | undefined>,
  ).catch(() => undefined)
  return kept?.blob ?? null
}

export const dropFromBox = async (key: string): Promise<void> => {
  await inBox('readwrite', (store) => store.delete(key)).catch(() => undefined)
}

/** Lets go of what was left behind. */
export const sweepBox = async (inUse: ReadonlySet<string>): Promise<void> => {
  const keys = await inBox('readonly', (store) => store.getAllKeys()).catch(() => [])
  for (const key of keys.map(String).filter((one) => !inUse.has(one))) {
    const kept = await inBox(
      'readonly',
      (store): IDBRequest<Kept | undefined> => store.get(key) as IDBRequest<Kept | undefined>,
    ).catch(() => undefined)
    if (kept !== undefined && Date.now() - kept.putAt > leftBehindMs) await dropFromBox(key)
  }
}
