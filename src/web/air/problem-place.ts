import type { Problem } from '../../base/problem.ts'

/** The fields of a reading, the more particular before those they are part of. */
const fields = [
  'opening.thicknessM',
  'opening.edgeRadiusM',
  'opening',
  'read.soundHz',
  'read',
  'instrument',
  'tapBefore',
  'out',
  'mainsV',
  'inputW',
  'room.barometerPa',
  'room.temperatureC',
  'room.relativeHumidity',
] as const
export type ReadingField = (typeof fields)[number]

/** Fields that are always on the page; the others lie under “More”. */
const alwaysShown: readonly ReadingField[] = ['opening', 'read.soundHz', 'read', 'instrument']

const fieldOf = ({ where }: Problem): ReadingField | null =>
  fields.find((field) => where.includes(`reading.${field}`)) ?? null

/** The problems of one field of a reading; null for those of none. */
export const problemsOf = (problems: readonly Problem[], field: ReadingField | null): readonly Problem[] =>
  problems.filter((one) => fieldOf(one) === field)

/** Whether a problem lies in a field that may be folded away. */
export const isUnderMore = (one: Problem): boolean => {
  const field = fieldOf(one)
  return field !== null && !alwaysShown.includes(field)
}
