import { parse } from '../base/parse.ts'
import { refused, type Result } from '../base/result.ts'
import { checkAir } from './check-air.ts'
import { checkCircuit } from './check-circuit.ts'
import { checkCovers } from './check-covers.ts'
import { checkDuplicates } from './check-duplicates.ts'
import { checkFaults } from './check-faults.ts'
import { checkNames } from './check-names.ts'
import { checkOutcomes } from './check-outcomes.ts'
import { placeById } from './place-by-id.ts'
import { blueprintSchema, type Blueprint } from './schema.ts'

/**
 * A blueprint from outside input, with its defaults filled in. Refused with a problem for each mistake: first those of
 * its form, and when the form is right those of its sense. `where` is a path into the blueprint, lists by id.
 */
export const checkBlueprint = (input: unknown): Result<Blueprint> => {
  const parsed = parse(blueprintSchema, input, 'blueprint', placeById(input))
  if (parsed.kind === 'refused') return parsed
  const blueprint = parsed.value
  const problems = [
    ...checkDuplicates(blueprint),
    ...checkNames(blueprint),
    ...checkCircuit(blueprint),
    ...checkCovers(blueprint),
    ...checkOutcomes(blueprint),
    ...checkFaults(blueprint),
    ...checkAir(blueprint),
  ]
  return problems.length === 0 ? parsed : refused(...problems)
}
