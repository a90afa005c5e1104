import type { InstrumentFunction, TestInstrument } from '../../facts/test-instruments.ts'
import { unitOf, type Measurand } from './amount-text.ts'
import { guardedRule, includedRule, zoneOf, type Zone } from './decision.ts'
import { correct, measuresFor, rangeOf, type Reading } from './instrument-reading.ts'
import { judgementSentence } from './judge-words.ts'
import type { Judged, Judgement, JudgedLimit, Unprovable } from './judgement.ts'
import { canPass, methodBar } from './provable.ts'
import { combineUncertainty, type Contribution, type Uncertainty } from './uncertainty.ts'

type Tried = {
  readonly reading: Reading
  readonly value: number
  readonly uncertainty: Uncertainty
  readonly guardBand: number
  readonly zone: Zone
  readonly bar: Unprovable | null
}

/**
 * Judges one reading against one limit. The guard band is the expanded uncertainty (k = 2), taken once, and not at all where the
 * limit already allows for it. What an instrument cannot prove can still fail: an open earth is open on any meter.
 * @param further what else is not known about the reading, in its own unit
 */
export const judgeReading = (
  quantity: Measurand,
  reading: Reading,
  instrument: Pick<TestInstrument, 'name' | 'functions'>,
  limit: JudgedLimit,
  further: readonly Contribution[] = [],
): Judgement => {
  const measures = measuresFor(quantity)
  const tried = instrument.functions
    .filter((used) => used.measures === measures)
    .filter((used) => reading.testVoltageV === null || used.testVoltageV === reading.testVoltageV)
    .map((used) => tryFunction(reading, used, limit, further))
    .reduce<Tried | null>((best, one) => (best === null || isBetter(one, best) ? one : best), null)
  const rule = limit.includesUncertainty ? includedRule : guardedRule
  const about = { quantity, unit: unitOf(quantity), limit, instrument: instrument.name, rule }
  if (tried === null) {
    const { value, shown } = reading
    const nothing = { uncertainty: null, guardBand: null, acceptanceLimit: null, isBeyondLinear: false } as const
    return finish({ ...about, value, shown, ...nothing }, 'pass', { kind: 'instrument-cannot-show' })
  }
  const acceptanceLimit = limit.sense === 'at-most' ? limit.value - tried.guardBand : limit.value + tried.guardBand
  const { value, uncertainty, guardBand } = tried
  const isBeyondLinear = limit.linear !== null && value > limit.linear && value <= limit.value
  const judged = {
    ...about,
    value,
    shown: tried.reading.shown,
    uncertainty,
    guardBand,
    acceptanceLimit,
    isBeyondLinear,
  }
  return finish(judged, tried.zone, tried.bar)
}

const finish = (judged: Omit<Judged, 'sentence'>, zone: Zone, bar: Unprovable | null): Judgement =>
  bar === null || zone === 'fail'
    ? { kind: zone, ...judged, sentence: judgementSentence(judged, zone, null) }
    : { kind: 'not-provable', reason: bar, ...judged, sentence: judgementSentence(judged, zone, bar) }

/** A function that can prove goes before one that cannot, the right method before the wrong one, a sure one before an unsure one. */
const isBetter = (one: Tried, other: Tried): boolean =>
  hindrance(one.bar) !== hindrance(other.bar)
    ? hindrance(one.bar) < hindrance(other.bar)
    : one.uncertainty.expanded < other.uncertainty.expanded

const hindrance = (bar: Unprovable | null): number => {
  switch (bar?.kind) {
    case undefined:
      return 0
    case 'out-of-range':
    case 'uncertainty-greater-than-limit':
      return 1
    case 'test-voltage-too-low':
    case 'test-current-too-low':
    case 'instrument-cannot-show':
      return 2
  }
}

const tryFunction = (
  given: Reading,
  used: InstrumentFunction,
  limit: JudgedLimit,
  further: readonly Contribution[],
): Tried => {
  const { reading, range } = onRange(used, given)
  const { value, contributions } = correct(used, reading.value, range)
  const uncertainty = combineUncertainty([...contributions, ...further])
  const guardBand = limit.includesUncertainty ? 0 : uncertainty.expanded
  const zone = zoneOf(value, limit.value, limit.sense, guardBand)
  const bar = methodBar(used, limit) ?? canPass(used, limit, further) ?? boundBar(reading, range.maximum, zone, limit)
  return { reading, value, uncertainty, guardBand, zone: boundZone(reading, zone, limit), bar }
}

/** The range of a reading; a figure beyond all ranges is "above" the largest. */
const onRange = (used: InstrumentFunction, reading: Reading) => {
  const range = rangeOf(used, reading)
  if (range !== undefined) return { reading, range }
  const widest = used.ranges.find((one) => one.maximum === reading.rangeMaximum) ?? used.ranges[used.ranges.length - 1]
  return { reading: { ...reading, shown: 'above', value: widest.maximum } as const, range: widest }
}

/** "Above" proves a pass of a least value, "below" one of a most value; the other way round only a fail is sure. */
const boundHelps = (reading: Reading, limit: JudgedLimit): boolean =>
  reading.shown === (limit.sense === 'at-least' ? 'above' : 'below')

const boundBar = (reading: Reading, maximum: number, zone: Zone, limit: JudgedLimit): Unprovable | null => {
  if (reading.shown === 'figure') return null
  return boundHelps(reading, limit) && zone === 'pass' ? null : { kind: 'out-of-range', maximum }
}

/** A bound that speaks for the machine cannot fail it, however low it is. */
const boundZone = (reading: Reading, zone: Zone, limit: JudgedLimit): Zone =>
  reading.shown !== 'figure' && boundHelps(reading, limit) && zone === 'fail' ? 'fail-within-uncertainty' : zone
