import { inSentence } from '../../base/in-sentence.ts'
import { cleaningTask, otherCleaning } from '../../facts/cleaning-tasks.ts'

/** A cleaning task as one says that it was done, within a sentence: `casing washed`, `new bag`. */
export const cleaningTaskDone = (task: string): string => cleaningTask(task)?.done ?? inSentence(cleaningTaskName(task))

/** A cleaning task's name; an unknown one reads as its id. */
export const cleaningTaskName = (task: string): string =>
  task === otherCleaning.id ? otherCleaning.name : (cleaningTask(task)?.name ?? task)
