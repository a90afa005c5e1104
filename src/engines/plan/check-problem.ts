import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { coverCycle } from './covers.ts'
import { faultKey, suspectsAfterRepair } from './fault-sets.ts'
import { planProblemSchema, type PlanProblem } from './schema.ts'

/** How far a sum of probabilities may be from 1. */
const sumTolerance = 1e-6

/**
 * Reads a plan problem from outside. Refuses, naming the item: input not of the form, ids used twice, unknown names,
 * probabilities that do not sum to 1, tables of the wrong shape, covers in a cycle, marks that nothing gives,
 * no exit that can always be taken, and suspects that are not closed under repair.
 */
export const checkPlanProblem = (input: unknown): Result<PlanProblem> => {
  const parsed = parse(planProblemSchema, input, 'plan problem')
  if (parsed.kind === 'refused') return parsed
  const plan = parsed.value
  const names = [...duplicates(plan), ...unknownNames(plan)]
  if (names.length > 0) return refused(...names)
  const faults = [...sums(plan), ...shapes(plan), ...covers(plan), ...marks(plan), ...exits(plan), ...closure(plan)]
  return faults.length > 0 ? refused(...faults) : ok(plan)
}

const duplicates = (plan: PlanProblem): readonly Problem[] => {
  const lists = ['suspects', 'covers', 'checks', 'repairs', 'exits'] as const
  const twice = [
    ...repeated(plan.faults).map((id) => ['faults', id] as const),
    ...lists.flatMap((list) => repeated(plan[list].map((item) => item.id)).map((id) => [list, id] as const)),
    ...plan.checks.flatMap((check) =>
      repeated(check.outcomes.map((outcome) => outcome.id)).map((id) => [`checks.${check.id}.outcomes`, id] as const),
    ),
  ]
  const ids = twice.map(([where, id]) =>
    problem('duplicate-id', `${where}.${id}`, `The id ${id} is used twice`, 'Give each item its own id'),
  )
  const sameFaults = repeated(plan.suspects.map((suspect) => faultKey(suspect.faults))).map((key) =>
    problem('duplicate-suspect', 'suspects', `Two suspects have the same faults ${key}`, 'Add their probabilities up'),
  )
  return [...ids, ...sameFaults]
}

const repeated = (ids: readonly string[]): readonly string[] => [
  ...new Set(ids.filter((id, index) => ids.indexOf(id) !== index)),
]

const unknownNames = (plan: PlanProblem): readonly Problem[] => {
  const faults = new Set(plan.faults)
  const coverIds = new Set(plan.covers.map((cover) => cover.id))
  const unknown = (known: ReadonlySet<string>, ids: readonly string[], where: string, what: string) =>
    ids
      .filter((id) => !known.has(id))
      .map((id) => problem(`unknown-${what}`, where, `There is no ${what} ${id}`, `Name one of the problem’s ${what}s`))
  return [
    ...plan.suspects.flatMap((item) => unknown(faults, item.faults, `suspects.${item.id}.faults`, 'fault')),
    ...plan.repairs.flatMap((item) => unknown(faults, item.removes, `repairs.${item.id}.removes`, 'fault')),
    ...plan.covers.flatMap((item) => unknown(coverIds, item.after, `covers.${item.id}.after`, 'cover')),
    ...plan.checks.flatMap((item) => unknown(coverIds, item.coversOff, `checks.${item.id}.coversOff`, 'cover')),
    ...plan.repairs.flatMap((item) => unknown(coverIds, item.coversOff, `repairs.${item.id}.coversOff`, 'cover')),
    ...unknown(coverIds, plan.off, 'off', 'cover'),
  ]
}

