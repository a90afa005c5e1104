import type { Source } from '../base/source.ts'
import type { Complaint } from './complaints.ts'

const judged = (clause: string): Source => ({
  title: 'Buying dead machines to mend and sell, UK street level 2024–26',
  clause,
  evidence: 'judgement',
})

/** What a machine sells for by how it looks, as a share of what a tidy one does. */
export const conditionShares = {
  good: { name: 'good for its age', share: 1 },
  fair: { name: 'marks and scuffs', share: 0.85 },
  poor: { name: 'cracked, yellow or worn', share: 0.65 },
} as const
export const conditionSource = judged('looks and price')

export type Condition = keyof typeof conditionShares
export const conditionIds = Object.keys(conditionShares) as [Condition, ...Condition[]]

/** Nobody fetches a machine from further away than this; a larger figure is a slip. */
export const mostDistanceKm = { value: 1000, source: judged('distance') }

/** What a complaint usually means to a buyer: chance that it can be mended, parts in minor units, hours of bench and selling. */
export type UsualRepair = { readonly repairable: number; readonly partsMinor: number; readonly hours: number }

/** Of the quick formula's worked cases where there is one, else of the table of seller's words; hours batched. */
export const usualRepairs: Partial<Readonly<Record<Complaint, UsualRepair>>> = {
  dead: { repairable: 0.8, partsMinor: 900, hours: 3 },
  'cuts-out': { repairable: 0.88, partsMinor: 1200, hours: 2.6 },
  'weak-suction': { repairable: 0.95, partsMinor: 600, hours: 1.8 },
  'brush-not-turning': { repairable: 0.93, partsMinor: 1800, hours: 4.2 },
  smell: { repairable: 0.75, partsMinor: 2000, hours: 3 },
  noise: { repairable: 0.7, partsMinor: 3200, hours: 4.2 },
  sparks: { repairable: 0.6, partsMinor: 2400, hours: 3 },
  'trips-supply': { repairable: 0.6, partsMinor: 2000, hours: 3 },
}
export const usualRepairsSource = judged('what the claim usually means; six worked cases of the price ceiling')

/** Hours of breaking a machine for spares, batched: between the worked cases' 0.5 and 1. */
export const usualBreakHours = { value: 0.7, source: judged('six worked cases of the price ceiling') }
