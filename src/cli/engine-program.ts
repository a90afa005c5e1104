import type { Command } from 'commander'
import { plateText } from '../blueprint/entry.ts'
import { blueprintById, blueprints } from '../blueprint/library.ts'
import { problem, problemText } from '../base/problem.ts'
import { ok } from '../base/result.ts'
import { soundBlueprint } from '../bench/blueprints.ts'
import { checkBlueprint } from '../blueprint/check.ts'
import { lintBlueprint } from '../blueprint/lint.ts'
import { lookAlikes } from '../machine/index.ts'
import { jsonSchema, schemaNames } from '../bench/json-schemas.ts'
import { engines, readJson } from './engine-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { unknownId } from '../bench/unknown.ts'
import { ownBlueprintsIn } from './own-blueprints.ts'
import { placeOf, type PlaceOptions } from './store-place.ts'
import { healthyReadings } from './reading-table.ts'
import { showShows } from './shows-text.ts'

type Options = { readonly json: boolean } & PlaceOptions

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
  for (const name of ['network', 'airflow', 'limits', 'money', 'belief', 'plan', 'certify'] as const) {
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
    .action(async (_options: unknown, command: Command) => {
      const { json, ...place } = command.optsWithGlobals<Options>()
      const own = await ownBlueprintsIn(placeOf(place))
      if (own.kind === 'refused') return shell.finish(showProblems(shell.output, json, own.problems))
      const list = [...blueprints, ...own.value.map((one) => one.blueprint)].map(
        ({ id, name, summary, signs, plate, faults, checks }) => ({
          id,
          name,
          summary,
          signs,
          plate,
          faults: faults.length,
          checks: checks.length,
        }),
      )
      shell.finish(
        show(shell.output, json, list, () =>
          list.map((b) => `${b.id}  ${b.name} (${plateText(b.plate)}, ${b.faults} faults, ${b.checks} checks)`),
        ),
      )
    })
  program
    .command('blueprint <what> <name>')
    .description(
      'blueprint list · blueprint check FILE · blueprint export ID · blueprint readings ID · blueprint shows ID · blueprint pick · blueprint adapt ID · blueprint import FILE',
    )
    .action(async (what: string, name: string, _options: unknown, command: Command) => {
      shell.finish(await blueprintCommand(shell, what, name, command.optsWithGlobals<Options>()))
    })
}

const blueprintCommand = async (
  shell: Shell,
  what: string,
  name: string,
  { json, ...place }: Options,
): Promise<number> => {
  if (what === 'check') return checkFile(shell, name, json)
  if (what !== 'export' && what !== 'readings' && what !== 'shows') {
    return showProblems(shell.output, json, [
      problem(
        'unknown-command',
        'blueprint',
        `“${what}” is not known`,
        'Use list, pick, check, export, readings or shows',
      ),
    ])
  }
  const own = blueprintById(name) === undefined ? await ownBlueprintsIn(placeOf(place)) : ok([])
  if (own.kind === 'refused') return showProblems(shell.output, json, own.problems)
  const blueprint = blueprintById(name) ?? own.value.find(({ id }) => id === name)?.blueprint
  if (blueprint === undefined) {
    const { what: wrong, mend } = unknownId('blueprint', name, name, [...blueprints, ...own.value].map((b) => b.id)) // prettier-ignore
    return showProblems(shell.output, json, [
      problem('unknown-blueprint', name, wrong, `${mend}? See thrum blueprint list`),
    ])
  }
  if (what === 'export') return show(shell.output, true, blueprint, () => [])
  if (what === 'shows') return showShows(shell, blueprint, json)
  const readings = healthyReadings(blueprint, blueprint.plate)
  return show(shell.output, json, readings, () =>
    readings.map((r) => `${r.check.padEnd(28)} ${r.text.padEnd(22)} ${r.name}`),
  )
}

const checkFile = (shell: Shell, file: string, json: boolean): number => {
  const input = readJson(file)
  const checked = input.kind === 'ok' ? soundBlueprint(checkBlueprint(input.value)) : input
  if (checked.kind === 'refused') return showProblems(shell.output, json, checked.problems)
  const remarks = lintBlueprint(checked.value)
  const groups = lookAlikes(checked.value)
  return show(shell.output, json, { kind: 'ok', remarks, lookAlikes: groups }, () => [
    'This blueprint is sound.',
    ...remarks.map((remark) => `Worth a look: ${problemText(remark)}`),
    ...groups.map(({ text }) => text),
  ])
}
