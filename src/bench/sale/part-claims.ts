import type { Blueprint } from '../../blueprint/schema.ts'
import { takenBack } from '../../facts/sale-claims.ts'
import { partSayings, salePartWords, type PartSaying } from '../../facts/sale-part-words.ts'
import { endsIn } from '../../machine/functions/belongs.ts'

/** A part that is spoken of: the word that heads it (`bearings` in `motor bearings`), what stands before it, and its parts. */
export type SpokenPart = {
  readonly word: string
  /** The part words before it that say which. */
  readonly of: readonly string[]
  /** Ids of the blueprint's parts that it can be. */
  readonly parts: readonly string[]
  readonly isMany: boolean
  readonly from: number
  readonly to: number
}

type Stretch = { readonly from: number; readonly to: number }

/** What is said of a part, and where. */
export type PartClaim = {
  readonly part: SpokenPart
  readonly saying: PartSaying
  /** Where it is said, without the part. */
  readonly at: Stretch
  /** From the first to the last of the words of both. */
  readonly from: number
  readonly to: number
}

type Entry = { readonly word: string; readonly pattern: RegExp; readonly parts: readonly string[] }
const kept = new WeakMap<Blueprint, readonly Entry[]>()

/** The names of a blueprint's parts and the words of sellers, longer ones first. */
const entriesOf = (blueprint: Blueprint): readonly Entry[] => {
  const known = kept.get(blueprint)
  if (known !== undefined) return known
  const meant = (ends: readonly string[]): readonly string[] =>
    blueprint.parts.map(({ id }) => id).filter((id) => ends.some((end) => endsIn(id, end)))
  const general = salePartWords.map(({ id, words, parts }) => ({ word: id, words, parts: meant(parts) }))
  const named = blueprint.parts.flatMap(({ id, name }) => {
    const word = salePartWords.find(({ parts }) => parts.some((end) => endsIn(id, end)))?.id ?? id
    return [id.replaceAll('-', ' '), name]
      .flatMap((each) =>
        each
          .toLowerCase()
          .split(/ and | at | in | of | with | to /)
          .slice(0, 1),
      )
      .filter((each) => !general.some(({ words }) => new RegExp(`^(?:${words})$`, 'i').test(each)))
      .map((each) => ({ word, words: `${escaped(each)}s?`, parts: [id] }))
  })
  const made = [...named, ...general].map(({ word, words, parts }) => ({
    word,
    pattern: new RegExp(`\\b(?:${words})\\b`, 'gi'),
    parts,
  }))
  kept.set(blueprint, made)
  return made
}

const escaped = (words: string): string => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '[ -]')

/** The parts that a text speaks of. Of words side by side the last heads them; of `belt of the brush roll` the first. */
export const partsIn = (text: string, blueprint: Blueprint): readonly SpokenPart[] => {
  const found = entriesOf(blueprint)
    .flatMap(({ word, pattern, parts }) =>
      [...text.matchAll(pattern)].map(({ index, 0: words }) => ({
        word,
        parts,
        of: [] as readonly string[],
        isMany: /[^s]s$/i.test(words),
        from: index,
        to: index + words.length,
      })),
    )
    .toSorted((a, b) => a.from - b.from || b.to - a.to || b.parts.length - a.parts.length)
  const heads: SpokenPart[] = []
  for (const one of found) {
    const last = heads.at(-1)
    if (last === undefined || one.from >= last.to) {
      const between = last === undefined ? null : text.slice(last.to, one.from)
      if (last !== undefined && between !== null && /^[ -]$/.test(between))
        heads[heads.length - 1] = { ...one, of: [...last.of, last.word], from: last.from }
      else if (between === null || !/^ (?:of|for|on|in|at|from|off) (?:the |its )?$/i.test(between)) heads.push(one)
    }
  }
  return heads
}

type Said = Stretch & { readonly saying: PartSaying }

/**
 * What a text says of parts: each part with each saying of its clause, in either order. `taken`: stretches whose words claim
 * something else already. What is taken back before the saying is none.
 */
export const partClaimsIn = (
  text: string,
  blueprint: Blueprint,
  taken: readonly Stretch[] = [],
): readonly PartClaim[] => {
  const parts = partsIn(text, blueprint)
  const said = sayingsIn(text, taken)
  return clausesOf(text, parts, said).flatMap((clause) =>
    clause.parts.flatMap((part) =>
      [...new Set(clause.said.map(({ saying }) => saying))].flatMap((saying) => {
        const nearest = clause.said
          .filter((one) => one.saying === saying)
          .toSorted((a, b) => gap(a, part) - gap(b, part))[0]
        if (nearest === undefined || takenBack.test(text.slice(0, nearest.from))) return []
        if (nearest.from > part.from && takenBack.test(text.slice(0, part.from))) return []
        return [
          { part, saying, at: nearest, from: Math.min(part.from, nearest.from), to: Math.max(part.to, nearest.to) },
        ]
      }),
    ),
  )
}

