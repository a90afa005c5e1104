import type { Source } from '../base/source.ts'
import type { ApplianceClass } from './regions.ts'
import type { LimitRule, SafetyLimit } from './safety-limits.ts'

const plain = {
  portable: null,
  testVoltageV: null,
  leastTestCurrentA: null,
  // No text at hand says that a figure already allows for the instrument, so a guard band is taken.
  includesUncertainty: false,
} as const

/** Resistance of the protective conductor of a class I machine. */
export const earthRow = (rule: LimitRule, leastTestCurrentA: number | null, source: Source): SafetyLimit => ({
  ...plain,
  id: 'earth-continuity',
  quantity: 'earth-continuity',
  classes: ['I'],
  sense: 'at-most',
  rule,
  leastTestCurrentA,
  source,
})

/** Insulation between live parts together and metal that can be touched, at 500 V DC. */
export const insulationRow = (
  classes: readonly ApplianceClass[],
  leastMegohm: number,
  source: Source,
): SafetyLimit => ({
  ...plain,
  id: `insulation-${classes.join('-')}`,
  quantity: 'insulation',
  classes,
  sense: 'at-least',
  rule: { kind: 'fixed', value: leastMegohm * 1e6 },
  testVoltageV: 500,
  source,
})

type CurrentQuantity = 'protective-conductor-current' | 'touch-current' | 'substitute-leakage'

/** A current that flows to earth or through whoever touches the machine. */
export const currentRow = (
  quantity: CurrentQuantity,
  appliance: ApplianceClass,
  mostMilliampere: number,
  source: Source,
  portable: boolean | null = null,
): SafetyLimit => ({
  ...plain,
  id: `${quantity}-${appliance}${portable === null ? '' : portable ? '-portable' : '-other'}`,
  quantity,
  classes: [appliance],
  portable,
  sense: 'at-most',
  rule: { kind: 'fixed', value: mostMilliampere / 1000 },
  source,
})

/** Voltage between the pins a second after the plug is pulled. */
export const pinVoltageRow = (mostV: number, source: Source): SafetyLimit => ({
  ...plain,
  id: 'plug-pin-voltage',
  quantity: 'plug-pin-voltage',
  classes: ['I', 'II'],
  sense: 'at-most',
  rule: { kind: 'fixed', value: mostV },
  source,
})

/** A tenth of an ohm and the cord’s own conductor. */
export const tenthAndCord: LimitRule = { kind: 'with-cord', allowanceOhm: 0.1, atLeastOhm: 0 }

export const retrieved = (title: string, clause: string, url: string): Source => ({
  title,
  clause,
  url,
  evidence: 'retrieved',
})
export const fromMemory = (title: string, clause: string): Source => ({ title, clause, evidence: 'from memory' })
