import { cautiousLossShare } from '../facts/attitudes.ts'
import type { Risk } from '../engines/plan/index.ts'
import type { Job } from './job.ts'

/**
 * What the plan is held to: the whole machine loses money when it brings less from here on than was put into it. Null when
 * it goes by the average.
 */
export const riskOf = ({ attitude, putInMinor }: Job): Risk | null =>
  attitude === 'cautious' ? { belowMinor: putInMinor ?? 0, atMost: cautiousLossShare } : null
