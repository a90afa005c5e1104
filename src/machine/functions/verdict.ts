import { inSentence } from '../../base/in-sentence.ts'
import type { FunctionState } from './function-state.ts'
import type { TriedResult } from './tried-result.ts'

type Row = { readonly name: string; readonly state: FunctionState }

/** Where trying stands in one line: `12 of 17 tried, 1 not as it should be: height drive`. */
export const verdictOf = (rows: readonly Row[]): string => {
  const those = (result: TriedResult): readonly Row[] =>
    rows.filter(({ state }) => state.kind === 'told' && state.told.result === result)
  const bad = those('bad')
  const gone = those('not-there')
  const unclear = those('cannot-tell')
  const tried = those('good').length + bad.length + gone.length
  const again = rows.filter(({ state }) => state.kind === 'again')
  const isWhole = tried === rows.length && bad.length + gone.length === 0
  return [
    tried === rows.length ? `All ${rows.length} tried` : `${tried} of ${rows.length} tried`,
    ...(isWhole ? ['all as they should be'] : []),
    ...named(bad, 'not as it should be'),
    ...named(gone, 'not there'),
    ...named(unclear, 'could not be told'),
    ...named(again, 'to do again'),
  ].join(', ')
}

const named = (rows: readonly Row[], what: string): readonly string[] =>
  rows.length === 0 ? [] : [`${rows.length} ${what}: ${rows.map(({ name }) => inSentence(name)).join('; ')}`]
