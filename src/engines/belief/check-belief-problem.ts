import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { beliefProblemSchema, type BeliefEvent, type BeliefProblem } from './schema.ts'

/**
 * Parses outside input into a belief problem, slips filled in where they were left out.
 * Refuses what is not of the form, lists whose length is not the number of suspects, a `becomes` that points at no suspect,
 * two events of one id, and a prior that is zero throughout. Each refusal names the event.
 */
export const checkBeliefProblem = (input: unknown): Result<BeliefProblem> => {
  const parsed = parse(beliefProblemSchema, input, 'belief problem')
  if (parsed.kind === 'refused') return parsed
  const { prior, history } = parsed.value
  const problems = [
    ...priorProblems(prior),
    ...history.flatMap((event, i) => eventProblems(event, i, prior.length)),
    ...twiceProblems(history),
  ]
  return problems.length === 0 ? ok(parsed.value) : refused(...problems)
}

const priorProblems = (prior: readonly number[]): readonly Problem[] => {
  if (prior.some((weight) => weight > 0)) return []
  const what = 'Every suspect has prior weight 0, so nothing is possible'
  return [problem('prior-all-zero', 'prior', what, 'Give at least one suspect a weight above 0')]
}

const eventProblems = (event: BeliefEvent, index: number, suspects: number): readonly Problem[] => {
  const where = `history[${index}] (${event.kind} ${event.id})`
  switch (event.kind) {
    case 'reading':
      return lengthProblems('likelihood', event.likelihood.length, suspects, where)
    case 'change':
      return [
        ...lengthProblems('becomes', event.becomes.length, suspects, where),
        ...placeProblems(event.becomes, suspects, where),
      ]
  }
}

const lengthProblems = (list: string, length: number, suspects: number, where: string): readonly Problem[] => {
  if (length === suspects) return []
  const what = `The list ${list} has ${length} entries, and there are ${suspects} suspects`
  return [problem('wrong-length', where, what, `Give ${list} one entry for each suspect, in the order of the prior`)]
}

const placeProblems = (becomes: readonly number[], suspects: number, where: string): readonly Problem[] => {
  const from = becomes.findIndex((to) => to >= suspects)
  if (from < 0) return []
  const what = `Suspect ${from} would become suspect ${becomes[from]}, which is not there`
  return [problem('unknown-suspect', where, what, `Use places from 0 to ${suspects - 1}`)]
}

const twiceProblems = (history: readonly BeliefEvent[]): readonly Problem[] => {
  const seen = new Set<string>()
  return history.flatMap((event, i) => {
    const isTwice = seen.has(event.id)
    seen.add(event.id)
    if (!isTwice) return []
    const what = `The id ${event.id} is used by an earlier event too`
    return [problem('id-twice', `history[${i}] (${event.kind} ${event.id})`, what, 'Give every event an id of its own')]
  })
}
