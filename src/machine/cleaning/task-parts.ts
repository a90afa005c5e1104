import type { Blueprint } from '../../blueprint/schema.ts'
import type { CleaningTask } from '../../facts/cleaning-task.ts'

type Part = Blueprint['parts'][number]

/**
 * The parts of a blueprint that a task is done to, without those that are missing; null where the task does not belong to the
 * machine. A task done to the whole machine belongs to every one and names no part.
 */
export const partsOfTask = (
  { at }: Pick<CleaningTask, 'at'>,
  { parts }: Pick<Blueprint, 'parts'>,
  missing: readonly string[],
): readonly Part[] | null => {
  if (at === 'machine') return []
  if (parts.some(({ id }) => id === at.unless)) return null
  const own = parts.filter(({ id }) => at.parts.includes(id) && !missing.includes(id))
  return own.length === 0 ? null : own
}

/** Whether the belt is of the kind that stretches: the blueprint says so in its name or note. */
export const hasFlatBelt = ({ parts }: Pick<Blueprint, 'parts'>): boolean =>
  parts.some(({ id, name, note = '' }) => id === 'belt' && /\bflat\b/i.test(`${name} ${note}`))

/** Whether the blueprint says of its pre-motor filter that it is washable: among what it is known by, or with the part. */
export const hasWashableFilter = ({ parts, recognise }: Pick<Blueprint, 'parts' | 'recognise'>): boolean =>
  recognise.some((text) => /\bwashable filter\b/i.test(text)) ||
  parts.some(({ id, name, note = '' }) => id === 'pre-motor-filter' && /\bwashable\b/i.test(`${name} ${note}`))
