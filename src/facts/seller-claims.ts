import type { Source } from '../base/source.ts'

const source: Source = {
  title: 'What the words of an advert usually mean, UK street level 2024–26',
  evidence: 'judgement',
}

/** What a claim is about: that the machine works, that it works or cleans up, or that something is wrong with certain components. */
export type ClaimAbout =
  | { readonly kind: 'works' }
  | { readonly kind: 'works-or-cleans-up' }
  | { readonly kind: 'components'; readonly components: readonly string[] }

/** A claim and the share of machines of which what it is about is then true. A share below what is believed anyway raises nothing. */
export type SellerClaim = {
  readonly name: string
  readonly about: ClaimAbout
  readonly share: number
  readonly source: Source
}

const claim = (name: string, about: ClaimAbout, share: number): SellerClaim =>
  Object.freeze({ name, about, share, source })

const components = (...ids: readonly string[]): ClaimAbout => ({ kind: 'components', components: ids })

/** Components are those of the open repair data that a fault's rate is fitted from. */
export const sellerClaims = {
  works: claim('said to work', { kind: 'works' }, 0.8),
  untested: claim('untested', { kind: 'works-or-cleans-up' }, 0.45),
  opened: claim('spares or repair: somebody may have opened it', components('internal-wire', 'casing'), 0.4),
  'stored-damp': claim('kept in a shed or garage', components('water', 'motor-bearings'), 0.25),
  'building-dust': claim('used on building dust', components('motor-dirt', 'motor-bearings', 'filters'), 0.6),
  ash: claim('used on ash', components('motor-dirt', 'motor-bearings', 'filters'), 0.6),
  wet: claim('has been wet', components('water'), 0.5),
} as const satisfies Readonly<Record<string, SellerClaim>>

export type ClaimId = keyof typeof sellerClaims
export const claimIds = Object.keys(sellerClaims) as [ClaimId, ...ClaimId[]]

/** A fault with a complaint of this chance or more is one that a person using the machine would not call working. Judgement. */
export const noticedFrom = 0.3

/** Components that a clean puts right. */
export const cleansUp: readonly string[] = Object.freeze(['filters', 'bag-full', 'hose-blockage', 'blockage-unplaced'])
