import { takenBack } from '../../facts/sale-claims.ts'
import { historyWords, workWords } from '../../facts/sale-part-words.ts'
import type { Evidence } from './evidence.ts'

export type OwnWords = { readonly from: number; readonly to: number; readonly words: string }

/**
 * Clauses of one's own that tell of work done or of what happened to the machine before, make no claim that is looked for, and
 * are spoken of by no note. `marked`: where claims stand.
 */
export const ownWordsIn = (
  text: string,
  { words }: Pick<Evidence, 'words'>,
  marked: readonly { readonly from: number; readonly to: number }[],
): readonly OwnWords[] =>
  [...text.matchAll(/[^.,;:!?\n]+/g)].flatMap(({ index, 0: clause }) => {
    const from = index + clause.length - clause.trimStart().length
    const to = index + clause.trimEnd().length
    const own = text.slice(from, to)
    if (!tells(own) || marked.some((mark) => mark.from < to && from < mark.to)) return []
    if (words.some((note) => speaksOf(note.text, own))) return []
    return [{ from, to, words: own }]
  })

/** Work that is taken back, as in `not repaired`, is no work; what never happened is history all the same. */
const tells = (clause: string): boolean => {
  const work = workWords.exec(clause)
  return historyWords.test(clause) || (work !== null && !takenBack.test(clause.slice(0, work.index)))
}

/** More than half of the longer words of the clause stand in the note too. */
const speaksOf = (note: string, clause: string): boolean => {
  const [there, own] = [stems(note), stems(clause)]
  const shared = [...own].filter((word) => there.has(word)).length
  return own.size > 0 && shared * 2 > own.size
}

/** Words of four letters and more, without their endings. */
const stems = (text: string): ReadonlySet<string> =>
  new Set((text.toLowerCase().match(/\p{L}{4,}/gu) ?? []).map((word) => word.replace(/(?:ing|ed|es|s)$/, '')))
