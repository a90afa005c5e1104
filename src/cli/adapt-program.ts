import { writeFileSync } from 'node:fs'
import type { Command } from 'commander'
import { problem, type Problem } from '../base/problem.ts'
import { keepBlueprint, keepVariant, type KeepOutcome } from '../bench/blueprints.ts'
import { parseEdits } from '../blueprint/adapt.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { readJson } from './engine-commands.ts'
import { show, showProblems, type Shell } from './output.ts'
import { answer, withBench, type Options } from './with-bench.ts'

/** Commands that make and hand on blueprints of one's own, under `thrum blueprint`, and the one that fits them to a machine. */
export const addAdaptCommands = (program: Command, shell: Shell): void => {
  const blueprint = program.commands.find((command) => command.name() === 'blueprint')!
  addAdapt(blueprint, shell)
  addImport(blueprint, shell)
  addDifferent(program, shell)
}

const textOf = (options: Options, name: string): string => {
  const value = options[name]
  return typeof value === 'string' ? value : ''
}

const addAdapt = (blueprint: Command, shell: Shell): void => {
  blueprint
    .command('adapt <id>')
    .description('keep a variant of a blueprint under a name of your own')
    .requiredOption('--edits <file>', 'what is different: JSON in (a file, or - for standard input)')
    .requiredOption('--name <words>', 'what to call the variant')
    .option('--out <file>', 'write the variant to this file too')
    .action(
      withBench(shell, async ({ blueprints }, options, [id = '']) => {
        const edits = editsFrom(textOf(options, 'edits'))
        if (edits.kind === 'refused') return showProblems(shell.output, options.json, edits.problems)
        const variant = { name: textOf(options, 'name'), edits: edits.value }
        return shown(shell, options, await keepVariant(blueprints, id, variant))
      }),
    )
}

const editsFrom = (file: string) => {
  const input = readJson(file)
  return input.kind === 'ok' ? parseEdits(input.value) : input
}

const addImport = (blueprint: Command, shell: Shell): void => {
  blueprint
    .command('import <file>')
    .description('take in a blueprint from a file; it is checked first')
    .action(
      withBench(shell, async ({ blueprints }, options, [file = '']) => {
        const input = readJson(file)
        if (input.kind === 'refused') return showProblems(shell.output, options.json, input.problems)
        return shown(shell, options, await keepBlueprint(blueprints, input.value))
      }),
    )
}

const shown = (shell: Shell, options: Options, outcome: KeepOutcome): number => {
  if (outcome.kind !== 'kept') return showProblems(shell.output, options.json, outcome.problems)
  const { id, isNew, blueprint } = outcome
  const out = textOf(options, 'out')
  const notWritten = out === '' ? [] : writeBlueprint(out, blueprint)
  if (notWritten.length > 0) return showProblems(shell.output, options.json, notWritten)
  return show(shell.output, options.json, { id, isNew, blueprint }, () => [
    isNew ? `Kept as ${id}` : `This one is kept already: ${id}`,
  ])
}

/** Writes a blueprint as a file, as the pages do. Gives what stood in the way. */
const writeBlueprint = (file: string, blueprint: Blueprint): readonly Problem[] => {
  try {
    writeFileSync(file, `${JSON.stringify(blueprint, null, 2)}\n`)
    return []
  } catch (error) {
    const what = `This file cannot be written (${(error as Error).message})`
    return [problem('cannot-write', file, what, 'Name a file in a folder that is there and can be written')]
  }
}

const addDifferent = (program: Command, shell: Shell): void => {
  program
    .command('different <machine>')
    .description('this machine is different: keep a variant of its blueprint and read it by that from here on')
    .requiredOption('--edits <file>', 'what is different: JSON in (a file, or - for standard input)')
    .option('--name <words>', 'what to call the variant; the name of the machine when left out', '')
    .action(
      withBench(shell, async ({ deps, blueprints }, options, [wanted = '']) => {
        const machine = await findMachine(deps, wanted)
        if (machine.kind === 'refused') return showProblems(shell.output, options.json, machine.problems)
        const edits = editsFrom(textOf(options, 'edits'))
        if (edits.kind === 'refused') return showProblems(shell.output, options.json, edits.problems)
        const { state } = machine.value
        const name = textOf(options, 'name') || state.name
        const kept = await keepVariant(blueprints, state.blueprint, { name, edits: edits.value })
        if (kept.kind !== 'kept') return showProblems(shell.output, options.json, kept.problems)
        const content = { kind: 'described-by' as const, blueprint: kept.id, edits: [...edits.value] }
        return answer(shell, options, deps, await writeNote(deps, machine.value, content))
      }),
    )
}
