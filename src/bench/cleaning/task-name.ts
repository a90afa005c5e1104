import { cleaningTask, otherCleaning } from '../../facts/cleaning-tasks.ts'

/** A cleaning task's name; an unknown one reads as its id. */
export const cleaningTaskName = (task: string): string =>
  task === otherCleaning.id ? otherCleaning.name : (cleaningTask(task)?.name ?? task)