const sums = (plan: PlanProblem): readonly Problem[] => {
  const total = sum(plan.suspects.map((suspect) => suspect.probability))
  const mend = 'Make the probabilities sum to 1'
  const suspects = isOne(total)
    ? []
    : [problem('sum-not-1', 'suspects', `The probabilities of the suspects sum to ${String(total)}`, mend)]
  const rows = plan.checks.flatMap((check) =>
    check.likelihood.flatMap((row, index) => {
      const where = `checks.${check.id}.likelihood.${plan.suspects[index]?.id ?? String(index)}`
      return isOne(sum(row)) ? [] : [problem('sum-not-1', where, `The row sums to ${String(sum(row))}`, mend)]
    }),
  )
  return [...suspects, ...rows]
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
const isOne = (total: number): boolean => Math.abs(total - 1) <= sumTolerance

const shapes = (plan: PlanProblem): readonly Problem[] => {
  const count = plan.suspects.length
  const wrong = (where: string, has: number, wanted: number, each: string) =>
    has === wanted
      ? []
      : [problem('wrong-shape', where, `${String(has)} entries where ${String(wanted)} are wanted`, `One per ${each}`)]
  return [
    ...plan.exits.flatMap((exit) => wrong(`exits.${exit.id}.payoffMinor`, exit.payoffMinor.length, count, 'suspect')),
    ...plan.checks.flatMap((check) => [
      ...wrong(`checks.${check.id}.likelihood`, check.likelihood.length, count, 'suspect'),
      ...check.likelihood.flatMap((row, index) => {
        const where = `checks.${check.id}.likelihood.${plan.suspects[index]?.id ?? String(index)}`
        return wrong(where, row.length, check.outcomes.length, 'outcome')
      }),
    ]),
  ]
}

const covers = (plan: PlanProblem): readonly Problem[] => {
  const cycle = coverCycle(plan.covers)
  const cycles =
    cycle === null
      ? []
      : [
          problem(
            'cover-cycle',
            `covers.${cycle[0] ?? ''}.after`,
            `The covers ${cycle.join(', ')} each wait for the next to come off`,
            'Let one of them come off first',
          ),
        ]
  const torn = plan.checks
    .filter((check) => check.allCoversOn && check.coversOff.length > 0)
    .map((check) =>
      problem(
        'covers-on-and-off',
        `checks.${check.id}.coversOff`,
        `${check.id} needs every cover on and ${check.coversOff.join(', ')} off`,
        'Keep one of the two',
      ),
    )
  return [...cycles, ...torn]
}

const marks = (plan: PlanProblem): readonly Problem[] => {
  const given = plan.checks.flatMap((check) => check.outcomes.flatMap((outcome) => outcome.gives))
  const known = new Set([...plan.marks, ...given])
  return (['checks', 'repairs', 'exits'] as const).flatMap((list) =>
    plan[list].flatMap((item) =>
      item.needs
        .filter((mark) => !known.has(mark))
        .map((mark) =>
          problem(
            'mark-nothing-gives',
            `${list}.${item.id}.needs`,
            `The mark ${mark} is not held and no outcome gives it`,
            'Let an outcome give it or take the need away',
          ),
        ),
    ),
  )
}

const exits = (plan: PlanProblem): readonly Problem[] => {
  const money =
    plan.hourMinor < 0
      ? [problem('negative', 'hourMinor', 'An hour of work is worth less than nothing', 'Write zero or more')]
      : []
  if (plan.exits.some((exit) => exit.needs.length === 0)) return money
  const mend = 'Give one exit that needs no mark, such as leaving it as it is'
  return [...money, problem('no-exit', 'exits', 'There is no exit that can always be taken', mend)]
}

const closure = (plan: PlanProblem): readonly Problem[] =>
  suspectsAfterRepair(plan).missing.map(({ suspect, repair, left }) => {
    const suspectId = plan.suspects[suspect]?.id ?? ''
    const repairId = plan.repairs[repair]?.id ?? ''
    const set = `{${left.join(', ')}}`
    return problem(
      'not-closed',
      `suspects.${suspectId}`,
      `After repair ${repairId} suspect ${suspectId} would be ${set}, and no suspect is`,
      `Add the suspect ${set}, with probability 0 if need be`,
    )
  })
