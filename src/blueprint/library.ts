import { baggedCylinder } from './library/bagged-cylinder.ts'
import { baggedUprightOneMotor } from './library/bagged-upright-one-motor.ts'
import { baggedUprightTwoMotors } from './library/bagged-upright-two-motors.ts'
import { baglessCylinder } from './library/bagless-cylinder.ts'
import { baglessUpright } from './library/bagless-upright.ts'
import { commercialUpright } from './library/commercial-upright.ts'
import { directAirUpright } from './library/direct-air-upright.ts'
import { electricHeadCylinder } from './library/electric-head-cylinder.ts'
import { stickUpright } from './library/stick-upright.ts'
import { tubByPass } from './library/tub-by-pass.ts'
import { blueprintSchema, type Blueprint } from './schema.ts'

const inputs = [
  ...baggedUprightTwoMotors,
  ...baggedUprightOneMotor,
  ...baglessUpright,
  ...directAirUpright,
  ...commercialUpright,
  ...stickUpright,
  ...baggedCylinder,
  ...electricHeadCylinder,
  ...baglessCylinder,
  ...tubByPass,
]

/** The blueprints that come with the program. Only their form is parsed here; a test puts each through the whole checker. */
export const blueprints: readonly Blueprint[] = inputs.map((input) => blueprintSchema.parse(input))

const byId = new Map(blueprints.map((blueprint) => [blueprint.id, blueprint]))

/** The blueprint with this id, or undefined when the library has none. */
export const blueprintById = (id: string): Blueprint | undefined => byId.get(id)
