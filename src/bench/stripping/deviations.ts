import { inSentence } from '../../base/in-sentence.ts'
import type { EditOf } from '../../blueprint/adapt-edits.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { byKind } from './fixing-ledger.ts'
import { fixingsWords } from './fixing-words.ts'
import type { Moved } from './pieces.ts'

/** A cover that was held in another way than the blueprint says, and the edit that says so. */
export type Deviation = {
  readonly cover: string
  /** The note that counted. */
  readonly note: string
  /** `Back cover: two screws here, not one`, without the full stop. */
  readonly text: string
  readonly edit: EditOf<'cover-fixings'>
}

/** A blueprint's edit takes no higher count of one kind. */
const mostOfAKind = 99

/**
 * Covers whose fixings were counted otherwise than the blueprint says. The first count holds: how a cover is held when it comes off
 * again says what was put back, not how it was made.
 */
export const deviationsOf = (moves: readonly Moved[], blueprint: Blueprint): readonly Deviation[] =>
  blueprint.covers.flatMap((cover) => {
    const counted = moves.find(
      ({ piece, way, fixings }) =>
        piece.kind === 'cover' && piece.id === cover.id && way === 'away' && fixings !== null,
    )
    const found = byKind(counted?.fixings ?? [])
    const expected = byKind(cover.fixings)
    if (counted === undefined || isSame(found, expected)) return []
    const fixings = found.map(({ count, kind }) => ({ count: Math.min(mostOfAKind, count), kind }))
    const words = (all: typeof found): string => (all.length === 0 ? 'no fixings' : fixingsWords(all))
    return {
      cover: cover.id,
      note: counted.note,
      text: `${cover.name}: ${words(found)} here, where the blueprint says ${words(expected)}`,
      edit: { kind: 'cover-fixings', cover: cover.id, fixings },
    }
  })

type Counts = ReturnType<typeof byKind>

const isSame = (a: Counts, b: Counts): boolean =>
  a.length === b.length &&
  a.every(({ kind, count }) => b.some((other) => inSentence(other.kind) === inSentence(kind) && other.count === count))
