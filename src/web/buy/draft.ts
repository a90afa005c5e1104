import { moneyFromText, type Currency } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import type { SignReply } from '../../blueprint/narrow.ts'
import type { Condition } from '../../facts/buying.ts'
import type { Complaint } from '../../facts/complaints.ts'
import type { ClaimId } from '../../facts/seller-claims.ts'
import type { Wear } from '../../facts/age-and-wear.ts'
import type { Advert, AdvertInput } from '../../machine/buying/advert.ts'
import { repliesFrom } from '../blueprints/stored-replies.ts'

/** What is typed on the page for weighing an advert: texts as they stand in the fields. */
export type BuyDraft = {
  /** Answers given to find the blueprint by. */
  readonly replies: readonly SignReply[]
  readonly blueprint: string
  /** Kept under this name; empty until the advert is kept. */
  readonly name: string
  readonly words: string
  /** What overrules what is read from the words; null while the words hold. */
  readonly complaints: readonly Complaint[] | null
  readonly claims: readonly ClaimId[] | null
  readonly asking: string
  readonly distance: string
  readonly age: string
  readonly wear: Wear | ''
  readonly condition: Condition
  readonly missing: readonly string[]
  readonly wanted: 'profit' | 'an-hour'
  readonly wantedMoney: string
  readonly answers: Advert['answers']
  readonly looked: Advert['looked']
  /** The advert that is weighed anew, and how many entries it had; null for one that is not kept yet. */
  readonly kept: { readonly id: string; readonly version: number } | null
  /** Chosen once, so that keeping it again after a lost answer does no harm. */
  readonly id: string
}

export const emptyBuyDraft: BuyDraft = {
  replies: [],
  blueprint: '',
  name: '',
  words: '',
  complaints: null,
  claims: null,
  asking: '',
  distance: '',
  age: '',
  wear: '',
  condition: 'good',
  missing: [],
  wanted: 'profit',
  wantedMoney: '',
  answers: [],
  looked: [],
  kept: null,
  id: '',
}

/** The draft for another kind: what was found on parts that only the other had goes. */
export const withKind = (draft: BuyDraft, blueprint: string): BuyDraft =>
  blueprint === draft.blueprint ? draft : { ...draft, blueprint, missing: [], looked: [], complaints: null }

/** The advert as typed, or what is wrong with each field. Ranges are the engine's to judge. */
export const advertFromDraft = (draft: BuyDraft, currency: Currency): Result<AdvertInput> => {
  const problems: Problem[] = []
  const take = <T>(result: Result<T>, otherwise: T): T => {
    if (result.kind === 'ok') return result.value
    problems.push(...result.problems)
    return otherwise
  }
  const advert: AdvertInput = {
    blueprint: draft.blueprint,
    words: draft.words,
    ...(draft.complaints === null ? {} : { complaints: [...draft.complaints] }),
    ...(draft.claims === null ? {} : { claims: [...draft.claims] }),
    askingMinor: take(money(draft.asking, 'askingMinor'), 0),
    distanceKm: take(number(draft.distance, 'distanceKm', 'kilometres'), undefined) ?? 0,
    ageYears: take(number(draft.age, 'ageYears', 'years'), undefined),
    ...(draft.wear === '' ? {} : { wear: draft.wear }),
    condition: draft.condition,
    missing: [...draft.missing],
    // With no amount nothing is wanted but to lose nothing, however that is put.
    wanted:
      draft.wantedMoney.trim() === ''
        ? { kind: 'profit', minor: 0 }
        : { kind: draft.wanted, minor: take(money(draft.wantedMoney, 'wanted'), 0) },
    answers: [...draft.answers],
    looked: [...draft.looked],
    currency,
  }
  return problems.length === 0 ? ok(advert) : refused(...problems)
}

const number = (text: string, where: string, unit: string): Result<number | undefined> => {
  const typed = text.trim().replace(',', '.')
  if (typed === '') return ok(undefined)
  return /^\d+(\.\d+)?$/.test(typed)
    ? ok(Number(typed))
    : refused(problem('not-a-number', where, `“${text}” is not a number of ${unit}`, 'Write such as 12'))
}

const money = (text: string, where: string): Result<number> => {
  const minor = text.trim() === '' ? 0 : moneyFromText(text)
  return minor === null ? refused(problem('not-money', where, `“${text}” is not an amount of money`, 'Write it like 12.50')) : ok(minor) // prettier-ignore
}

const moneyInField = (minor: number): string => (minor === 0 ? '' : (minor / 100).toFixed(2).replace(/\.00$/, ''))

/** A kept advert to be weighed anew. */
export const draftFromAdvert = (name: string, advert: Advert, kept: NonNullable<BuyDraft['kept']>): BuyDraft => ({
  ...emptyBuyDraft,
  name,
  kept,
  blueprint: advert.blueprint,
  words: advert.words,
  complaints: advert.complaints ?? null,
  claims: advert.claims ?? null,
  asking: moneyInField(advert.askingMinor),
  distance: advert.distanceKm === 0 ? '' : String(advert.distanceKm),
  age: advert.ageYears === undefined ? '' : String(advert.ageYears),
  wear: advert.wear ?? '',
  condition: advert.condition,
  missing: advert.missing,
  wanted: advert.wanted.kind,
  wantedMoney: moneyInField(advert.wanted.minor),
  answers: advert.answers,
  looked: advert.looked,
})

/** The draft as stored text, and back. Text that is no draft gives null. */
export const buyDraftFromText = (text: string | null): BuyDraft | null => {
  if (text === null) return null
  try {
    const stored = JSON.parse(text) as Partial<BuyDraft> | null
    return stored !== null && typeof stored === 'object' && typeof stored.blueprint === 'string'
      ? { ...emptyBuyDraft, ...stored, replies: repliesFrom(stored.replies) }
      : null
  } catch {
    return null
  }
}

export const storedBuyDraft = 'thrum-buy'
