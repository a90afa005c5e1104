import type { BenchId, BlueprintOrigin, MachineDocument, MachineList, MachineState } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import type { PriceContent, PriceContentInput } from '../bench/prices/price-note.ts'
import type { WhatToAsk } from '../bench/prices/what-to-ask.ts'
import type { Currency } from '../base/money.ts'
import type { BooksView } from '../bench/books/books-view.ts'
import type { ExpenseContent, ExpenseContentInput } from '../bench/books/expense-note.ts'
import type { ExpenseState } from '../bench/books/expenses.ts'
import type { ImportOutcome } from '../bench/books/import/import-books.ts'
import type { LedgerLine, MonthKind } from '../bench/ports.ts'
import type { SettingsChange } from '../bench/settings-change.ts'
import type { Settings } from '../bench/settings.ts'
import type { Edit } from '../blueprint/adapt-edits.ts'
import type { BlueprintEntry } from '../blueprint/entry.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { AskingChoices } from '../machine/asking-choices.ts'
import type { MarketPrice } from '../machine/market.ts'
import { markSignInNeeded } from './sign-in/needed.ts'
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
  if (response.status === 401 && path !== '/sign-in') markSignInNeeded()
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
/** Reading and sending for pages with addresses of their own. */
export { get as getFrom, post as postTo }
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
  note: {
    readonly id: string
    readonly version: number
    readonly content: NoteContentInput
    /** When it was made, where that was before it is sent. */
    readonly madeAt?: string
  },
): Promise<Answer<MachineDocument>> => post(`${machinePath(bench, machine)}/notes`, note)

/** What comparable sales say that machines of a blueprint and model fetch; null where there are none. */
export const getMarket = async (
  bench: BenchId,
  { blueprint, model, currency }: Pick<MachineState, 'blueprint' | 'model' | 'currency'>,
  signal: AbortSignal,
): Promise<MarketPrice | null> => {
  const asked = new URLSearchParams({ blueprint, model, currency })
  return (await get<{ readonly market: MarketPrice | null }>(`/bench/${bench}/market?${asked}`, signal)).market
}

/** What to ask for a machine; what is left out of the choices is as the bench knows it. */
export const getAsking = (
  bench: BenchId,
  machine: string,
  choices: Partial<AskingChoices>,
  signal: AbortSignal,
): Promise<WhatToAsk> => {
  const asked = new URLSearchParams(
    Object.entries(choices).map(([name, value]) => [name, Array.isArray(value) ? value.join(',') : String(value)]),
  )
  return get(`${machinePath(bench, machine)}/asking?${asked}`, signal)
}

/** Enters a price that was seen. */
export const addPrice = (bench: BenchId, id: string, content: PriceContentInput): Promise<Answer<PriceDocument>> =>
  post(`/bench/${bench}/prices`, { id, content })

/** Strikes a price out that was entered by mistake. Throws where it cannot be read first. */
export const strikePrice = async (bench: BenchId, id: string): Promise<Answer<PriceDocument>> => {
  const path = `/bench/${bench}/prices/${encodeURIComponent(id)}`
  const { entries } = await get<PriceDocument>(path, new AbortController().signal)
  const first = entries.find(({ content }) => content.kind === 'seen')
  return post(`${path}/entries`, { version: entries.length, content: { kind: 'struck', note: first?.id ?? '' } })
}

type PriceDocument = { readonly entries: readonly { readonly id: string; readonly content: PriceContent }[] }

/** The books; margins of this tax year, or of the one named. */
export const getBooks = (bench: BenchId, year: string | null, signal: AbortSignal): Promise<BooksView> =>
  get(`/bench/${bench}/books${year === null ? '' : `?year=${encodeURIComponent(year)}`}`, signal)

/** The first lines that the figures of a month are made of, in one currency, and how many there are in all. */
export const getBookLines = (
  bench: BenchId,
  { months, month, currency, limit }: LinesWanted,
  signal: AbortSignal,
): Promise<{ readonly lines: readonly LedgerLine[]; readonly total: number }> =>
  get(`/bench/${bench}/books/lines/${month}?months=${months}&currency=${currency}&limit=${limit}`, signal)

export type LinesWanted = {
  readonly months: MonthKind
  readonly month: string
  readonly currency: Currency
  readonly limit: number
}

/** Takes in a CSV file of past machines. */
export const importBooks = (
  bench: BenchId,
  csv: string,
  leaveOutWrong: boolean,
): Promise<Answer<Extract<ImportOutcome, { kind: 'imported' }>>> =>
  post(`/bench/${bench}/books/import`, { csv, leaveOutWrong })

/** A stretch of what was spent on no machine, the newest first. */
export type ExpenseList = {
  readonly items: readonly Omit<ExpenseState, 'struck'>[]
  readonly total: number
  readonly after: number | null
}
type ExpenseDocument = { readonly entries: readonly { readonly id: string; readonly content: ExpenseContent }[] }

export const getExpenses = (bench: BenchId, after: number | null, signal: AbortSignal): Promise<ExpenseList> =>
  get(`/bench/${bench}/expenses?limit=20${after === null ? '' : `&after=${after}`}`, signal)

export const addExpense = (
  bench: BenchId,
  id: string,
  content: ExpenseContentInput,
): Promise<Answer<ExpenseDocument>> => post(`/bench/${bench}/expenses`, { id, content })

/** Strikes out what was entered as spent. */
export const strikeExpense = async (
  bench: BenchId,
  id: string,
  signal: AbortSignal,
): Promise<Answer<ExpenseDocument>> => {
  const path = `/bench/${bench}/expenses/${encodeURIComponent(id)}`
  const { entries } = await get<ExpenseDocument>(path, signal)
  const first = entries.find(({ content }) => content.kind === 'spent')
  return post(`${path}/entries`, { version: entries.length, content: { kind: 'struck', note: first?.id ?? '' } })
}

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
