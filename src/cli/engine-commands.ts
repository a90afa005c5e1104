import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { problem } from '../base/problem.ts'
import { refused, ok, type Result } from '../base/result.ts'
import { benchNotesSchema } from '../bench/note.ts'
import { checkBlueprint } from '../blueprint/check.ts'
import { blueprintSchema } from '../blueprint/schema.ts'
import { beliefProblemSchema, runBelief } from '../engines/belief/index.ts'
import { networkRequestSchema, networkSchema, runNetwork } from '../engines/network/index.ts'
import { checkPlanProblem, plan, planProblemSchema } from '../engines/plan/index.ts'

/** The forms that outside input may take, by name; `thrum schema NAME` prints one as JSON Schema. */
export const schemas: Readonly<Record<string, z.ZodType>> = {
  blueprint: blueprintSchema,
  notes: benchNotesSchema,
  network: networkSchema,
  'network-request': networkRequestSchema,
  belief: beliefProblemSchema,
  plan: planProblemSchema,
}

/** A schema by name as JSON Schema (draft 2020-12), in the form that input may take. */
export const jsonSchema = (name: string): Result<unknown> => {
  const schema = schemas[name]
  if (schema === undefined) {
    return refused(
      problem('unknown-schema', name, `There is no schema “${name}”`, `Use one of ${Object.keys(schemas).join(', ')}`),
    )
  }
  return ok(z.toJSONSchema(schema, { io: 'input' }))
}

/** Engines that take JSON and give JSON, by name. */
export const engines: Readonly<Record<string, (input: unknown) => Result<unknown>>> = {
  network: (input) => runNetwork(input),
  belief: (input) => runBelief(input),
  plan: (input) => {
    const checked = checkPlanProblem(input)
    return checked.kind === 'ok' ? ok(plan(checked.value)) : checked
  },
  blueprint: (input) => checkBlueprint(input),
}

/** Reads a JSON file, or standard input for `-`. */
export const readJson = (file: string): Result<unknown> => {
  const text = readText(file)
  if (text.kind === 'refused') return text
  try {
    return ok(JSON.parse(text.value) as unknown)
  } catch (error) {
    return refused(
      problem(
        'not-json',
        file,
        `This is not JSON (${(error as Error).message})`,
        'Give a JSON file, or - for standard input',
      ),
    )
  }
}

const readText = (file: string): Result<string> => {
  try {
    return ok(readFileSync(file === '-' ? 0 : file, 'utf8'))
  } catch (error) {
    return refused(
      problem(
        'cannot-read',
        file,
        `This file cannot be read (${(error as Error).message})`,
        'Give a file that exists, or - for standard input',
      ),
    )
  }
}
