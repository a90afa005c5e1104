import type { MachineDocument } from '../../bench/contract.ts'
import type { Note } from '../../bench/note.ts'
import type { Blueprint } from '../../blueprint/schema.ts'

/**
 * What was tried and looked at on a machine: the last result of each function and of each graded check, in words. What was not as it
 * should be stands one by one, the rest in one line.
 */
export const seenLines = ({ notes, lines }: Pick<MachineDocument, 'notes' | 'lines'>, blueprint: Blueprint) => {
  const words = new Map(lines.filter(({ struck }) => !struck).map(({ id, text }) => [id, text]))
  const last = new Map<string, { readonly text: string; readonly isGood: boolean }>()
  for (const { id, content } of notes) {
    const [text, said] = [words.get(id), sightOf(content, blueprint)]
    if (text === undefined || said === null) continue
    last.delete(said.of)
    last.set(said.of, { text, isGood: said.isGood })
  }
  const good = [...last.values()].filter(({ isGood }) => isGood).length
  return [
    ...[...last.values()].filter(({ isGood }) => !isGood).map(({ text }) => text),
    ...(good === 0 ? [] : [`${good} ${good === 1 ? 'thing' : 'things'} tried or looked at and good`]),
  ]
}

type Sight = { readonly of: string; readonly isGood: boolean }

const sightOf = (content: Note['content'], { checks }: Blueprint): Sight | null => {
  if (content.kind === 'tried')
    return content.result === 'cannot-tell'
      ? null
      : { of: `function ${content.function}`, isGood: content.result === 'good' }
  if (content.kind !== 'reading' || content.result.kind !== 'grade') return null
  const check = checks.find(({ id }) => id === content.check)
  if (check === undefined || check.kind === 'meter') return null
  return { of: `check ${content.check}`, isGood: check.outcomes[0]?.id === content.result.outcome }
}
