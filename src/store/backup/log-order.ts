import { problem, type Problem } from '../../base/problem.ts'
import type { KeptRecord } from '../copy/records.ts'

/** Whether a log's entries are its own, count from 1 without a gap, and come under one id each. */
export const seqProblems = (record: KeptRecord): readonly Problem[] => {
  if (record.kind !== 'machine' && record.kind !== 'log') return []
  const entries: readonly { readonly id: string; readonly seq: number }[] =
    record.kind === 'machine' ? record.notes : record.entries
  const where = record.kind === 'machine' ? `machine ${record.id}` : `${record.logKind} ${record.id}`
  const gap = entries.findIndex(({ seq }, index) => seq !== index + 1)
  const problems: Problem[] = []
  if (gap >= 0) {
    const what = `Where note ${gap + 1} should be stands ${entries[gap].seq}`
    problems.push(problem('damaged-log', where, what, 'Use another backup'))
  }
  const ids = new Set<string>()
  for (const { id } of entries) {
    if (ids.has(id)) problems.push(problem('damaged-log', where, `Two of its notes are called ${id}`, 'Use another backup')) // prettier-ignore
    ids.add(id)
  }
  return problems
}
