import type { LimitRule, SafetyLimit } from '../../facts/safety-limits.ts'
import { figures } from './amount-text.ts'
import { seriesOhm } from './conductor.ts'
import { sizeText, type ConductorSize } from './sizes.ts'

/** The lead of a machine, as far as limits go by it. */
export type Lead = { readonly lengthM: number; readonly size: ConductorSize }

/** A limit worked out for one machine. Ohm, ampere or volt. */
export type LimitValue = {
  readonly value: number
  /** "0.1 Ω per further 7.5 m" read as a straight line instead of steps; null where the limit does not go by steps. */
  readonly linear: number | null
  /** How it came about: `0.1 Ω + 8 m of 0.75 mm² (0.208 Ω)`. */
  readonly because: string
}

/** Whether the limit cannot be worked out without the length and size of the lead. */
export const needsLead = (rule: LimitRule): boolean => rule.kind !== 'fixed'

/** The limit for a machine with this lead; null where the lead is needed and not known. */
export const limitValue = (limit: Pick<SafetyLimit, 'rule'>, lead: Lead | null): LimitValue | null => {
  const { rule } = limit
  switch (rule.kind) {
    case 'fixed':
      return { value: rule.value, linear: null, because: 'one figure for all' }
    case 'with-cord': {
      if (lead === null) return null
      const cordOhm = seriesOhm(lead.size.maximumOhmPerKm, lead.lengthM)
      const value = Math.max(rule.atLeastOhm, rule.allowanceOhm + cordOhm)
      const cord = `${figures(lead.lengthM)} m of ${sizeText(lead.size)} (${figures(cordOhm)} Ω)`
      return { value, linear: null, because: `${figures(rule.allowanceOhm)} Ω and the lead’s own conductor, ${cord}` }
    }
    case 'stepped':
      return lead === null ? null : steppedValue(rule, lead)
  }
}

const steppedValue = (rule: Extract<LimitRule, { kind: 'stepped' }>, lead: Lead): LimitValue => {
  const { thick } = rule
  if (thick !== null && lead.size.areaMm2 > thick.aboveMm2) {
    const byArea = thick.contactOhm + lead.lengthM / (thick.conductivityMPerOhmMm2 * lead.size.areaMm2)
    return {
      value: Math.min(rule.capOhm, byArea),
      linear: null,
      because: 'length over conductivity and area, and contacts',
    }
  }
  const furtherM = Math.max(0, lead.lengthM - rule.upToM)
  const at = (steps: number): number => Math.min(rule.capOhm, rule.baseOhm + rule.stepOhm * steps)
  return {
    value: at(Math.ceil(furtherM / rule.stepM)),
    linear: at(furtherM / rule.stepM),
    because: `${figures(rule.baseOhm)} Ω up to ${figures(rule.upToM)} m, ${figures(rule.stepOhm)} Ω for each further ${figures(rule.stepM)} m begun`,
  }
}
