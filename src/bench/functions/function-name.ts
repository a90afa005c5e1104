import type { Blueprint } from '../../blueprint/schema.ts'
import { functionById } from '../../machine/functions/functions-of.ts'

/** The name of a function of this blueprint; an unknown one reads as its id. */
export const functionName = (id: string, blueprint: Blueprint | null): string =>
  (blueprint === null ? undefined : functionById(blueprint, id)?.name) ?? id
