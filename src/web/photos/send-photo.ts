import { problem, type Problem } from '../../base/problem.ts'

export type SentPhoto =
  { readonly kind: 'kept'; readonly id: string } | { readonly kind: 'refused'; readonly problems: readonly Problem[] }

/** Sends one photograph to the bench. What is wrong names the file. */
export const sendPhoto = async (file: File): Promise<SentPhoto> => {
  let response: Response
  try {
    response = await fetch('/api/photos', {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body: file,
    })
  } catch {
    return { kind: 'refused', problems: [named(file, noAnswer)] }
  }
  const body = (await response.json().catch(() => ({}))) as { id?: string; problems?: readonly Problem[] }
  if (response.ok && body.id !== undefined) return { kind: 'kept', id: body.id }
  return { kind: 'refused', problems: (body.problems ?? [notUnderstood]).map((one) => named(file, one)) }
}

const named = (file: File, one: Problem): Problem => ({ ...one, where: file.name, what: `“${file.name}”: ${one.what}` })

const noAnswer = problem(
  'no-answer',
  'photo',
  'The bench did not answer, so it was not sent',
  'It is still among the pictures of this device; add it again when the bench answers',
)
const notUnderstood = problem('not-understood', 'photo', 'The bench did not say what became of it', 'Try it again')

/** Where a photograph is shown from. */
export const photoAddress = (id: string, size: 'large' | 'small'): string => `/api/photos/${id}?size=${size}`
