import type { Currency } from '../base/money.ts'
import { problem, type Problem } from '../base/problem.ts'
import type { Attitude } from '../facts/attitudes.ts'
import type { Region } from '../facts/regions.ts'
import { costNames } from '../facts/trade-costs.ts'
import type { CostsSet } from '../machine/costs.ts'
import type { Clock, SettingsStore } from './ports.ts'
import type { KeptChange, SettingsChange } from './settings-change.ts'

/** What holds for the whole bench. An hour's worth in minor units of the currency. */
export type Settings = {
  /** What an hour of one's own time is worth; a new machine takes it over. */
  readonly hourMinor: number
  /** What a new machine is bought and sold in. */
  readonly currency: Currency
  readonly attitude: Attitude
  /** Whose rules machines are proved by until a note says otherwise. */
  readonly region: Region
  /** Who makes the checks after repair, as it stands on the record. */
  readonly checkedBy: string
  /** Files of photographs are kept as they were sent too, with the place and the device in them. */
  readonly keepOriginals: boolean
  /** What things cost, where it is set; amounts in minor units of `currency`. */
  readonly costs: CostsSet
}

/** What holds until something else is set. The hour: judgement, what a small bench reckons with. */
export const defaultSettings: Settings = {
  hourMinor: 800,
  currency: 'GBP',
  attitude: 'average',
  region: 'UK',
  checkedBy: '',
  keepOriginals: false,
  costs: {},
}

/** What the changes add up to, in the order they were made. */
export const settingsOf = (changes: readonly KeptChange[]): Settings =>
  changes.reduce(
    (settings, { change }) => ({
      hourMinor: change.hourMinor ?? settings.hourMinor,
      currency: change.currency ?? settings.currency,
      attitude: change.attitude ?? settings.attitude,
      region: change.region ?? settings.region,
      checkedBy: change.checkedBy ?? settings.checkedBy,
      keepOriginals: change.keepOriginals ?? settings.keepOriginals,
      costs: costsAfter(settings.costs, change.costs ?? {}),
    }),
    defaultSettings,
  )

const costsAfter = (costs: CostsSet, change: NonNullable<SettingsChange['costs']>): CostsSet => {
  const after = { ...costs, ...change }
  const set = costNames.filter((name) => (after[name] ?? null) !== null)
  return Object.fromEntries(set.map((name) => [name, after[name]]))
}

export const currentSettings = async (store: SettingsStore): Promise<Settings> => settingsOf(await store.changes())

/** What became of a change. Nothing was written unless it is `changed`. */
export type SettingsOutcome =
  | { readonly kind: 'changed'; readonly settings: Settings }
  | { readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly kind: 'not-kept'; readonly problems: readonly Problem[] }

/** Keeps a change. Two hands that change different things at the same time both have their way. */
export const changeSettings = async (
  deps: { readonly settings: SettingsStore; readonly now: Clock },
  change: SettingsChange,
): Promise<SettingsOutcome> => {
  const { costs = {}, ...rest } = change
  const isEmpty = [...Object.values(rest), ...Object.values(costs)].every((value) => value === undefined)
  if (isEmpty) return { kind: 'refused', problems: [nothingGiven] }
  const outcome = await deps.settings.add({ at: deps.now(), change })
  if (outcome.kind === 'not-kept') return { kind: 'not-kept', problems: [outcome.problem] }
  return { kind: 'changed', settings: await currentSettings(deps.settings) }
}

const nothingGiven = problem(
  'nothing-given',
  '',
  'Nothing is said to be changed',
  'Give hourMinor, currency, attitude, region, checkedBy, keepOriginals or costs',
)
