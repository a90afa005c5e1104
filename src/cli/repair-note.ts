import { moneyFromText } from '../base/money.ts'
import { problem } from '../base/problem.ts'
import { ok, refused } from '../base/result.ts'
import type { CommandDeps } from '../bench/commands.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { shareOfStock } from '../bench/shelf/part-state.ts'
import { shelf } from '../bench/shelf/shelf-commands.ts'
import { minutesOr, type Maker, type Noting } from './noting.ts'
import { textOf } from './option-text.ts'
import type { Options } from './with-bench.ts'

/** `thrum repair`: what was mended, with what. */
export const addRepair = (noting: Noting): void => {
  noting('repair <machine> <repair> <option>', 'a repair was done', repairNote)
    .option('--minutes <number>', 'minutes it took')
    .option('--cost <money>', 'what it cost')
    .option('--from-shelf <part>', 'the part of the shelf that went in')
}

const repairNote: Maker = ({ blueprint }, [repair = '', option = ''], options) => {
  const known = blueprint?.repairs.find((r) => r.id === repair)?.options.find((o) => o.id === option)
  const middle = known === undefined ? 0 : Math.round((known.costMinor.low + known.costMinor.high) / 2)
  const written = textOf(options, 'cost')
  const costMinor = written === undefined ? middle : moneyFromText(written)
  if (costMinor === null)
    return refused(problem('not-money', '--cost', `“${written}” is not an amount of money`, 'Write such as 4.50'))
  const minutes = minutesOr(options, known?.minutes ?? 0)
  return minutes.kind === 'refused'
    ? minutes
    : ok({ kind: 'repaired', repair, option, minutes: minutes.value, costMinor, ...fromShelf(options) })
}

/** A part of the shelf goes in at what it stands at, unless a cost is given. */
export const atItsShare = async (
  deps: CommandDeps,
  content: NoteContentInput,
  options: Options,
): Promise<NoteContentInput> => {
  if (content.kind !== 'repaired' || content.shelfPart === undefined || options['cost'] !== undefined) return content
  const part = await shelf.document(deps, content.shelfPart)
  return part === null ? content : { ...content, costMinor: shareOfStock(part.state.costMinor, part.state.count, 1) }
}

const fromShelf = (options: Options): { readonly shelfPart?: string } => {
  const shelfPart = textOf(options, 'fromShelf')
  return shelfPart === undefined ? {} : { shelfPart }
}
