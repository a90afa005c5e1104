import type { Problem } from '../base/problem.ts'

/** The problems of one field. A place may have the name of the whole input and its parts in front: `note content.plate.powerW`. */
export const problemsAt = (problems: readonly Problem[], field: string): readonly Problem[] =>
  problems.filter(({ where }) => where === field || where.endsWith(`.${field}`) || where.endsWith(` ${field}`))

/** The problems that belong to none of the fields. */
export const problemsElsewhere = (problems: readonly Problem[], fields: readonly string[]): readonly Problem[] =>
  problems.filter((one) => fields.every((field) => problemsAt([one], field).length === 0))
