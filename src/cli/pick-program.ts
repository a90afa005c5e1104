import type { Command } from 'commander'
import { problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { blueprintEntry, plateText, plugText, type BlueprintEntry } from '../blueprint/entry.ts'
import { blueprints } from '../blueprint/library.ts'
import { allSignQuestions, cannotTell, narrow, replyText, signQuestion } from '../blueprint/narrow.ts'
import type { AskedQuestion, Narrowed, SignReply } from '../blueprint/narrow.ts'
import { nearest } from '../base/nearest.ts'
import { ownBlueprintsIn } from './own-blueprints.ts'
import { placeOf, type PlaceOptions } from './store-place.ts'
import { show, showProblems, type Shell } from './output.ts'

type Options = { readonly json: boolean } & PlaceOptions & Readonly<Record<string, unknown>>

/** `thrum blueprint pick`: what still fits the answers to the questions that are answered by looking, and what to ask next. */
export const addPickCommand = (program: Command, shell: Shell): void => {
  const blueprint = program.commands.find((command) => command.name() === 'blueprint')!
  const pick = blueprint.command('pick').description('which architecture it is, from what can be seen, plug out')
  for (const { id, question, answers } of allSignQuestions)
    pick.option(`--${id} <answer>`, `${question} ${[...answers.map((one) => one.id), cannotTell].join(', ')}`)
  pick.action(async (_options: unknown, command: Command) => {
    shell.finish(await pickCommand(shell, command.optsWithGlobals<Options>()))
  })
}

/** `thrum blueprint list`: all there are, one's own last. */
export const addListCommand = (program: Command, shell: Shell): void => {
  const blueprint = program.commands.find((command) => command.name() === 'blueprint')!
  blueprint
    .command('list')
    .description('the blueprints there are, one’s own last')
    .action(async (_options: unknown, command: Command) => {
      const { json, ...place } = command.optsWithGlobals<Options>()
      const own = await ownBlueprintsIn(placeOf(place))
      if (own.kind === 'refused') return shell.finish(showProblems(shell.output, json, own.problems))
      const entries = [...blueprints, ...own.value.map((one) => one.blueprint)].map(blueprintEntry)
      return shell.finish(show(shell.output, json, entries, () => entries.map(line)))
    })
}

const pickCommand = async (shell: Shell, options: Options): Promise<number> => {
  const replies = repliesFrom(options)
  if (replies.kind === 'refused') return showProblems(shell.output, options.json, replies.problems)
  const own = await ownBlueprintsIn(placeOf(options))
  if (own.kind === 'refused') return showProblems(shell.output, options.json, own.problems)
  const all = [...blueprints, ...own.value.map(({ blueprint }) => blueprint)]
  const left = narrow(all.map(blueprintEntry), replies.value)
  return show(shell.output, options.json, left, () => pickText(left, all.length))
}

/** The answers on the line, in the order of the questions: what was typed first is not known any more. */
const repliesFrom = (options: Options): Result<readonly SignReply[]> => {
  const replies = allSignQuestions.flatMap(({ id }): readonly SignReply[] => {
    const answer = options[id]
    return typeof answer === 'string' ? [{ question: id, answer }] : []
  })
  const wrong = replies.filter((reply) => !answersTo(signQuestion(reply.question)).includes(reply.answer))
  return wrong.length === 0 ? ok(replies) : refused(...wrong.map(noSuchAnswer))
}

const answersTo = ({ answers }: AskedQuestion): readonly string[] => [...answers.map(({ id }) => id), cannotTell]

const noSuchAnswer = ({ question, answer }: SignReply) => {
  const known = answersTo(signQuestion(question))
  const meant = nearest(answer, known)
  const mend = `${meant === null ? 'Use' : `Did you mean ${meant}? Use`} one of ${known.join(', ')}`
  return problem('unknown-answer', `--${question}`, `“${answer}” is not an answer to this`, mend)
}

const pickText = (left: Narrowed<BlueprintEntry>, all: number): readonly string[] => {
  if (left.kind === 'none') {
    return [
      `Nothing fits all of that. Take back first: --${left.takeBack.question} ${left.takeBack.answer}`,
      'Nearest:',
      ...left.nearest.map(
        ({ entry, against }) =>
          `${line(entry)}; against it: ${against.map((reply) => `--${reply.question} ${reply.answer} (${replyText(reply)})`).join(', ')}`,
      ),
    ]
  }
  const { entries, next } = left
  return [
    `${entries.length} of ${all} fit:`,
    ...entries.map(line),
    ...(next === null ? lastWords(entries.length) : questionLines(next)),
  ]
}

const line = (entry: BlueprintEntry): string =>
  `  ${entry.id}  ${entry.name} (${plateText(entry.plate)}, ${plugText(entry)})`

const questionLines = ({ id, question, answers }: AskedQuestion): readonly string[] => [
  `Next: ${question}`,
  ...answers.map((answer) => `  --${id} ${answer.id}: ${answer.name}`),
  `  --${id} ${cannotTell}: Cannot tell`,
]

const lastWords = (count: number): readonly string[] =>
  count > 1 ? ['No question tells these apart: choose by the rating plate.'] : []
