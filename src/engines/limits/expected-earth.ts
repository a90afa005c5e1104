import { contactOhm } from '../../facts/copper.ts'
import type { SafetyProfile } from '../../facts/safety-limits.ts'
import { amountText } from './amount-text.ts'
import { leadResistance } from './conductor.ts'
import type { Lead, LimitValue } from './limit-value.ts'
import { limitFor } from './profiles.ts'

/** What a sound machine reads from the earth pin to its metal, and what the profile allows. Ohm. */
export type ExpectedEarth = {
  /** Null where the profile has no limit for the protective conductor. */
  readonly limit: LimitValue | null
  /** The lead's own protective conductor: the most it may have, and what it usually has. */
  readonly cordMaximumOhm: number
  readonly cordUsualOhm: number
  /** Between these a sound machine reads, contacts with it, the meter's leads nulled. */
  readonly readsFromOhm: number
  readonly readsToOhm: number
  readonly sentence: string
}

const classOne = { class: 'I', isPortable: true, hasElectronicSwitch: false, hasSurgeSuppressor: false } as const

/**
 * Expected reading of the protective conductor: the cord and its contacts, at 20 °C.
 * @param hasReel a cord reel adds its sliding contacts
 */
export const expectedEarth = (profile: SafetyProfile, lead: Lead, hasReel: boolean): ExpectedEarth => {
  const limit = limitFor(profile, 'earth-continuity', classOne, lead)?.value ?? null
  const cord = leadResistance(lead.size, lead.lengthM, 1, 20, false)
  const groups = hasReel ? 2 : 1
  const readsFromOhm = cord.usualOhm + contactOhm.low
  const readsToOhm = cord.maximumOhm + contactOhm.high * groups
  const band = `A sound one reads about ${amountText(readsFromOhm, 'ohm')} and at most ${amountText(readsToOhm, 'ohm')}`
  return {
    limit,
    cordMaximumOhm: cord.maximumOhm,
    cordUsualOhm: cord.usualOhm,
    readsFromOhm,
    readsToOhm,
    sentence: `${band}; ${limitText(limit)}.`,
  }
}

const limitText = (limit: LimitValue | null): string => {
  if (limit === null) return 'this profile sets no limit'
  const allowed = `${amountText(limit.value, 'ohm')} is allowed (${limit.because})`
  return limit.linear === null || limit.linear === limit.value
    ? allowed
    : `${allowed}; read as a straight line it would be ${amountText(limit.linear, 'ohm')}`
}
