import type { Check } from '../../blueprint/schema.ts'
import type { JobPlan } from '../planning/plan-problem.ts'
import type { MachineModel } from '../model.ts'
import { bandName } from '../why.ts'
import type { QuestionView, SpotCheckView } from './buying-view.ts'
import type { Advert } from './advert.ts'
import { isForTheSpot } from './for-the-spot.ts'
import { byWorthAMinute, openQuestions, questionView } from './questions.ts'
import { weigh, type Deal } from './wagers.ts'

const shownChecks = 8
/** Results less likely than this are left out of what is shown. */
const leastShown = 0.02

/** What can be checked on the spot before paying: no power, no cover off, no wire unplugged. Most money by the minute first. */
export const spotChecks = (
  model: MachineModel,
  plan: JobPlan,
  deal: Deal,
  { looked, answers }: Pick<Advert, 'looked' | 'answers'>,
): readonly SpotCheckView[] => {
  const made = new Set(looked.map(({ check }) => check))
  const checks = model.blueprint.checks.filter((check) => !made.has(check.id) && isForTheSpot(model.blueprint, check))
  const answered = answers.map(({ question }) => question)
  const looks = openQuestions(model, ['look'], answered).map((one) =>
    lookView(questionView(model, plan.kept, deal, one)),
  )
  return [...checks.map((check) => checkView(plan, deal, check)), ...looks]
    .toSorted(byWorthAMinute)
    .slice(0, shownChecks)
}

const lookView = ({ id, text, minutes, valueMinor, movesMinor, results }: QuestionView): SpotCheckView => ({
  kind: 'look',
  id,
  name: text,
  how: text,
  minutes,
  valueMinor,
  movesMinor,
  results: results.filter(({ probability }) => probability >= leastShown),
})

const checkView = (plan: JobPlan, deal: Deal, check: Check): SpotCheckView => {
  const { outcomes, likelihood } = plan.problem.checks.find(({ id }) => id === check.id)!
  const told = outcomes.map(({ id }, o) => ({ id, chance: Float64Array.from(likelihood, (row) => row[o]) }))
  const { valueMinor, movesMinor, results } = weigh(deal, told)
  return {
    kind: 'check',
    id: check.id,
    name: check.name,
    how: check.how,
    minutes: Math.max(check.minutes, shortestMin),
    valueMinor,
    movesMinor,
    results: results
      .filter(({ probability }) => probability >= leastShown)
      .map((result) => ({ ...result, text: resultName(plan, check, result.id) })),
  }
}

/** Getting to it takes this long at least, minutes. */
const shortestMin = 0.3

const resultName = ({ bands }: JobPlan, check: Check, id: string): string => {
  if (id === 'cannot-tell') return 'could not tell'
  if (check.kind !== 'meter') return check.outcomes.find((outcome) => outcome.id === id)?.name ?? id
  if (id === 'jumps') return 'jumps when moved'
  const band = bands.get(check.id)?.find((one) => one.id === id)
  return band === undefined ? id : bandName(band)
}
