import type { BenchId, BlueprintOrigin, MachineDocument, MachineList } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import type { SettingsChange } from '../bench/settings-change.ts'
import type { Settings } from '../bench/settings.ts'
import type { Edit } from '../blueprint/adapt-edits.ts'
import type { BlueprintEntry } from '../blueprint/entry.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { problem, problemText, type Problem } from '../base/problem.ts'

/** What came back from the bench: the value, or what was wrong, with the newer document when someone else wrote first. */
export type Answer<T> =
  | { readonly kind: 'ok'; readonly value: T }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[]; readonly document: MachineDocument | null }

/** A refused read, for the query cache, which takes failures as throws. */
export class Refusal extends Error {
  readonly problems: readonly Problem[]
  constructor(problems: readonly Problem[]) {
    super(problems.map(problemText).join(' '))
    this.problems = problems
  }
}

const unreachable = problem('no-answer', '', 'The bench did not answer', 'Try again; what you entered is still here')
const unreadable = problem(
  'not-understood',
  '',
  'The bench answered with something that is not understood here',
  'Load the page again',
)

const call = async <T>(path: string, init: RequestInit): Promise<Answer<T>> => {
  let response: Response
  try {
    response = await fetch(`/api${path}`, init)
  } catch {
    return { kind: 'refused', problems: [unreachable], document: null }
  }
  const body: unknown = await response.json().catch(() => null)
  if (response.ok && body !== null) return { kind: 'ok', value: body as T }
  return refusalFrom(body)
}

const refusalFrom = (body: unknown): Answer<never> => {
  const { problems, document } = (body ?? {}) as { problems?: readonly Problem[]; document?: MachineDocument }
  const known = Array.isArray(problems) && problems.length > 0 ? (problems as readonly Problem[]) : [unreadable]
  return { kind: 'refused', problems: known, document: document ?? null }
}

const get = async <T>(path: string, signal: AbortSignal): Promise<T> => {
  const answer = await call<T>(path, { signal })
  if (answer.kind === 'refused') throw new Refusal(answer.problems)
  return answer.value
}

const send =
  (method: 'POST' | 'PATCH') =>
  <T>(path: string, body: unknown): Promise<Answer<T>> =>
    call<T>(path, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })

const post = send('POST')
const patch = send('PATCH')

const machinePath = (bench: BenchId, id: string): string => `/bench/${bench}/machines/${encodeURIComponent(id)}`

export const getBlueprints = async (signal: AbortSignal): Promise<readonly BlueprintEntry[]> =>
  (await get<{ readonly blueprints: readonly BlueprintEntry[] }>('/blueprints', signal)).blueprints

export const getBlueprint = (id: string, signal: AbortSignal): Promise<Blueprint> =>
  get(`/blueprints/${encodeURIComponent(id)}`, signal)

/** Machines in hand and a stretch of those that left. `after`: further ones that left. */
export const getMachines = (bench: BenchId, after: number | null, signal: AbortSignal): Promise<MachineList> =>
  get(`/bench/${bench}/machines${after === null ? '' : `?after=${after}`}`, signal)

export const getMachine = (bench: BenchId, id: string, signal: AbortSignal): Promise<MachineDocument> =>
  get(machinePath(bench, id), signal)

export const addMachine = (bench: BenchId, id: string, content: NoteContentInput): Promise<Answer<MachineDocument>> =>
  post(`/bench/${bench}/machines`, { id, content })

/** Adds one note. `version` is that of the document on screen; a newer one on the bench refuses the note and comes back. */
export const addNote = (
  bench: BenchId,
  machine: string,
  note: { readonly id: string; readonly version: number; readonly content: NoteContentInput },
): Promise<Answer<MachineDocument>> => post(`${machinePath(bench, machine)}/notes`, note)

/** What a blueprint of one's own was made from. */
export const getBlueprintOrigin = (id: string, signal: AbortSignal): Promise<BlueprintOrigin> =>
  get(`/blueprints/${encodeURIComponent(id)}/origin`, signal)

/** A blueprint as it is kept; `isNew` is false when the very same one was there already. */
export type KeptBlueprint = { readonly id: string; readonly isNew: boolean; readonly blueprint: Blueprint }

/** Keeps a variant of a blueprint under a name of its own. */
export const keepVariant = (
  base: string,
  variant: { readonly name: string; readonly edits: readonly Edit[] },
): Promise<Answer<KeptBlueprint>> => post(`/blueprints/${encodeURIComponent(base)}/adapt`, variant)

/** Takes in a whole blueprint, such as a file holds. */
export const keepBlueprint = (content: unknown): Promise<Answer<KeptBlueprint>> => post('/blueprints', content)

export const getSettings = (signal: AbortSignal): Promise<Settings> => get('/settings', signal)

/** Changes settings; what is left out stays as it was. */
export const changeSettings = (change: SettingsChange): Promise<Answer<Settings>> => patch('/settings', change)

/** A new id that no other device will choose. Works without a secure context, where a phone reaches the bench over plain HTTP. */
export const newId = (start: string): string => {
  const bytes = crypto.getRandomValues(new Uint8Array(10))
  return `${start}-${Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')}`
}
