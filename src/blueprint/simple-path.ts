/** Two points that something joins. */
export type Edge = readonly [string, string]

/**
 * Whether the edge lies on some path from `start` to `end` that passes no point twice, going over `others` besides.
 * That is so when two paths without a common point lead from the edge's ends to `start` and `end`
 * (Menger's theorem): a flow of 2 with room for one at each point, found by augmenting paths (Ford and Fulkerson).
 */
export const onSimplePath = (edge: Edge, others: readonly Edge[], start: string, end: string): boolean => {
  if (edge[0] === edge[1] || start === end) return false
  const room = capacities(edge, others, start, end)
  return augment(room) && augment(room)
}

type Room = Map<string, Map<string, number>>

const source = 'source'
const sink = 'sink'
const into = (point: string): string => `in ${point}`
const outOf = (point: string): string => `out ${point}`

const capacities = (edge: Edge, others: readonly Edge[], start: string, end: string): Room => {
  const room: Room = new Map()
  const allow = (from: string, to: string): void => {
    rowOf(room, from).set(to, 1)
    if (!rowOf(room, to).has(from)) rowOf(room, to).set(from, 0)
  }
  for (const point of new Set([...edge, ...others.flat(), start, end])) allow(into(point), outOf(point))
  for (const [a, b] of others) {
    allow(outOf(a), into(b))
    allow(outOf(b), into(a))
  }
  for (const point of edge) allow(source, into(point))
  for (const point of [start, end]) allow(outOf(point), sink)
  return room
}

const rowOf = (room: Room, node: string): Map<string, number> => {
  const known = room.get(node)
  if (known !== undefined) return known
  const row = new Map<string, number>()
  room.set(node, row)
  return row
}

/** Sends one more unit from source to sink where there is room; false when there is none. */
const augment = (room: Room): boolean => {
  const cameFrom = new Map<string, string>()
  const queue = [source]
  for (const node of queue) {
    for (const [next, left] of rowOf(room, node)) {
      if (left === 0 || next === source || cameFrom.has(next)) continue
      cameFrom.set(next, node)
      queue.push(next)
    }
  }
  if (!cameFrom.has(sink)) return false
  for (let node = sink; node !== source;) {
    const before = cameFrom.get(node) ?? source
    rowOf(room, before).set(node, (rowOf(room, before).get(node) ?? 0) - 1)
    rowOf(room, node).set(before, (rowOf(room, node).get(before) ?? 0) + 1)
    node = before
  }
  return true
}
