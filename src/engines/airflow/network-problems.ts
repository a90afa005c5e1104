import { problem, type Problem } from '../../base/problem.ts'
import type { AirBranch, AirNetwork } from './schema.ts'

/** What the schema cannot say of a network: ids used twice, ends on one node, a loss of nothing, a fan curve that does not fall. */
export const airNetworkProblems = ({ branches }: AirNetwork): readonly Problem[] => [
  ...twice(
    branches.map(({ id }) => id),
    'branches',
  ),
  ...branches.flatMap((branch, i) => branchProblems(branch, `branches[${i}] (${branch.id})`)),
]

const branchProblems = (branch: AirBranch, where: string): readonly Problem[] => {
  const found: Problem[] = []
  if (branch.from === branch.to) {
    const what = `Both ends of “${branch.id}” are on node “${branch.from}”`
    found.push(problem('both-ends-on-one-node', where, what, 'Put it between two nodes, or leave it out'))
  }
  if (branch.kind === 'loss' && branch.linearPaSPerM3 === 0 && branch.quadraticPaS2PerM6 === 0) {
    const what = `“${branch.id}” loses no pressure at all`
    found.push(problem('no-loss', where, what, 'Give it a linear or a quadratic loss, or make its two nodes one'))
  }
  if (branch.kind === 'fan' && branch.curve.kind === 'points' && !falls(branch.curve.points)) {
    const what = `The curve of “${branch.id}” does not fall: more suction goes with more air, or a point is there twice`
    found.push(problem('fan-curve-rises', where, what, 'Order the points so that suction falls as airflow grows'))
  }
  return found
}

const falls = (points: readonly { readonly airflowM3PerS: number; readonly suctionPa: number }[]): boolean => {
  const sorted = [...points].sort((a, b) => a.suctionPa - b.suctionPa)
  return sorted.every(
    ({ airflowM3PerS, suctionPa }, i) =>
      i === 0 || (suctionPa > sorted[i - 1].suctionPa && airflowM3PerS < sorted[i - 1].airflowM3PerS),
  )
}

/** Ids that stand twice in a list. */
export const twice = (ids: readonly string[], list: string): readonly Problem[] =>
  ids.flatMap((id, i) =>
    ids.indexOf(id) === i
      ? []
      : [problem('duplicate-id', `${list}[${i}]`, `Two entries are called “${id}”`, 'Give each an id of its own')],
  )
