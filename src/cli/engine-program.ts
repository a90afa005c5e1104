import type { Command } from 'commander'
import { blueprintById, blueprints } from '../blueprint/library.ts'
import { problem } from '../base/problem.ts'
import { jsonSchema, schemaNames } from '../bench/json-schemas.ts'
import { engines, readJson } from './engine-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { healthyReadings } from './reading-table.ts'

type Options = { readonly json: boolean; readonly data: string }

/** Commands that need no bench: blueprints, engines and schemas. */
export const addEngineCommands = (program: Command, shell: Shell): void => {
  addBlueprintCommands(program, shell)
  addRunCommands(program, shell)
  program
    .command('schema <name>')
    .description(`JSON Schema of an input: ${schemaNames.join(', ')}`)
    .action((name: string, _options: unknown, command: Command) => {
      const schema = jsonSchema(name)
      const { json } = command.optsWithGlobals<Options>()
      shell.finish(
        schema === null
          ? showProblems(shell.output, json, [noSuchSchema(name)])
          : show(shell.output, true, schema, () => []),
      )
    })
}

const noSuchSchema = (name: string) =>
  problem('unknown-schema', name, `There is no schema “${name}”`, `Use one of ${schemaNames.join(', ')}`)

const addRunCommands = (program: Command, shell: Shell): void => {
  for (const name of ['network', 'belief', 'plan'] as const) {
    program
      .command(`${name} <file>`)
      .description(`the ${name} engine: JSON in (a file, or - for standard input), JSON out`)
      .action((file: string, _options: unknown, command: Command) => {
        const { json } = command.optsWithGlobals<Options>()
        const input = readJson(file)
        const answer = input.kind === 'ok' ? engines[name](input.value) : input
        shell.finish(
          answer.kind === 'ok'
            ? show(shell.output, true, answer.value, () => [])
            : showProblems(shell.output, json, answer.problems),
        )
      })
  }
}

const addBlueprintCommands = (program: Command, shell: Shell): void => {
  program
    .command('blueprints')
    .description('the architectures that are known')
    .action((_options: unknown, command: Command) => {
      const list = blueprints.map(({ id, name, summary, faults, checks }) => ({
        id,
        name,
        summary,
        faults: faults.length,
        checks: checks.length,
      }))
      const { json } = command.optsWithGlobals<Options>()
      shell.finish(
        show(shell.output, json, list, () =>
          list.map((b) => `${b.id}  ${b.name} (${b.faults} faults, ${b.checks} checks)`),
        ),
      )
    })
  program
    .command('blueprint <what> <name>')
    .description('blueprint check FILE · blueprint export ID · blueprint readings ID')
    .action((what: string, name: string, _options: unknown, command: Command) => {
      const { json } = command.optsWithGlobals<Options>()
      shell.finish(blueprintCommand(shell, what, name, json))
    })
}

const blueprintCommand = (shell: Shell, what: string, name: string, json: boolean): number => {
  if (what === 'check') return checkFile(shell, name, json)
  const blueprint = blueprintById(name)
  if (what !== 'export' && what !== 'readings') {
    return showProblems(shell.output, json, [
      problem('unknown-command', 'blueprint', `“${what}” is not known`, 'Use check, export or readings'),
    ])
  }
  if (blueprint === undefined) {
    const known = blueprints.map((b) => b.id).join(', ')
    return showProblems(shell.output, json, [
      problem('unknown-blueprint', name, `There is no blueprint “${name}”`, `Use one of ${known}`),
    ])
  }
  if (what === 'export') return show(shell.output, true, blueprint, () => [])
  const readings = healthyReadings(blueprint, blueprint.plate)
  return show(shell.output, json, readings, () =>
    readings.map((r) => `${r.check.padEnd(28)} ${r.text.padEnd(22)} ${r.name}`),
  )
}

const checkFile = (shell: Shell, file: string, json: boolean): number => {
  const input = readJson(file)
  const checked = input.kind === 'ok' ? engines['blueprint'](input.value) : input
  if (checked.kind === 'refused') return showProblems(shell.output, json, checked.problems)
  return show(shell.output, json, { kind: 'ok' }, () => ['This blueprint is sound.'])
}
