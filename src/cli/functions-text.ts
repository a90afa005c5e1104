import { inSentence } from '../base/in-sentence.ts'
import type { FunctionGroup } from '../machine/functions/function-check.ts'
import type { FunctionRow, FunctionsView } from '../machine/index.ts'

const groupNames: Readonly<Record<FunctionGroup, string>> = {
  opened: 'Plug out, opened',
  'by-hand': 'Plug out, closed',
  run: 'Running, covers on',
}

/** The functions of a machine as lines: the verdict, then each with what came of it or how to do it. */
export const functionLines = (name: string, { rows, notCovered, verdict }: FunctionsView): readonly string[] => [
  `${name}: ${verdict}`,
  ...(['opened', 'by-hand', 'run'] as const).flatMap((group) => {
    const own = rows.filter((row) => row.group === group)
    return own.length === 0 ? [] : ['', groupNames[group], ...own.flatMap(rowLines)]
  }),
  ...(notCovered.length === 0 ? [] : ['', 'Not tried by any of these']),
  ...notCovered.map(({ part, why }) => `  ${part.name}: ${why}`),
]

const rowLines = (row: FunctionRow): readonly string[] => {
  const { id, name, state } = row
  switch (state.kind) {
    case 'told':
      return [`  ${id}  ${name}: ${inSentence(state.told.text)}`]
    case 'again':
      return [`  ${id}  ${name}: to do again. ${state.why}; before, ${inSentence(state.was.text)}`, ...howLines(row)]
    case 'to-do':
      return [`  ${id}  ${name}: to do`, ...howLines(row)]
  }
}

const howLines = ({ how, good, settings, barred, coversOff }: FunctionRow): readonly string[] => [
  `      ${how}`,
  ...(settings.length === 0 ? [] : [`      ${settings.join(', ')}`]),
  ...(coversOff.length === 0 ? [] : [`      Off: ${coversOff.join(', ')}`]),
  `      Good: ${inSentence(good)}`,
  ...(barred.length === 0 ? [] : [`      Not yet: ${barred.join('; ')}`]),
]
