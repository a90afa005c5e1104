import { problem } from '../../base/problem.ts'
import { logCommands } from '../logs/log-commands.ts'
import { strikeProblems } from '../logs/strike-problems.ts'
import { recordContentSchema, type RecordContent } from './fields.ts'
import { foldRecord, type RecordState } from './record-state.ts'

/** Repair records kept from open data. */
export const repairRecords = logCommands<RecordContent, RecordState>({
  kind: 'record',
  name: 'repair record',
  schema: recordContentSchema,
  problems: (entries, content) => {
    if (content.kind === 'struck') return strikeProblems(entries, content.note)
    return entries.length === 0 ? [] : [keptAlready]
  },
  fold: foldRecord,
})

const keptAlready = problem('kept-already', 'kind', 'This record is kept already', 'Keep another one under a new id')
