import { moneyFromText, type Currency } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { quantityFromText, type Quantity } from '../../base/units.ts'
import type { NoteContentInput } from '../../bench/note.ts'
import type { Settings } from '../../bench/settings.ts'
import type { SignReply } from '../../blueprint/narrow.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { Complaint } from '../../facts/complaints.ts'
import type { Wear } from '../../facts/age-and-wear.ts'
import { repliesFrom } from '../blueprints/stored-replies.ts'

/** What is typed on the page for adding a machine: texts as they stand in the fields. */
export type Draft = {
  /** Answers given to find the blueprint by. */
  readonly replies: readonly SignReply[]
  readonly blueprint: string
  /** The blueprint whose plate is in the fields, so that an edited plate is not written over. */
  readonly platedFor: string
  readonly name: string
  readonly model: string
  readonly voltage: string
  readonly frequency: string
  readonly power: string
  readonly protectionClass: 'I' | 'II'
  readonly mass: string
  readonly age: string
  readonly wear: Wear | ''
  /** Whether hour and currency were brought in from the settings, so that what is typed is not written over. */
  readonly settled: boolean
  readonly currency: Currency
  readonly paid: string
  readonly hour: string
  readonly complaints: readonly Complaint[]
  readonly claim: string
  readonly missing: readonly string[]
}

export const emptyDraft: Draft = {
  replies: [],
  blueprint: '',
  platedFor: '',
  name: '',
  model: '',
  voltage: '',
  frequency: '',
  power: '',
  protectionClass: 'II',
  mass: '',
  age: '',
  wear: '',
  settled: false,
  currency: 'GBP',
  paid: '0',
  hour: '',
  complaints: [],
  claim: '',
  missing: [],
}

/** The draft with another blueprint: its plate comes in, and its name where none was typed; what was said and paid stays. */
export const withBlueprint = (draft: Draft, blueprint: Pick<Blueprint, 'id' | 'name' | 'plate'>): Draft => ({
  ...draft,
  blueprint: blueprint.id,
  platedFor: blueprint.id,
  name: draft.name.trim() === '' ? blueprint.name : draft.name,
  voltage: String(blueprint.plate.voltageV),
  frequency: String(blueprint.plate.frequencyHz),
  power: String(blueprint.plate.powerW),
  protectionClass: blueprint.plate.protectionClass,
  mass: blueprint.plate.massKg === undefined ? '' : String(blueprint.plate.massKg),
  missing: [],
})

/** The draft with the hour and the currency of the settings, unless they were brought in before. */
export const withSettings = (draft: Draft, { hourMinor, currency }: Pick<Settings, 'hourMinor' | 'currency'>): Draft =>
  draft.settled ? draft : { ...draft, settled: true, hour: (hourMinor / 100).toFixed(2), currency }

type AddedNote = Extract<NoteContentInput, { kind: 'added' }>

/** The first note of a machine from the draft, or what is wrong with each field. Ranges are the bench's to judge. */
export const contentFromDraft = (draft: Draft): Result<AddedNote> => {
  const problems: Problem[] = []
  const take = <T>(result: Result<T>, otherwise: T): T => {
    if (result.kind === 'ok') return result.value
    problems.push(...result.problems)
    return otherwise
  }
  const content: AddedNote = {
    kind: 'added',
    name: take(filled(draft.name, 'name', 'A name is needed', 'Any words you will know it by'), ''),
    blueprint: take(
      filled(draft.blueprint, 'blueprint', 'No blueprint is chosen', 'Choose the one that looks most like it'),
      '',
    ),
    plate: {
      voltageV: take(quantityFromText(draft.voltage, 'voltageV', 'plate.voltageV'), 0),
      frequencyHz: take(hertz(draft.frequency), 0),
      powerW: take(quantityFromText(draft.power, 'powerW', 'plate.powerW'), 0),
      protectionClass: draft.protectionClass,
      massKg: take(optional(draft.mass, 'massKg', 'plate.massKg'), undefined),
    },
    paidMinor: take(money(draft.paid, 'paidMinor'), 0),
    currency: draft.currency,
    complaints: [...draft.complaints],
    claim: draft.claim.trim(),
    missing: [...draft.missing],
    // Left empty, the bench takes that of the settings.
    ...(draft.hour.trim() === '' ? {} : { hourMinor: take(money(draft.hour, 'hourMinor'), 0) }),
    ...(draft.model.trim() === '' ? {} : { model: draft.model.trim() }),
    ageYears: take(years(draft.age), undefined),
    ...(draft.wear === '' ? {} : { wear: draft.wear }),
  }
  return problems.length === 0 ? ok(content) : refused(...problems)
}

const filled = (text: string, where: string, what: string, mend: string): Result<string> =>
  text.trim() === '' ? refused(problem('empty', where, what, mend)) : ok(text.trim())

const optional = (text: string, quantity: Quantity, where: string): Result<number | undefined> =>
  text.trim() === '' ? ok(undefined) : quantityFromText(text, quantity, where)

const years = (text: string): Result<number | undefined> => {
  const typed = text.trim().replace(',', '.')
  if (typed === '') return ok(undefined)
  return /^\d+(\.\d+)?$/.test(typed)
    ? ok(Number(typed))
    : refused(problem('not-a-number', 'ageYears', `“${text}” is not a number of years`, 'Write such as 12'))
}

const hertz = (text: string): Result<number> => {
  const match = /^\s*(\d+(?:[.,]\d+)?)\s*(?:Hz)?\s*$/i.exec(text)
  if (match === null)
    return refused(problem('not-a-number', 'plate.frequencyHz', `“${text}” is not a frequency`, 'Write 50 or 60'))
  return ok(Number((match[1] ?? '').replace(',', '.')))
}

const money = (text: string, where: string): Result<number> => {
  const minor = text.trim() === '' ? 0 : moneyFromText(text)
  if (minor !== null) return ok(minor)
  return refused(problem('not-money', where, `“${text}” is not an amount of money`, 'Write it like 12.50'))
}

/** The draft as stored text, and back. Text that is no draft gives null. */
export const draftFromText = (text: string | null): Draft | null => {
  if (text === null) return null
  try {
    const stored = JSON.parse(text) as Partial<Draft> | null
    return stored !== null && typeof stored === 'object' && typeof stored.blueprint === 'string'
      ? { ...emptyDraft, ...stored, replies: repliesFrom(stored.replies) }
      : null
  } catch {
    return null
  }
}
