import type { Blueprint } from '../../blueprint/schema.ts'
import { cleaningTask, cleaningTaskIds, cleaningTasks } from '../../facts/cleaning-tasks.ts'
import { cleanFrom, fullClean, takenBack } from '../../facts/sale-claims.ts'
import { partsOfTask } from '../../machine/cleaning/task-parts.ts'
import type { MachineState } from '../contract.ts'
import type { Noted, NotedWords } from './noted.ts'

/** What is noted of a clean of the whole machine. */
export type Clean = {
  /** Done as a whole, and nothing of it still to dry. */
  readonly isWhole: boolean
  /** How much of the work of a clean machine is noted, 0 to 1. */
  readonly share: number
  readonly notes: readonly string[]
}

/** A cleaning task that puts something new in, such as a bag; the others clean. */
export const isFitting = ({ task }: { readonly task: string }): boolean => task.startsWith('new-')

/**
 * Whether the tasks that make up a clean machine are noted, by the weights that the price to ask goes by, or a note says in words
 * that all of it was cleaned.
 */
export const cleanOf = (
  blueprint: Blueprint,
  { missing, drying }: MachineState,
  cleaned: readonly Noted<'cleaned'>[],
  words: readonly NotedWords[],
): Clean => {
  const own = cleaningTaskIds.flatMap((id) => {
    const { adds } = cleaningTasks[id]
    const isOfIt = adds.kind === 'improvement' && adds.improvement === 'cleaned'
    return isOfIt && partsOfTask(cleaningTasks[id], blueprint, missing) !== null ? [{ id, weight: adds.weight }] : []
  })
  const total = own.reduce((sum, { weight }) => sum + weight, 0)
  const done = own.filter(({ id }) => cleaned.some(({ task }) => task === id))
  const share = total === 0 ? 0 : done.reduce((sum, { weight }) => sum + weight, 0) / total
  const said = words.filter(({ text }) => saysFullClean(text))
  return {
    isWhole: (share >= cleanFrom.share || said.length > 0) && drying.length === 0,
    share,
    notes: [
      ...new Set([
        ...cleaned
          .filter(({ task }) => cleaningTask(task) !== undefined && !isFitting({ task }))
          .map(({ note }) => note),
        ...said.map(({ note }) => note),
      ]),
    ],
  }
}

const saysFullClean = (text: string): boolean => {
  const found = fullClean.exec(text)
  return found !== null && !takenBack.test(text.slice(0, found.index))
}
