import { inSentence } from '../../base/in-sentence.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { colourWords } from '../../facts/colour-words.ts'
import { beforeBuildWords, buildWords } from '../../facts/kind-words.ts'
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
  const kind = kindName(blueprint)
  if (state.model !== '') return `${state.model}, ${inSentence(kind)}`
  const colour = colourWords.exec(state.name.split(',')[0] ?? '')?.[0]
  return colour === undefined ? kind : `${capital(colour.toLowerCase())} ${inSentence(kind)}`
}

/**
 * The kind as a buyer knows it: what follows the comma tells the bench how it is built. The name of a blueprint of one's own is one's
 * own too; of that only the trade's words for kinds go out, or where it has none those of the kind that it is priced as.
 */
export const kindName = (blueprint: Pick<Blueprint, 'id' | 'name' | 'worth'>): string => {
  if (!isOwn(blueprint)) return blueprint.name.split(',')[0] ?? blueprint.name
  const priced = (blueprint.worth.priceKind ?? '').replaceAll('-', ' ')
  return tradeWords(blueprint.name) ?? tradeWords(priced) ?? 'Vacuum cleaner'
}

const isOwn = ({ id }: Pick<Blueprint, 'id'>): boolean => id.startsWith('own-')

/** `Bagless upright` out of whatever words it stands among; null where no build is named. */
const tradeWords = (name: string): string | null => {
  const build = buildWords.exec(name)?.[0]
  if (build === undefined) return null
  const before = beforeBuildWords.exec(name)?.[0] ?? ''
  return capital(`${before} ${build}`.trim().toLowerCase())
}
