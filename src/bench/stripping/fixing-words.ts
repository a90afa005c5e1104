import { headNoun } from '../../facts/fixing-kinds.ts'
import { capital } from '../../machine/air/air-text.ts'
import { byKind } from './fixing-ledger.ts'
import type { Fixing } from './strip-note.ts'

type Counted = Pick<Fixing, 'count' | 'kind'>

const figures = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]

/** A drive, perhaps what it goes into, perhaps a size: `TX15`, `PH2 plastic 4 × 25`. Such a kind is a screw. */
const bareDrive = /^((?:TX|T|PH|PZ|SL)\s?\d+(?: plastic)?)((?: [\d.]+ ?[×x] ?[\d.]+)?)$/i

/** `TX15 plastic 4 × 20` as one says it, `TX15 plastic screw 4 × 20`; `screw 4×16` is a `4 × 16 screw`. Others stay as written. */
const said = (kind: string): string => {
  const bare = bareDrive.exec(kind)
  if (bare !== null) return `${bare[1]} screw${bare[2]}`
  const sized = /^screw ([\d.]+) ?[×x] ?([\d.]+)$/i.exec(kind)
  return sized === null ? kind : `${sized[1]} × ${sized[2]} screw`
}

/** The last noun of a name takes the plural: `machine screws M4 × 16`. One without a known noun stays as it is. */
const plural = (name: string): string => {
  const head = headNoun(name)
  if (head === null || head.isMany) return name
  const { noun, plural: many } = head.kind
  return `${name.slice(0, head.to)}${many.slice(noun.length)}${name.slice(head.to)}`
}

/** So many of a kind, small numbers in words: `three motor end screws`, `13 felt washers`, `one 4 × 16 screw`. */
export const fixingWords = ({ count, kind }: Counted): string =>
  `${figures[count] ?? count} ${count === 1 ? said(kind) : plural(said(kind))}`

/** Begins with the sound of a vowel: a letter that is spelt out goes by its name, as in `an M4 nut`. */
const soundsOpen = (name: string): boolean =>
  /^(?:[aeio]|u(?!n[ai])|8|11\b|18\b)/i.test(name) || /^[FHLMNRSX]\d/.test(name)

const withArticle = (name: string): string => `${soundsOpen(name) ? 'an' : 'a'} ${name}`

/** Several kinds in one list: `one 4 × 16 screw and a felt washer`, `two M4 nuts, a clip and three motor end screws`. */
export const fixingsWords = (fixings: readonly Counted[]): string => {
  const all = byKind(fixings).map((fixing, at) =>
    fixing.count === 1 && at > 0 ? withArticle(said(fixing.kind)) : fixingWords(fixing),
  )
  return all.length <= 1 ? (all[0] ?? 'nothing') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`
}

/** `One 4 × 16 screw and a felt washer are left over`, without the full stop; empty where nothing is. */
export const leftOverText = (fixings: readonly Counted[]): string => {
  if (fixings.length === 0) return ''
  return `${capital(fixingsWords(fixings))} ${isOrAre(fixings)} left over`
}

/** `Two quarter-turn catches of the sole plate are not closed`, without the full stop. */
export const notClosedText = (fixings: readonly Counted[], of: string): string =>
  `${capital(fixingsWords(fixings))} of the ${of} ${isOrAre(fixings)} not closed`

/** The verb for so many fixings. */
const isOrAre = (fixings: readonly Counted[]): 'is' | 'are' =>
  fixings.reduce((sum, { count }) => sum + count, 0) === 1 ? 'is' : 'are'
