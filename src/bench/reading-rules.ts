import { problem, type Problem } from '../base/problem.ts'
import type { Blueprint, Check, GradedCheck } from '../blueprint/schema.ts'
import type { Job } from '../machine/job.ts'
import type { ReadingResult } from '../machine/result.ts'
import { checkBarred, runsMachine } from '../machine/running.ts'
import { resultOfWatts, wattsText } from '../machine/scale.ts'
import { coverName, openFirst, workCoveredProblems } from './cover-rules.ts'
import type { NoteContent } from './note.ts'
import { isReachable, nearestReachable } from './reach.ts'
import { unknownId } from './unknown.ts'
import { listText } from './words.ts'

type ReadingContent = Extract<NoteContent, { kind: 'reading' }>

/** What is wrong with a reading as it is entered: unknown names, a result of the wrong sort, a covered point, running that is barred. */
export const readingProblems = (content: ReadingContent, job: Job): readonly Problem[] => {
  const { blueprint } = job
  const check = blueprint.checks.find((one) => one.id === content.check)
  if (check === undefined) {
    return [
      unknownId(
        'check',
        'check',
        content.check,
        blueprint.checks.map((one) => one.id),
      ),
    ]
  }
  const wrongResult = resultProblems(check, content.result, job.plate.powerW)
  const wrongSetUp =
    runsMachine(check) || check.coversOn ? runProblems(check, job) : coveredProblems(check, blueprint, job.off)
  return [...wrongResult, ...wrongSetUp]
}

const resultProblems = (check: Check, result: ReadingResult, powerW: number): readonly Problem[] => {
  if (result.kind === 'cannot-tell') return []
  if (check.kind === 'meter') return result.kind === 'grade' ? [gradeForMeter(check.name)] : []
  if (result.kind !== 'grade') return [meterForGrade(check)]
  if (check.outcomes.some((outcome) => outcome.id === result.outcome)) return wattsProblems(check, result, powerW)
  return [
    unknownId(
      'outcome',
      'result.outcome',
      result.outcome,
      check.outcomes.map((outcome) => outcome.id),
    ),
  ]
}

/** Watts and outcome must say the same. */
const wattsProblems = (
  check: GradedCheck,
  { outcome, watts }: Extract<ReadingResult, { kind: 'grade' }>,
  powerW: number,
): readonly Problem[] => {
  if (watts === undefined) return []
  const derived = resultOfWatts(check, powerW, watts)
  if (derived.kind === 'refused') return derived.problems
  if (derived.value.kind !== 'grade' || derived.value.outcome === outcome) return []
  const right = derived.value.outcome
  return [
    problem(
      'watts-contradict',
      'result',
      `${wattsText(watts)} on a plate of ${wattsText(powerW)} is “${right}”, not “${outcome}”`,
      `Enter “${right}”, or the watts that were read`,
    ),
  ]
}

const gradeForMeter = (name: string): Problem =>
  problem(
    'wrong-result',
    'result',
    `“${name}” is read from the meter, not graded`,
    'Enter ohms, open, rises then open, jumps when moved, or could not tell',
  )

const meterForGrade = (check: GradedCheck): Problem =>
  problem(
    'wrong-result',
    'result',
    `“${check.name}” is graded, not read from a meter`,
    `Enter one of ${check.outcomes.map((outcome) => outcome.id).join(', ')}, or could not tell`,
  )

const coveredProblems = (check: Check, blueprint: Blueprint, off: readonly string[]): readonly Problem[] => {
  const probes = check.kind === 'meter' ? [check.red, check.black] : []
  const covered = probes.flatMap((id) => {
    const point = blueprint.points.find((one) => one.id === id)
    if (point?.behind === undefined || isReachable(blueprint, point, off)) return []
    return [coveredPoint(blueprint, id, point.behind, off)]
  })
  if (covered.length > 0) return covered
  return workCoveredProblems('check', check.name, check.coversOff, blueprint, off)
}

const coveredPoint = (blueprint: Blueprint, point: string, cover: string, off: readonly string[]): Problem => {
  const mend = openFirst(blueprint, cover, off)
  const instead = nearestReachable(blueprint, point, off)
  return problem(
    'covered',
    'check',
    `Probe point \`${point}\` is behind the ${coverName(blueprint, cover)}`,
    instead === null ? mend : `${mend}, or measure at \`${instead.id}\``,
  )
}

/** What stands against something that needs all covers on, and running allowed where it runs. `where`: what of the note is wrong. */
export const runProblems = (check: Check, job: Job, where = 'check'): readonly Problem[] => {
  const off = job.off.map((id) => coverName(job.blueprint, id))
  const barred = checkBarred(job, check)
  return [
    ...(off.length === 0 ? [] : [coversOffProblem(check, off, where)]),
    ...(barred.length === 0 ? [] : [barredProblem(check.name, barred, where)]),
  ]
}

const coversOffProblem = (check: Check, off: readonly string[], where: string): Problem =>
  problem(
    'covers-off',
    where,
    `“${check.name}” ${runsMachine(check) ? 'runs the machine' : 'is made with all covers on'}, and the ${listText(off)} ${off.length === 1 ? 'is' : 'are'} off`,
    runsMachine(check) ? 'Close all covers first: nothing is run with a cover off' : 'Close all covers first',
  )

const barredProblem = (name: string, barred: readonly string[], where: string): Problem =>
  problem(
    'running-barred',
    where,
    `“${name}” runs the machine, and it must not be run yet: ${barred.join('; ')}`,
    'With the plug out, mend what was not passed and make the checks named',
  )
