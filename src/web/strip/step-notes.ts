import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { quantityFromText } from '../../base/units.ts'
import type { NoteContentInput } from '../../bench/note.ts'
import type { Piece } from '../../bench/stripping/pieces.ts'
import { staysInPlace } from '../../facts/fixing-kinds.ts'
import type { Fixing } from '../../bench/stripping/strip-note.ts'

export type StepWay = 'away' | 'back'
export type StepSaid = {
  /** Null where nobody counted. */
  readonly fixings: readonly Fixing[] | null
  /** Left over before, and in now; only of a piece that goes back. */
  readonly leftOverIn?: readonly Fixing[]
  readonly minutes: number
  readonly text: string
}

/** The note of a piece that comes away or goes back. */
export const stepNote = (
  piece: Piece,
  way: StepWay,
  { fixings, leftOverIn = [], minutes, text }: StepSaid,
): NoteContentInput => {
  const said = { minutes, ...(fixings === null ? {} : { fixings: [...fixings] }), ...(text === '' ? {} : { text }) }
  if (way === 'away')
    return piece.kind === 'cover'
      ? { kind: 'opened', cover: piece.id, ...said }
      : { kind: 'taken-out', part: piece.id, ...said }
  const back = { ...said, ...(leftOverIn.length === 0 ? {} : { leftOverIn: [...leftOverIn] }) }
  return piece.kind === 'cover'
    ? { kind: 'closed', cover: piece.id, ...back }
    : { kind: 'put-in', part: piece.id, ...back }
}

/** What is being said about a step, as typed. */
export type StepDraft = { readonly fixings: readonly Fixing[]; readonly minutes: string; readonly text: string }

/** The step that a draft says, or what is wrong with it. A fixing with none of it is left out. */
export const saidOf = ({ fixings, minutes, text }: StepDraft): Result<StepSaid> => {
  const took = quantityFromText(minutes, 'durationMin', 'minutes')
  const counted = fixings.filter(({ count }) => count > 0)
  const unnamed: readonly Problem[] = counted.flatMap(({ kind }, at) =>
    kind.trim() === ''
      ? [problem('empty', `fixings[${at}].kind`, 'It does not say of what kind', 'Write such as TX15 or felt washer')]
      : [],
  )
  const wrong = [...unnamed, ...(took.kind === 'refused' ? took.problems : [])]
  const [first, ...more] = wrong
  if (first !== undefined) return refused(first, ...more)
  return ok({
    fixings: counted.map(({ count, kind, place }) => ({ count, kind: kind.trim(), place: place.trim() })),
    minutes: took.kind === 'ok' ? took.value : 0,
    text: text.trim(),
  })
}

/** The place for the next step: where it ends in a number, the next one. `pot 9` gives `pot 10`; `lid` stays. */
export const nextPlace = (place: string): string =>
  place.replace(/(\d+)(\D*)$/, (_all, number: string, rest: string) => `${Number(number) + 1}${rest}`)

/** Where a fixing goes: in the pot, but for one that stays in what it closes. */
export const placeFor = (kind: string, place: string): string => (staysInPlace(kind) ? '' : place)

/** `5 × TX15 plastic 4 × 20, 1 × felt washer`. */
export const fixingList = (fixings: readonly Pick<Fixing, 'count' | 'kind'>[]): string =>
  fixings.map(({ count, kind }) => `${count} × ${kind}`).join(', ')