const overlaps = (a: Stretch, b: Stretch): boolean => a.from < b.to && b.from < a.to
const gap = (a: Stretch, b: Stretch): number => Math.max(a.from - b.to, b.from - a.to)

const sayingsIn = (text: string, taken: readonly Stretch[]): readonly Said[] => {
  const said: Said[] = []
  for (const [saying, pattern] of partSayings)
    for (const { index, 0: words } of text.matchAll(pattern)) {
      const one = { saying, from: index, to: index + words.length }
      if (![...said, ...taken].some((other) => overlaps(one, other))) said.push(one)
    }
  return said.toSorted((a, b) => a.from - b.from)
}

type Clause = { readonly parts: readonly SpokenPart[]; readonly said: readonly Said[] }
/**
 * What stands between two commas or “and”s. `isBare`: nothing but one part or one saying, as the first of `washed and dried filter`
 * and the last of `belt, new`; whether a thing works is said of the whole machine then. `afterComma`: a looser tie than “and”.
 */
type Piece = Clause & { readonly isBare: boolean; readonly afterComma: boolean }

const breaks = /[.;:!?()\n–—]|\b(?:but|with|then|which|although|though)\b/gi
const ties = /,(?: and\b)?|\band\b|&|\+/gi

/** Clauses between stops. “And” and commas part them where both sides say something of a part of their own; else they share it. */
const clausesOf = (text: string, parts: readonly SpokenPart[], said: readonly Said[]): readonly Clause[] =>
  stretches(text, { from: 0, to: text.length }, breaks).flatMap((stretch) =>
    joined(
      stretches(text, stretch, ties).map((one) => {
        const own = {
          parts: parts.filter((each) => overlaps(each, one)),
          said: said.filter((each) => overlaps(each, one)),
        }
        return { ...own, isBare: isBare(text, one, own), afterComma: text[one.from - 1] === ',' }
      }),
    ),
  )

const isBare = (text: string, stretch: Stretch, { parts, said }: Clause): boolean => {
  const [only, ...more] = [...parts, ...said.filter(({ saying }) => saying !== 'works')]
  if (only === undefined || more.length > 0) return false
  const rest = text.slice(stretch.from, only.from) + text.slice(only.to, stretch.to)
  return /^ *(?:(?:the|a|its|all|both) )? *$/i.test(rest)
}

/** What has no saying or no part of its own yet. `isList`: parts alone, as in `belt, filter and bag replaced`. */
type Waiting = Clause & { readonly isList: boolean }
const none: Waiting = { parts: [], said: [], isList: false }

const joined = (pieces: readonly Piece[]): readonly Clause[] => {
  const clauses: Clause[] = []
  let waiting: Waiting = none
  for (const piece of pieces) {
    const isTied = !piece.afterComma || waiting.isList
    const whole = isTied ? both(waiting, piece) : piece
    const last = clauses.at(-1)
    const wasList = waiting.isList || waiting.parts.length === 0
    waiting = none
    if (whole.parts.length > 0 && whole.said.length > 0 && (piece.parts.length > 0 || piece.isBare)) clauses.push(whole)
    else if (last !== undefined && sharesWith(last, piece)) clauses[clauses.length - 1] = both(last, whole)
    else if (piece.isBare || (whole.parts.length > 0 && piece.said.length === 0))
      waiting = { ...whole, isList: wasList && piece.isBare && piece.parts.length > 0 }
  }
  return clauses
}

/** `belt changed and cleaned`, `new bag and filters`. */
const sharesWith = (last: Clause, { parts, said, isBare: alone, afterComma }: Piece): boolean =>
  parts.length === 0 ? said.length > 0 && alone : said.length === 0 && leads(last) && (alone || !afterComma)

const both = (a: Clause, b: Clause): Clause => ({ parts: [...a.parts, ...b.parts], said: [...a.said, ...b.said] })

/** `new bag and filters`: what stands before the first holds for the next too. */
const leads = ({ parts, said }: Clause): boolean => (said[0]?.from ?? Infinity) < (parts[0]?.from ?? 0)

const stretches = (text: string, { from, to }: Stretch, at: RegExp): readonly Stretch[] => {
  const cuts = [...text.slice(from, to).matchAll(at)].map(({ index, 0: words }) => ({
    from: from + index,
    to: from + index + words.length,
  }))
  return [{ from, to: from }, ...cuts].map((cut, i) => ({ from: cut.to, to: cuts[i]?.from ?? to }))
}
