import { z } from 'zod'
import { grades, improvementIds, improvements, type ImprovementId } from '../facts/asking.ts'
import type { Blueprint } from '../blueprint/schema.ts'

/** What is said of the machine as it would be offered. */
export const askingChoicesSchema = z.strictObject({
  grade: z.enum(grades),
  /** What is done to it before. */
  done: z.array(z.enum(improvementIds)),
  /** Parts that are missing now and will be there. */
  found: z.array(z.string()).default([]),
  /** What a day of standing costs: room, money tied up. Minor units. */
  dayMinor: z.number().int().min(0).max(100_000).default(0),
  /** When it is given up on and goes for spares. */
  horizonDays: z.number().int().min(1).max(730).default(30),
})

export type AskingChoices = z.infer<typeof askingChoicesSchema>

/** What can be done to a machine of this blueprint. */
export const improvementsFor = ({ parts }: Blueprint): readonly ImprovementId[] =>
  improvementIds.filter((id) => {
    const improvement = improvements[id]
    return !('part' in improvement) || parts.some((part) => part.id.includes(improvement.part))
  })

/** What a machine sold cleaned and working has anyway. */
export const usuallyDone: readonly ImprovementId[] = improvementIds.filter((id) => improvements[id].isUsual)
