import { minus, plus, zero, type Complex } from './complex.ts'
import type { Layout } from './layout.ts'

/**
 * Fills in the currents of the ideal links. The links that join groups of nodes form trees; from the ends of each tree
 * inwards, a link carries what the other elements at its outer end bring. Links that close a loop keep no current.
 */
export const linkCurrents = ({ nodes, from, to, joins }: Layout, current: Complex[]): void => {
  const linksAt: number[][] = nodes.map(() => [])
  const leaving: Complex[] = nodes.map(() => zero)
  current.forEach((value, k) => {
    leaving[from[k]] = plus(leaving[from[k]], value)
    leaving[to[k]] = minus(leaving[to[k]], value)
    if (joins[k]) for (const node of [from[k], to[k]]) linksAt[node].push(k)
  })
  const ends = nodes.flatMap((_, node) => (linksAt[node].length === 1 ? [node] : []))
  for (let outer = ends.pop(); outer !== undefined; outer = ends.pop()) {
    const link = linksAt[outer].pop()
    if (link === undefined) continue
    const outwards = to[link] === outer
    const inner = outwards ? from[link] : to[link]
    current[link] = outwards ? leaving[outer] : minus(zero, leaving[outer])
    leaving[inner] = plus(leaving[inner], leaving[outer])
    leaving[outer] = zero
    linksAt[inner] = linksAt[inner].filter((other) => other !== link)
    if (linksAt[inner].length === 1) ends.push(inner)
  }
}
