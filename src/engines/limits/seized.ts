import type { Source } from '../../base/source.ts'
import { standstillShare } from '../../facts/motors.ts'
import { amountText, figures } from './amount-text.ts'
import { fuseTime, fuseTimeSources, type FuseTime } from './fuse-time.ts'

/** Current of a series motor that is held still, in ampere: V over the impedance of its windings. */
export const standstillA = (voltageV: number, resistanceOhm: number, reactanceOhm: number): number =>
  voltageV / Math.hypot(resistanceOhm, reactanceOhm)

export type SeizedMotor = {
  readonly runningA: number
  /** What it may draw held still: the least and the most. */
  readonly fromA: number
  readonly toA: number
  readonly fuseA: number
  /** How long the fuse holds at the least and at the most. */
  readonly atLeast: FuseTime
  readonly atMost: FuseTime
  readonly sentence: string
  readonly sources: readonly Source[]
}

/**
 * What a fuse does for a motor that cannot turn, as a range: two to four times the running current against the fuse's times.
 * Undefined for a fuse without published times.
 */
export const seizedMotor = (runningA: number, fuseA: number): SeizedMotor | undefined => {
  const fromA = standstillShare.low * runningA
  const toA = standstillShare.high * runningA
  const atLeast = fuseTime(fuseA, fromA)
  const atMost = fuseTime(fuseA, toA)
  if (atLeast === undefined || atMost === undefined) return undefined
  const draws = `Held still it draws ${amountText(fromA, 'ampere')} to ${amountText(toA, 'ampere')}`
  const sentence = `${draws}. With the least of that a ${figures(fuseA)} A fuse ${holds(atLeast)}; with the most it ${holds(atMost)}. Never leave it on if it does not turn.`
  const sources = [standstillShare.source, standstillShare.highSource, ...fuseTimeSources]
  return { runningA, fromA, toA, fuseA, atLeast, atMost, sentence, sources }
}

const holds = (time: FuseTime): string => {
  switch (time.kind) {
    case 'carries':
      return `holds for ${durationText(time.atLeastS)} or for ever`
    case 'may-melt':
      return `holds for ${durationText(time.shortestS)} at least, maybe for ever`
    case 'melts':
      return `melts after ${durationText(time.shortestS)} to ${durationText(time.longestS)}`
  }
}

const durationText = (durationS: number): string => {
  if (durationS === 0) return 'no time'
  return durationS < 120 ? `${figures(durationS)} s` : `${figures(Math.round(durationS / 60))} min`
}
