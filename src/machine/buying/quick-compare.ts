import { moneyText, type Currency } from '../../base/money.ts'
import type { PlanProblem, PolicyEndings } from '../../engines/plan/index.ts'
import { usualBreakHours, usualRepairs } from '../../facts/buying.ts'
import { sellThrough } from '../../facts/trade.ts'
import type { CostFigures } from '../costs.ts'
import type { Job } from '../job.ts'
import { missingParts, partsWorthSelling } from '../parts-for-sale.ts'
import { exitWorkMin } from '../payoff.ts'
import { workingPriceOf } from '../prices.ts'
import type { ExitId } from '../view.ts'
import type { QuickDifference, QuickView } from './buying-view.ts'
import type { First } from './ceiling.ts'
import { quickCeiling, type QuickDeal } from './quick-ceiling.ts'

/** The formula and the plan agree when they differ by no more than this share of the sale price. Judgement. */
const alikeShare = 0.05

/** The quick formula with the trade's usual figures beside the plan's ceiling, and which of its figures the plan has otherwise. */
export const quickView = (
  job: Job,
  costs: CostFigures,
  first: First,
  planned: QuickDeal,
  ceilingMinor: number,
  currency: Currency,
): QuickView => {
  const usual = usualDeal(job, costs, first.travelMinor)
  const quickMinor = quickCeiling(usual) - first.wantedMinor
  const agrees = Math.abs(quickMinor - ceilingMinor) <= alikeShare * usual.saleMinor
  const differences = differencesOf(usual, planned)
  return {
    ceilingMinor: quickMinor,
    agrees,
    usual,
    planned,
    differences,
    text: agrees ? agreeing(quickMinor, currency) : differing(quickMinor, ceilingMinor, differences, currency),
  }
}

/** The formula's figures as the trade has them for the complaint. */
const usualDeal = (job: Job, costs: CostFigures, travelMinor: number): QuickDeal => {
  const [complaint = 'dead'] = job.complaints.filter((id) => usualRepairs[id] !== undefined)
  const { repairable, partsMinor, hours } = usualRepairs[complaint]!
  return {
    repairable,
    saleMinor: salePrice(job),
    feeShare: costs.saleFeeShare,
    partsMinor,
    consumablesMinor: costs.materialsMinor,
    comebackShare: costs.comebackShare,
    hours,
    hourMinor: job.hourMinor,
    sparesMinor: partsWorthSelling(job).reduce((sum, { price }) => sum + price.minor * sellThrough(price.minor), 0),
    breakHours: usualBreakHours.value,
    travelMinor,
  }
}

const salePrice = (job: Job): number =>
  Math.max(0, workingPriceOf(job).minor - missingParts(job).reduce((sum, { price }) => sum + price.minor, 0))

/**
 * The formula's figures as the plan's policy has them: chance that it is sold working, means of parts and hours then, and of the
 * money and hours when it is not.
 */
export const plannedDeal = (
  job: Job,
  costs: CostFigures,
  problem: PlanProblem,
  { endings }: PolicyEndings,
  travelMinor: number,
): QuickDeal => {
  const ways = endings.map(({ exit, chance, spentMinor, minutes, partsMinor }) => {
    const { id, payoffMinor } = problem.exits[exit]
    const probability = chance.reduce((sum, p) => sum + p, 0)
    const workMin = exitWorkMin(job, id as ExitId)
    const paid = chance.reduce((sum, p, s) => sum + p * payoffMinor[s], 0) / probability
    const otherMinor = spentMinor - (minutes * job.hourMinor) / 60
    const netMinor = paid + (workMin * job.hourMinor) / 60 - otherMinor
    return { isSold: id === 'sell-working', probability, partsMinor, hours: (minutes + workMin) / 60, netMinor }
  })
  const mean = (sold: boolean, of: (way: (typeof ways)[number]) => number): number => {
    const some = ways.filter(({ isSold }) => isSold === sold)
    const total = some.reduce((sum, { probability }) => sum + probability, 0)
    return total === 0 ? 0 : some.reduce((sum, way) => sum + way.probability * of(way), 0) / total
  }
  const whole = ways.reduce((sum, { probability }) => sum + probability, 0)
  return {
    repairable: ways.reduce((sum, { isSold, probability }) => sum + (isSold ? probability : 0), 0) / whole,
    saleMinor: salePrice(job),
    feeShare: costs.saleFeeShare,
    partsMinor: mean(true, ({ partsMinor }) => partsMinor),
    consumablesMinor: costs.materialsMinor,
    comebackShare: costs.comebackShare,
    hours: mean(true, ({ hours }) => hours),
    hourMinor: job.hourMinor,
    sparesMinor: mean(false, ({ netMinor }) => netMinor),
    breakHours: mean(false, ({ hours }) => hours),
    travelMinor,
  }
}

const compared = [
  ['repairable', 'chance of repair', 'share'],
  ['partsMinor', 'parts of a repair', 'minor'],
  ['hours', 'hours when mended', 'hours'],
  ['sparesMinor', 'what it brings unmended', 'minor'],
  ['breakHours', 'hours when not mended', 'hours'],
] as const satisfies readonly (readonly [keyof QuickDeal, string, QuickDifference['unit']])[]

const differencesOf = (usual: QuickDeal, planned: QuickDeal): readonly QuickDifference[] =>
  compared
    .map(([key, name, unit]) => ({
      name,
      usual: usual[key],
      planned: planned[key],
      unit,
      movesMinor: quickCeiling({ ...usual, [key]: planned[key] }) - quickCeiling(usual),
    }))
    .toSorted((a, b) => Math.abs(b.movesMinor) - Math.abs(a.movesMinor))

const agreeing = (quickMinor: number, currency: Currency): string =>
  `The trade's quick formula says ${moneyText(quickMinor, currency)}: the same within a twentieth of the sale price.`

const differing = (
  quickMinor: number,
  ceilingMinor: number,
  differences: readonly QuickDifference[],
  currency: Currency,
): string => {
  const money = (minor: number): string => moneyText(minor, currency)
  const side = quickMinor < ceilingMinor ? 'less' : 'more'
  const towards = differences.filter(({ movesMinor }) => movesMinor > 0 === quickMinor < ceilingMinor)
  const because = towards.slice(0, 2).map((one) => differenceText(one, money))
  const why = because.length === 0 ? 'by faults left in and things broken, which it leaves out' : because.join('; ')
  return `The trade's quick formula says ${money(quickMinor)}, ${money(Math.abs(ceilingMinor - quickMinor))} ${side} than the plan: ${why}.`
}

const differenceText = (
  { name, usual, planned, unit, movesMinor }: QuickDifference,
  money: (minor: number) => string,
): string => {
  const text = (value: number): string =>
    unit === 'minor' ? money(value) : unit === 'hours' ? `${value.toFixed(1)} h` : `${Math.round(100 * value)} %`
  return `${name} ${text(usual)}, in the plan ${text(planned)} (${movesMinor < 0 ? '' : '+'}${money(movesMinor)})`
}
