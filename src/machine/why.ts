import type { Check } from '../blueprint/schema.ts'
import type { PlanAnswer, RankedMove } from '../engines/plan/index.ts'
import type { MoveContext } from './move-context.ts'
import type { ExitId } from './view.ts'
import { chargingText, exitNames, ohmRangeText } from './words.ts'
import type { Band } from './bands.ts'

const percent = (p: number): string =>
  p > 0.995 && p < 1 ? 'over 99' : p > 0 && p < 0.005 ? 'under 1' : String(Math.round(p * 100))
const minutesText = (minutes: number): string =>
  `${minutes < 10 && minutes % 1 !== 0 ? minutes.toFixed(1) : Math.round(minutes)} min`

/** One sentence: how a check splits the suspects, and what it costs in time. */
export const whyCheck = (context: MoveContext, ranked: RankedMove, check: Check): string => {
  const names = outcomeNames(context, check)
  const likely = ranked.outcomeProbability
    .map((p, i) => ({ p, name: names[i] ?? '' }))
    .filter(({ p, name }) => p >= 0.02 && name !== '')
    .toSorted((a, b) => b.p - a.p)
    .slice(0, 3)
  const split = likely.map(({ p, name }) => `${name} ${percent(p)} %`).join(', ')
  const gate = check.beforeRunning ? ' Must be passed before the machine may be run.' : ''
  return `${split}; ${minutesText(ranked.minutes)}.${gate}`
}

const outcomeNames = (context: MoveContext, check: Check): readonly string[] => {
  if (check.kind !== 'meter') return check.outcomes.map((outcome) => outcome.name.toLowerCase())
  const bands = context.plan.bands.get(check.id) ?? []
  return [...bands.map(bandName), 'jumps', '']
}

/** A band in words: `4 to 13 Ω`, `open`, `rises, then open`. A band cut at a limit may begin where it ends. */
export const bandName = (band: Band): string =>
  'lowOhm' in band
    ? ohmRangeText(Math.min(band.fromOhm, band.toOhm), band.toOhm)
    : band.id === 'open'
      ? 'open'
      : chargingText

export const whyRepair = (needed: number, success: number): string =>
  `Needed with ${percent(needed)} % probability; works ${percent(success)} % of the time when it is.`

export const whyExit = (answer: PlanAnswer, exit: ExitId): string => {
  const [best] = answer.ranked
  if (answer.ranked.some(({ move, expectedMinor }) => move.kind !== 'exit' && expectedMinor > best.expectedMinor))
    return best.move.id === exit
      ? 'Carrying on would bring more on average, but loses money too often.'
      : asItStands(exit)
  const goOn = answer.ranked.find((ranked) => ranked.move.kind !== 'exit')
  return goOn === undefined || answer.best.kind !== 'exit'
    ? asItStands(exit)
    : 'No further check or repair is expected to earn back its time.'
}

const asItStands = (exit: ExitId): string => `${exitNames[exit]} as it stands.`
