import { problem, type Problem } from '../../base/problem.ts'
import { logCommands, noSuchLog, type LogDocument, type LogOutcome } from '../logs/log-commands.ts'
import { partContentSchema, type PartContent } from './part-note.ts'
import { partProblems } from './part-rules.ts'
import { foldPart, type PartEntry, type PartState } from './part-state.ts'

/** A part as it is given out: what its entries add up to, and the entries. */
export type PartDocument = LogDocument<PartContent, PartState>
export type PartOutcome = LogOutcome<PartDocument>

/** What is written about parts on the shelf itself. What goes between the shelf and a machine is written from the machine. */
export const shelf = logCommands<PartContent, PartState>({
  kind: 'part',
  name: 'part',
  schema: partContentSchema,
  problems: (entries, content) => [...moveProblems(entries, content), ...partProblems(entries, content)],
  fold: foldPart,
})

/** Moves between the shelf and a machine are written from the machine's side, both at once. */
const moveProblems = (entries: readonly PartEntry[], content: PartContent): readonly Problem[] => {
  if (content.kind === 'used') return [fromTheMachine]
  if (content.kind === 'put' && content.origin.kind === 'machine') return [fromTheMachine]
  if (content.kind !== 'struck') return []
  const struck = entries.find(({ id }) => id === content.note)?.content
  const isMove = struck?.kind === 'used' || (struck?.kind === 'put' && struck.origin.kind === 'machine')
  return isMove ? [fromTheMachine] : []
}

export const noSuchPart = (part: string): Problem => ({ ...noSuchLog('part', part), where: 'shelfPart' })

const fromTheMachine = problem(
  'from-the-machine',
  'kind',
  'What goes between the shelf and a machine is written on the machine',
  'Enter the repair, or what was taken off, on the machine’s page',
)
