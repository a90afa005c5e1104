import { amountText, quantityNames } from './amount-text.ts'
import type { Zone } from './decision.ts'
import type { Judged, Unprovable } from './judgement.ts'

type Said = Omit<Judged, 'sentence'>

/** The judgement as a plain sentence. */
export const judgementSentence = (judged: Said, zone: Zone, bar: Unprovable | null): string =>
  bar === null
    ? `${zoneSentence(judged, zone)}${linearSentence(judged)}`
    : `${barSentence(judged, bar)} Nothing is proved either way.`

const linearSentence = ({ isBeyondLinear, limit, unit }: Said): string =>
  isBeyondLinear && limit.linear !== null
    ? ` Some read the steps of this limit as a straight line, ${amountText(limit.linear, unit)} here, and it is beyond that.`
    : ''

const zoneSentence = (judged: Said, zone: Zone): string => {
  const { unit, limit, guardBand } = judged
  const read = readText(judged)
  const allowed = `the ${amountText(limit.value, unit)} ${limit.sense === 'at-most' ? 'allowed' : 'needed'}`
  const good = limit.sense === 'at-most' ? 'below' : 'above'
  const bad = limit.sense === 'at-most' ? 'above' : 'below'
  const band = guardBand === null || guardBand === 0 ? null : amountText(guardBand, unit)
  switch (zone) {
    case 'pass':
      return band === null
        ? `${read} is within ${allowed}; that limit already allows for the instrument.`
        : `${read} is ${good} ${allowed} by more than the uncertainty of ${band}.`
    case 'pass-within-uncertainty':
      return `${read} is on the right side of ${allowed}, but closer to it than the uncertainty of ${band ?? 'the instrument'}.`
    case 'fail-within-uncertainty':
      return `${read} is ${bad} ${allowed}, though by less than the uncertainty of ${band ?? 'the instrument'}.`
    case 'fail':
      return band === null
        ? `${read} is ${bad} ${allowed}.`
        : `${read} is ${bad} ${allowed} by more than the uncertainty of ${band}.`
  }
}

const readText = ({ shown, value, unit }: Said): string => {
  const amount = amountText(value, unit)
  switch (shown) {
    case 'figure':
      return amount
    case 'above':
      return `More than ${amount}`
    case 'below':
      return `Less than ${amount}`
  }
}

const barSentence = (judged: Said, bar: Unprovable): string => {
  const { instrument, quantity, unit, limit } = judged
  const thing = quantityNames[quantity]
  const allowed = amountText(limit.value, unit)
  switch (bar.kind) {
    case 'instrument-cannot-show':
      return `“${instrument}” does not measure ${thing}.`
    case 'test-voltage-too-low':
      return `“${instrument}” tests at ${amountText(bar.hasV, 'volt')}; ${thing} is proved at ${amountText(bar.needsV, 'volt')} DC.`
    case 'test-current-too-low':
      return `“${instrument}” drives ${amountText(bar.hasA, 'ampere')}; ${thing} is proved with ${amountText(bar.needsA, 'ampere')} or more.`
    case 'out-of-range':
      return `“${instrument}” ends at ${amountText(bar.maximum, unit)}, and that does not decide about ${allowed}.`
    case 'uncertainty-greater-than-limit':
      return `The uncertainty of “${instrument}” is ${amountText(bar.expanded, unit)} here, too much to prove ${allowed}.`
  }
}
