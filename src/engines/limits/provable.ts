import type { InstrumentFunction } from '../../facts/test-instruments.ts'
import { correct } from './instrument-reading.ts'
import type { JudgedLimit, Unprovable } from './judgement.ts'
import { combineUncertainty, type Contribution } from './uncertainty.ts'

/** Whether the method of the limit asks for more volts or more current than the instrument gives. */
export const methodBar = (used: InstrumentFunction, limit: JudgedLimit): Unprovable | null => {
  const hasV = used.testVoltageV ?? 0
  if (limit.testVoltageV !== null && hasV < limit.testVoltageV) {
    return { kind: 'test-voltage-too-low', hasV, needsV: limit.testVoltageV }
  }
  const hasA = used.testCurrentA ?? 0
  if (limit.leastTestCurrentA !== null && hasA < limit.leastTestCurrentA) {
    return { kind: 'test-current-too-low', hasA, needsA: limit.leastTestCurrentA }
  }
  return null
}

/**
 * Whether any reading on this instrument could pass the limit: nothing at all for a most value, the end of some range for a least one.
 * Gives the reason why none can, or null.
 */
export const canPass = (
  used: InstrumentFunction,
  limit: JudgedLimit,
  further: readonly Contribution[] = [],
): Unprovable | null => {
  const widest = used.ranges[used.ranges.length - 1]
  const expandedAt = (shown: number, range: InstrumentFunction['ranges'][number]): number =>
    combineUncertainty([...correct(used, shown, range).contributions, ...further]).expanded
  if (limit.sense === 'at-least') {
    if (widest.maximum < limit.value) return { kind: 'out-of-range', maximum: widest.maximum }
    const passes = used.ranges.some((range) => {
      const guardBand = limit.includesUncertainty ? 0 : expandedAt(range.maximum, range)
      return range.maximum - guardBand >= limit.value
    })
    return passes ? null : { kind: 'uncertainty-greater-than-limit', expanded: expandedAt(widest.maximum, widest) }
  }
  const leadOhm = used.leads?.kind === 'subtract' ? used.leads.ohm : 0
  const least = expandedAt(leadOhm, used.ranges[0])
  return least < limit.value ? null : { kind: 'uncertainty-greater-than-limit', expanded: least }
}
