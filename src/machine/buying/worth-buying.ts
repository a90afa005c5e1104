import { endingsUnder, plan, type PolicyEndings } from '../../engines/plan/index.ts'
import { logNormalQuantile } from '../../engines/money/index.ts'
import { alwaysAsk } from '../../facts/seller-question.ts'
import type { Job } from '../job.ts'
import { machineModel, type MachineModel } from '../model.ts'
import { exitWorkMin } from '../payoff.ts'
import { planProblem, type JobPlan } from '../planning/plan-problem.ts'
import { suspectBelief } from '../suspects.ts'
import type { ExitId } from '../view.ts'
import type { Advert } from './advert.ts'
import { jobOfAdvert, type BuyingTerms } from './advert-job.ts'
import { atAsking } from './at-asking.ts'
import type { BuyingView, PriceView } from './buying-view.ts'
import { buyingSources } from './buying-sources.ts'
import { ceilingOf, wayTaken, type First, type Way } from './ceiling.ts'
import { likelyFaults } from './likely-faults.ts'
import { lumpsProspect, prospectOf } from './prospect.ts'
import { byWorth, openQuestions, questionView } from './questions.ts'
import { plannedDeal, quickView } from './quick-compare.ts'
import { saleBand, type SaleBand } from './sale-band.ts'
import { spotChecks } from './spot-checks.ts'
import { travelOf } from './travel.ts'
import { understanding } from './understanding.ts'
import type { Deal } from './wagers.ts'

/** Enough looking ahead for a first answer on a telephone; it promises less than the machine's own page, never more. */
export const quickEffort = 0.1

/** A quick answer follows only ways at least this likely to their end: means stay exact, the spread comes out a little smaller. */
const quickLeast = 1e-4

const shownQuestions = 4

/**
 * Whether an advert is worth buying: the most to pay, what the asking price earns and risks, what is likely wrong, what to ask
 * and what to check on the spot. The money is the plan's own, of the job that the advert would become. Pure; the same advert and
 * terms give the same view.
 * @param advert one that `checkAdvert` has passed for this blueprint
 */
export const buyingView = (advert: Advert, terms: BuyingTerms): BuyingView => {
  const worked = workedOut(advert, terms)
  const { understood, band, job, model, jobPlan, travel, first, under, probability } = worked
  const { costs, attitude, effort = 1 } = terms
  const ways = [worked.planned, ...exitWays(jobPlan)]
  const ceiling = ceilingOf(ways, worked.upperMinor, first, attitude)
  const paidMinor = travel.minor + advert.askingMinor
  const way = wayTaken(ways, paidMinor, attitude)
  const benchMin = way === worked.planned ? worked.plannedMin : exitWorkMin(job, way.first.id as ExitId)
  const deal = dealOf(jobPlan, under, first, advert.askingMinor)
  const planned = plannedDeal(job, costs, jobPlan.problem, under, travel.minor)
  return {
    currency: advert.currency,
    wanted: advert.wanted,
    hourMinor: job.hourMinor,
    effort,
    attitude,
    understood,
    ceiling,
    travel,
    price: priceView(band),
    atAsking: atAsking(way.prospect, advert.askingMinor, paidMinor, benchMin + travel.minutes, job.hourMinor),
    first: way.first,
    nothingWrong: probability[0],
    faults: likelyFaults(model, job, jobPlan, probability, under.moneyMinor, paidMinor),
    questions: questionsOf(model, jobPlan, deal, advert),
    alwaysAsk,
    spotChecks: spotChecks(model, jobPlan, deal, advert),
    quick: quickView(job, costs, first, planned, ceiling.onAverageMinor, advert.currency),
    sources: buyingSources,
  }
}

/** The job of the advert, what may be wrong with it, and the plan for it with all its endings. */
const workedOut = (advert: Advert, terms: BuyingTerms) => {
  const { blueprint, costs, effort } = terms
  const understood = understanding(advert, blueprint.faults)
  const band = saleBand(blueprint, advert.condition, terms.market)
  const job = jobOfAdvert(advert, terms, understood, band)
  const model = machineModel(blueprint, job.plate, job.history)
  const { probability } = suspectBelief(model, job)
  const jobPlan = planProblem(model, job, probability)
  const answer = plan(jobPlan.problem, { effort: effort ?? 1 })
  const under = endingsUnder(jobPlan.problem, answer.policy, (effort ?? 1) < 1 ? quickLeast : undefined)
  const travel = travelOf(advert.distanceKm, costs, job.hourMinor)
  const first: First = {
    travelMinor: travel.minor,
    wantedMinor: advert.wanted.kind === 'profit' ? advert.wanted.minor : 0,
  }
  const planned: Way = { first: answer.best, prospect: prospectOf(jobPlan.problem, under, job, band) }
  const plannedMin = answer.expectedMin + sellingMinutes(job, jobPlan, under)
  const { upperMinor } = answer
  return { understood, band, job, model, probability, jobPlan, under, travel, first, planned, plannedMin, upperMinor }
}

/** Leaving at once by each exit that needs nothing, as the money then is by suspect. */
const exitWays = ({ problem }: JobPlan): readonly Way[] =>
  problem.exits
    .filter(({ needs }) => needs.length === 0)
    .map(({ id, payoffMinor }) => ({
      first: { kind: 'exit', id },
      prospect: lumpsProspect(problem.suspects.map(({ probability }, s) => ({ probability, minor: payoffMinor[s] }))),
    }))

/** Own minutes of the exits themselves, on average over the ways that the job ends. */
const sellingMinutes = (job: Job, { problem }: JobPlan, { endings }: PolicyEndings): number => {
  let [minutes, whole] = [0, 0]
  const work = problem.exits.map(({ id }) => exitWorkMin(job, id as ExitId))
  for (const { exit, chance } of endings) {
    const probability = chance.reduce((sum, p) => sum + p, 0)
    minutes += probability * work[exit]
    whole += probability
  }
  return minutes / whole
}

/** The wager of buying: following the plan, or leaving at once by an exit that needs nothing. */
const dealOf = (
  { problem }: JobPlan,
  { moneyMinor }: PolicyEndings,
  { travelMinor, wantedMinor }: First,
  askingMinor: number,
): Deal => {
  const total = problem.suspects.reduce((sum, { probability }) => sum + probability, 0)
  const exits = problem.exits.filter(({ needs }) => needs.length === 0)
  return {
    belief: Float64Array.from(problem.suspects, ({ probability }) => probability / total),
    ways: [moneyMinor, ...exits.map(({ payoffMinor }) => Float64Array.from(payoffMinor))],
    firstMinor: travelMinor + wantedMinor,
    askingMinor,
  }
}

const questionsOf = (
  model: MachineModel,
  { kept }: JobPlan,
  deal: Deal,
  { answers }: Advert,
): BuyingView['questions'] =>
  openQuestions(model, ['ask', 'photo'], answers.map(({ question }) => question)) // prettier-ignore
    .map((question) => questionView(model, kept, deal, question))
    .toSorted(byWorth)
    .slice(0, shownQuestions)

const priceView = ({ price, meanMinor, from, conditionShare }: SaleBand): PriceView => ({
  meanMinor,
  medianMinor: price.median,
  ninety: [logNormalQuantile(0.05, price), logNormalQuantile(0.95, price)],
  from,
  conditionShare,
})
