import { inSentence } from '../../base/in-sentence.ts'
import { colourWords } from '../../facts/colour-words.ts'
import { capital } from '../../machine/air/air-text.ts'
import type { Evidence } from './evidence.ts'
import { standingOf } from './standing-of.ts'

/**
 * The title of the advert: the model where it is written down, else the kind of machine with its colour; then how it is offered.
 * The name that it has on the bench is one's own and stays there, but for a colour before its first comma.
 */
export const titleWords = (evidence: Evidence): string => {
  const { repaired, clean, proof, run } = evidence
  const worked = [repaired.length === 0 ? '' : 'repaired', clean.isWhole ? 'cleaned' : '']
  const how = {
    working: ['working', ...worked, proof.verdict.kind === 'fit' ? 'safety checks passed' : ''],
    spares: ['for spares or repair'],
    'not-shown': [...worked, run.kind === 'good' ? 'runs, with faults' : 'not shown to work'],
  }[standingOf(evidence)].filter((one) => one !== '')
  return `${headOf(evidence)}: ${how.join(', ')}`
}

const headOf = ({ state, blueprint }: Evidence): string => {
  const kind = kindName(blueprint.name)
  if (state.model !== '') return `${state.model}, ${inSentence(kind)}`
  const colour = colourWords.exec(state.name.split(',')[0] ?? '')?.[0]
  return colour === undefined ? kind : `${capital(colour.toLowerCase())} ${inSentence(kind)}`
}

/** The kind as a buyer knows it: what follows the comma tells the bench how it is built. */
export const kindName = (name: string): string => name.split(',')[0] ?? name
