import { inSentence } from '../../base/in-sentence.ts'
import { capital } from '../../machine/air/air-text.ts'
import { driesAfter } from '../../facts/cleaning-tasks.ts'
import { fixingsWords, notClosedText } from '../stripping/fixing-words.ts'
import { listText } from '../words.ts'
import type { Evidence } from './evidence.ts'

/** What is not together, not there or not dry, each in a whole sentence for a buyer. */
export const lackingWords = (evidence: Evidence): readonly string[] => {
  const { state, leftOver, notClosed, blueprint } = evidence
  const part = (id: string): string => inSentence(blueprint.parts.find((one) => one.id === id)?.name ?? id)
  const off = blueprint.covers.filter(({ id }) => state.off.includes(id)).map(({ name }) => inSentence(name))
  const gone = [...state.missing.map(part), ...notThere(evidence)]
  const damp = state.drying.map(({ task, part: id }) => (id === null ? inSentence(driesAfter(task)) : part(id)))
  return [
    gone.length === 0 ? '' : `Not there: ${listText(gone)}.`,
    state.out.length === 0 ? '' : `Taken out of it and not put back: ${listText(state.out.map(part))}.`,
    off.length === 0 ? '' : `Off it and not put back: ${listText(off)}.`,
    ...leftOver.map(({ piece, fixings }) => {
      const count = fixings.reduce((sum, one) => sum + one.count, 0)
      return `${capital(fixingsWords(fixings))} of the ${inSentence(piece.name)} ${count === 1 ? 'was' : 'were'} left over when it was put together.`
    }),
    ...notClosed.map(({ piece, fixings }) => `${notClosedText(fixings, inSentence(piece.name))}.`),
    damp.length === 0
      ? ''
      : `Washed and not found dry yet: ${listText([...new Set(damp)])}. It must not run before ${damp.length === 1 ? 'it is' : 'they are'} dry.`,
  ].filter((one) => one !== '')
}

/** Functions that are not there, where no part of theirs is noted as missing. */
export const notThere = ({ tried, state }: Pick<Evidence, 'tried' | 'state'>): readonly string[] =>
  tried
    .filter(({ result, part }) => result === 'not-there' && (part === undefined || !state.missing.includes(part)))
    .map(({ name }) => inSentence(name))
