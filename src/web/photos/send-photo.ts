import { problem, type Problem } from '../../base/problem.ts'

/** What became of a photograph. `waits`: the bench cannot take it now, and may later. */
export type SentPhoto =
  | { readonly kind: 'kept'; readonly id: string }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'waits'; readonly problems: readonly Problem[] }

/** A bench that takes longer over one photograph does not answer. */
const patienceMs = 120_000

/** Who must sign in first, comes too often, or meets a bench in trouble is not refused for good. */
const forNow = (status: number): boolean => status === 401 || status === 408 || status === 429 || status >= 500

/** Sends one photograph to the bench. What is wrong names the file. */
export const sendPhoto = async (file: Blob, name: string): Promise<SentPhoto> => {
  let response: Response
  try {
    response = await fetch('/api/photos', {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
      signal: AbortSignal.timeout(patienceMs),
    })
  } catch {
    return { kind: 'waits', problems: [] }
  }
  const body = (await response.json().catch(() => ({}))) as { id?: string; problems?: readonly Problem[] }
  if (response.ok && body.id !== undefined) return { kind: 'kept', id: body.id }
  const problems = (body.problems ?? [notUnderstood]).map((one) => named(name, one))
  return { kind: response.ok || forNow(response.status) ? 'waits' : 'refused', problems }
}

/** What is wrong with a photograph, said by the name of its file. */
export const named = (name: string, one: Problem): Problem => ({ ...one, where: name, what: `“${name}”: ${one.what}` })

const notUnderstood = problem('not-understood', 'photo', 'The bench did not say what became of it', 'It is tried again')

/** Where a photograph is shown from. */
export const photoAddress = (id: string, size: 'large' | 'small' | 'original'): string =>
  `/api/photos/${id}?size=${size}`
