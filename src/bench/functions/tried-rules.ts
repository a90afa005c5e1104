import { problem, type Problem } from '../../base/problem.ts'
import type { FunctionCheck } from '../../machine/functions/function-check.ts'
import { functionById, functionsOf } from '../../machine/functions/functions-of.ts'
import type { Job } from '../../machine/job.ts'
import type { NoteContent } from '../note.ts'
import { runProblems } from '../reading-rules.ts'
import { unknownId } from '../unknown.ts'

type TriedContent = Extract<NoteContent, { kind: 'tried' }>

/**
 * What stands against this note of a function tried: no such function, a part that is not of it, a result that belongs to the
 * blueprint's own check, running that is barred, or a cover off while it runs.
 */
export const triedProblems = (content: TriedContent, job: Job): readonly Problem[] => {
  const known = functionById(job.blueprint, content.function)
  if (known === undefined) {
    const ids = functionsOf(job.blueprint).functions.map(({ id }) => id)
    return [unknownId('function', 'function', content.function, ids)]
  }
  if (content.result === 'not-there' || content.part !== undefined) return partProblems(content, known)
  if (known.isReading) return [isAReading(known)]
  return content.result === 'cannot-tell' || known.group !== 'run' ? [] : runProblems(known.check, job, 'function')
}

/** Which part is missing is said where there is one; otherwise the machine would be sold as whole. */
const partProblems = ({ result, part }: TriedContent, { parts, name }: FunctionCheck): readonly Problem[] => {
  if (result !== 'not-there') {
    return [problem('part-not-asked', 'part', 'A part is named only where it is not there', 'Leave the part out')]
  }
  const ids = parts.map(({ id }) => id)
  if (part !== undefined) return ids.includes(part) ? [] : [unknownId('part of it', 'part', part, ids)]
  if (ids.length === 0) return []
  return [
    problem('part-not-said', 'part', `“${name}” is not there, and which part is missing is not said`, useOneOf(ids)),
  ]
}

const useOneOf = (ids: readonly string[]): string =>
  ids.length === 1 ? `Name the part ${ids[0]}` : `Name one of ${ids.join(', ')}`

const isAReading = ({ name, check }: FunctionCheck): Problem =>
  problem(
    'is-a-reading',
    'function',
    `“${name}” is the check “${check.name}” of the blueprint, and what it shows is a reading`,
    `Enter a reading of \`${check.id}\`: one of ${check.outcomes.map(({ id }) => id).join(', ')}, or could not tell`,
  )
