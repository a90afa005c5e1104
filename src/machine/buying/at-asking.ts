import type { AtAskingView } from './buying-view.ts'
import { finestMinor } from './ceiling.ts'
import type { Prospect } from './prospect.ts'

const drawnColumns = 60
/** What is drawn reaches over all but this much at either end. */
const drawnTail = 0.002

/** What buying at the asking price earns. `paidMinor`: price and travel; `minutes`: own time in all. */
export const atAsking = (
  prospect: Prospect,
  askingMinor: number,
  paidMinor: number,
  minutes: number,
  hourMinor: number,
): AtAskingView => {
  const profitMinor = prospect.meanMinor - paidMinor
  return {
    askingMinor,
    lossChance: lossChance(prospect, paidMinor),
    profitMinor,
    spreadMinor: prospect.sdMinor,
    ninety: [prospect.quantile(0.05) - paidMinor, prospect.quantile(0.95) - paidMinor],
    density: densityOf(prospect, paidMinor),
    minutes,
    anHourMinor: minutes === 0 ? null : hourMinor + (60 * profitMinor) / minutes,
  }
}

/** Just getting the money back is no loss. */
const lossChance = (prospect: Prospect, paidMinor: number): number =>
  Math.min(1, Math.max(0, prospect.atMost(paidMinor - finestMinor)))

const densityOf = (prospect: Prospect, paidMinor: number): AtAskingView['density'] => {
  const [low, high] = [Math.floor(prospect.quantile(drawnTail)), Math.ceil(prospect.quantile(1 - drawnTail))]
  const width = Math.max(1, (high - low) / drawnColumns)
  const edges = Array.from({ length: drawnColumns + 1 }, (_, i) => low + i * width)
  const below = edges.map((edge, i) => (i === 0 ? 0 : i === drawnColumns ? 1 : prospect.atMost(edge)))
  return edges.slice(1).map((edge, i) => ({ minor: edge - width / 2 - paidMinor, share: below[i + 1] - below[i] }))
}
