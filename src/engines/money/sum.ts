import { logNormalMean, logNormalOfBand, logNormalQuantile, normalAtMost, type LogNormal } from './distributions.ts'
import { gridPoint, gridQuantile, type Grid } from './grid.ts'
import type { Part, SumTask } from './request-schema.ts'

export type MoneyDistribution = {
  readonly meanMinor: number
  readonly sdMinor: number
  readonly medianMinor: number
  readonly half: readonly [number, number]
  readonly ninety: readonly [number, number]
  /** Chance of ending below zero, 0..1. */
  readonly lossShare: number
  /** Chance that nothing sells. */
  readonly nothingShare: number
  /** Probability of each stretch of money, for drawing: shares of columns of equal width, by their middles. */
  readonly density: readonly { readonly minor: number; readonly share: number }[]
  readonly stepMinor: number
  readonly parts: readonly { readonly id: string; readonly meanMinor: number; readonly sellsShare: number }[]
}

/** The grid has about this many points: enough that its step is far below any part's spread. */
const wantedPoints = 3000
const tail = 1e-7
const drawnColumns = 80

/**
 * Distribution of the sum of independent parts, each of which brings its price less fees with the chance that it is sound and
 * sells, and else nothing; less what is spent for certain. Exact but for the grid: each part's probability is laid on the grid so
 * that its mean is kept, and the parts are convolved.
 */
export const sumOfParts = (task: SumTask): MoneyDistribution => {
  const parts = task.parts.map(partOf)
  const highest = parts.reduce((sum, { top }) => sum + Math.max(0, top), 0)
  const lowest = parts.reduce((sum, { saleCost }) => sum + saleCost, 0)
  const step = Math.max(1, Math.ceil((highest + lowest) / wantedPoints))
  const total = parts.map((part) => laidOut(part, step)).reduce(convolve, { first: 0, shares: Float64Array.of(1) })
  const grid: Grid = { start: total.first * step - task.costMinor, step, size: total.shares.length }
  return {
    ...momentsOf(parts, task.costMinor),
    ...quantilesOf(grid, total.shares),
    lossShare: lossOf(grid, total.shares),
    nothingShare: parts.reduce((product, { chance }) => product * (1 - chance), 1),
    density: columnsOf(grid, total.shares),
    stepMinor: step,
    parts: parts.map((part) => ({ id: part.id, meanMinor: Math.round(meanOf(part)), sellsShare: part.chance })),
  }
}

type SaleOfPart = {
  readonly id: string
  /** Chance that it is sound and sells. */
  readonly chance: number
  /** The price less the fee's share. */
  readonly price: LogNormal
  readonly saleCost: number
  /** The most it brings, but for a tail. */
  readonly top: number
}

const partOf = ({ id, price, soundShare, sellsShare, feeShare, saleCostMinor }: Part): SaleOfPart => {
  const gross =
    price.kind === 'exact' ? { median: price.minor, sdLog: 0 } : logNormalOfBand(price.lowMinor, price.highMinor)
  const net = { median: gross.median * (1 - feeShare), sdLog: feeShare === 1 ? 0 : gross.sdLog }
  const top = (net.sdLog === 0 ? net.median : logNormalQuantile(1 - tail, net)) - saleCostMinor
  return { id, chance: soundShare * sellsShare, price: net, saleCost: saleCostMinor, top }
}

const meanOf = ({ chance, price, saleCost }: SaleOfPart): number => chance * (logNormalMean(price) - saleCost)

const momentsOf = (parts: readonly SaleOfPart[], costMinor: number) => {
  const variance = parts.reduce((sum, part) => {
    const { chance, price, saleCost } = part
    const mean = logNormalMean(price) - saleCost
    const ownVariance = logNormalMean(price) ** 2 * Math.expm1(price.sdLog ** 2)
    return sum + chance * (ownVariance + mean ** 2) - (chance * mean) ** 2
  }, 0)
  const mean = parts.reduce((sum, part) => sum + meanOf(part), 0) - costMinor
  return { meanMinor: Math.round(mean), sdMinor: Math.round(Math.sqrt(Math.max(0, variance))) }
}

/** Probabilities at whole multiples of the step, from the multiple `first` on. */
type Lattice = { readonly first: number; readonly shares: Float64Array }

/** A part on the lattice. Between two points its probability is split so that the mean of the stretch is kept. */
const laidOut = (part: SaleOfPart, step: number): Lattice => {
  const lowest = part.price.sdLog === 0 ? part.top : -part.saleCost
  const first = Math.min(0, Math.floor(lowest / step))
  const last = Math.max(0, Math.floor(Math.max(part.top, lowest) / step) + 1)
  const shares = new Float64Array(last - first + 1)
  shares[-first] += 1 - part.chance
  for (let i = 0; i < last - first; i++) {
    const from = (first + i) * step
    const isLast = i === last - first - 1
    const piece = pieceOf(part, from, isLast ? Infinity : from + step)
    const above = piece.share === 0 ? 0 : Math.min(1, Math.max(0, (piece.mean - from) / step))
    shares[i] += part.chance * piece.share * (1 - above)
    shares[i + 1] += part.chance * piece.share * above
  }
  return { first, shares }
}

/** Probability that a sale brings money in [from, to), and the mean of what it then brings. */
const pieceOf = ({ price, saleCost, top }: SaleOfPart, from: number, to: number) => {
  if (price.sdLog === 0) return { share: top >= from && top < to ? 1 : 0, mean: top }
  const z = (money: number): number =>
    money + saleCost <= 0 ? -Infinity : Math.log((money + saleCost) / price.median) / price.sdLog
  const [low, high] = [z(from), z(to)]
  const share = normalAtMost(high, 0, 1) - normalAtMost(low, 0, 1)
  const whole = normalAtMost(high - price.sdLog, 0, 1) - normalAtMost(low - price.sdLog, 0, 1)
  return { share, mean: share > 0 ? (logNormalMean(price) * whole) / share - saleCost : from }
}

const convolve = (a: Lattice, b: Lattice): Lattice => {
  const shares = new Float64Array(a.shares.length + b.shares.length - 1)
  for (let j = 0; j < b.shares.length; j++) {
    if (b.shares[j] === 0) continue
    for (let i = 0; i < a.shares.length; i++) shares[i + j] += a.shares[i] * b.shares[j]
  }
  return { first: a.first + b.first, shares }
}

const quantilesOf = (grid: Grid, shares: Float64Array) => {
  const at = (p: number): number => Math.round(gridQuantile(grid, shares, p))
  const [low, high] = [at(0.05), at(0.95)]
  return { medianMinor: at(0.5), half: [at(0.25), at(0.75)] as const, ninety: [low, high] as const }
}

/** Zero itself is no loss. */
const lossOf = (grid: Grid, shares: Float64Array): number =>
  Math.min(
    1,
    shares.reduce((sum, share, i) => sum + (gridPoint(grid, i) < 0 ? share : 0), 0),
  )

const columnsOf = (grid: Grid, shares: Float64Array): MoneyDistribution['density'] => {
  const from = shares.findIndex((share) => share > tail)
  const to = shares.findLastIndex((share) => share > tail)
  const width = Math.max(1, Math.ceil((to - from + 1) / drawnColumns))
  const columns = Math.ceil((to - from + 1) / width)
  return Array.from({ length: columns }, (_, c) => {
    const start = from + c * width
    const share = shares.subarray(start, start + width).reduce((sum, one) => sum + one, 0)
    return { minor: Math.round(gridPoint(grid, start + (width - 1) / 2)), share }
  })
}
