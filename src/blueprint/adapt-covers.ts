import { editsOf, type Edit } from './adapt-edits.ts'
import type { Blueprint, Check } from './schema.ts'

type CoverId = string | undefined

/**
 * Parts moved behind other covers, then covers that are not there taken out. A part takes along the probe points at the ends
 * of its elements that were behind the same cover; its repairs and the looks at it open the new cover instead of the old one.
 */
export const withCovers = (blueprint: Blueprint, edits: readonly Edit[]): Blueprint =>
  withoutCovers(withMoves(blueprint, edits), new Set(editsOf(edits, 'cover-absent').map(({ cover }) => cover)))

/** Where each moved part went from and to, in the order of the blueprint's parts, so that the order of the edits is nothing. */
const movesOf = (blueprint: Blueprint, edits: readonly Edit[]) =>
  blueprint.parts.flatMap((part) => {
    const move = editsOf(edits, 'part-moved').findLast((edit) => edit.part === part.id)
    const to = move?.behind ?? undefined
    return move === undefined || to === part.behind ? [] : [{ part: part.id, from: part.behind, to }]
  })

type Moves = ReturnType<typeof movesOf>

const withMoves = (blueprint: Blueprint, edits: readonly Edit[]): Blueprint => {
  const moves = movesOf(blueprint, edits)
  if (moves.length === 0) return blueprint
  const moveOf = (part: string) => moves.find((move) => move.part === part)
  return {
    ...blueprint,
    parts: blueprint.parts.map((part) => {
      const move = moveOf(part.id)
      return move === undefined ? part : behind(part, move.to)
    }),
    points: blueprint.points.map((point) => {
      const ends = (move: Moves[number]): boolean =>
        blueprint.circuit.some(({ part, from, to }) => part === move.part && (from === point.id || to === point.id))
      const move = moves.find((one) => one.from === point.behind && ends(one))
      return move === undefined ? point : behind(point, move.to)
    }),
    checks: blueprint.checks.map((check) => movedCheck(blueprint, moves, check)),
    repairs: blueprint.repairs.map((repair) => {
      const move = moveOf(repair.part)
      return move === undefined ? repair : { ...repair, coversOff: exchanged(repair.coversOff, move.from, move.to) }
    }),
  }
}

const behind = <T extends { behind?: string | undefined }>({ behind: _old, ...thing }: T, cover: CoverId): T =>
  (cover === undefined ? thing : { ...thing, behind: cover }) as T

/** A look at moved parts alone goes to their new cover; one that sees others too opens both. */
const movedCheck = (blueprint: Blueprint, moves: Moves, check: Check): Check => {
  if (check.kind !== 'look' || check.coversOn || check.coversOff.length === 0) return check
  const parts = new Set(blueprint.faults.filter(({ id }) => id in check.under).map(({ part }) => part))
  return moves
    .filter((move) => parts.has(move.part) && move.from !== undefined && check.coversOff.includes(move.from))
    .reduce<typeof check>((look, { part, from, to }) => {
      const stays = [...parts].some(
        (other) =>
          other !== part &&
          blueprint.parts.some((one) => one.id === other && one.behind === from) &&
          !moves.some((move) => move.part === other),
      )
      const coversOff = stays ? [...new Set([...look.coversOff, ...ids(to)])] : exchanged(look.coversOff, from, to)
      return { ...look, coversOff }
    }, check)
}

const ids = (cover: CoverId): readonly string[] => (cover === undefined ? [] : [cover])

const exchanged = (covers: readonly string[], from: CoverId, to: CoverId): string[] => [
  ...new Set(from === undefined ? [...covers, ...ids(to)] : covers.flatMap((id) => (id === from ? ids(to) : [id]))),
]

const withoutCovers = (blueprint: Blueprint, gone: ReadonlySet<string>): Blueprint => {
  if (gone.size === 0) return blueprint
  const instead = insteadOf(blueprint, gone)
  const all = (covers: readonly string[]): string[] => [...new Set(covers.flatMap(instead))]
  const first = <T extends { behind?: string | undefined }>(thing: T): T =>
    thing.behind === undefined || !gone.has(thing.behind) ? thing : behind(thing, instead(thing.behind)[0])
  return {
    ...blueprint,
    covers: blueprint.covers
      .filter(({ id }) => !gone.has(id))
      .map((cover) => ({ ...cover, after: all(cover.after).filter((id) => id !== cover.id) })),
    parts: blueprint.parts.map(first),
    points: blueprint.points.map(first),
    checks: blueprint.checks.map((check) => ({
      ...check,
      coversOff: all([...check.coversOff, ...furtherCovers(blueprint, gone, instead, check)]),
    })),
    repairs: blueprint.repairs.map((repair) => ({ ...repair, coversOff: all(repair.coversOff) })),
  }
}

/** The covers that must be off in place of one that is not there: those that came off before it. A ring ends in none. */
const insteadOf =
  (blueprint: Blueprint, gone: ReadonlySet<string>) =>
  (cover: string): readonly string[] => {
    const seen = new Set<string>()
    const walk = (id: string): readonly string[] => {
      if (!gone.has(id)) return [id]
      if (seen.has(id)) return []
      seen.add(id)
      return blueprint.covers.find((one) => one.id === id)?.after.flatMap(walk) ?? []
    }
    return [...new Set(walk(cover))]
  }

/** A point is behind one cover only; where its old cover came off after several, the check asks for the rest itself. */
const furtherCovers = (
  blueprint: Blueprint,
  gone: ReadonlySet<string>,
  instead: (cover: string) => readonly string[],
  check: Check,
): readonly string[] => {
  if (check.kind !== 'meter') return []
  return blueprint.points
    .filter(({ id }) => id === check.red || id === check.black)
    .flatMap((point) => (point.behind !== undefined && gone.has(point.behind) ? instead(point.behind).slice(1) : []))
}
