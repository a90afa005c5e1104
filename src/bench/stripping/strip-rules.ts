import { inSentence } from '../../base/in-sentence.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { Job } from '../../machine/job.ts'
import type { MachineState } from '../contract.ts'
import { workCoveredProblems } from '../cover-rules.ts'
import type { NoteContent } from '../note.ts'
import { unknownId } from '../unknown.ts'

type PartMoved = Extract<NoteContent, { kind: 'taken-out' | 'put-in' }>

/** What stands against taking this part out, or putting it back, now. */
export const stripProblems = (
  content: PartMoved,
  { blueprint, off }: Job,
  { out, missing }: MachineState,
): readonly Problem[] => {
  const part = blueprint.parts.find(({ id }) => id === content.part)
  if (part === undefined) {
    const parts = blueprint.parts.map(({ id }) => id)
    return [unknownId('part', 'part', content.part, parts)]
  }
  const name = inSentence(part.name)
  const isOut = out.includes(part.id)
  if (content.kind === 'put-in') return isOut ? [] : [notOut(name)]
  if (isOut)
    return [problem('already-out', 'part', `The ${name} is out already`, 'Nothing to note: go on with the next')]
  if (missing.includes(part.id)) {
    return [problem('part-not-there', 'part', `There is no ${name} on this machine`, 'Choose a part that is there')]
  }
  const behind = part.behind === undefined ? [] : [part.behind]
  return workCoveredProblems('part', `Taking out the ${name}`, behind, blueprint, off)
}

const notOut = (name: string): Problem =>
  problem('not-out', 'part', `The ${name} is not out`, 'Note only what came out before')
