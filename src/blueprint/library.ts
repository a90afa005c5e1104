import { valueOf } from '../base/result.ts'
import { checkBlueprint } from './check.ts'
import { baggedUprightTwoMotors } from './library/bagged-upright-two-motors.ts'
import type { Blueprint } from './schema.ts'

/** The blueprints that come with the program, checked once. */
export const blueprints: readonly Blueprint[] = [baggedUprightTwoMotors].map((input) => valueOf(checkBlueprint(input)))

/** The blueprint with this id, or undefined when the library has none. */
export const blueprintById = (id: string): Blueprint | undefined => blueprints.find((blueprint) => blueprint.id === id)
