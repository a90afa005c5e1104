import { parse } from '../../base/parse.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { networkSchema, type Network } from './schema.ts'

/** Reads a network from outside: the network, or every problem it has, each with the element it is about. */
export const networkProblem = (input: unknown): Result<Network> => {
  const parsed = parse(networkSchema, input, 'network')
  if (parsed.kind === 'refused') return parsed
  const problems = networkProblems(parsed.value)
  return problems.length > 0 ? refused(...problems) : ok(parsed.value)
}

/** What the schema cannot say: ids used twice, elements with both ends on one node. */
export const networkProblems = ({ elements }: Network): readonly Problem[] => {
  const seen = new Set<string>()
  return elements.flatMap(({ id, from, to }, at) => {
    const found: Problem[] = []
    if (seen.has(id)) {
      found.push(
        problem('duplicate-id', place(at), `Two elements are called “${id}”`, 'Give each element an id of its own'),
      )
    }
    seen.add(id)
    if (from === to) {
      const what = `Both ends of “${id}” are on node “${from}”`
      found.push(problem('both-ends-on-one-node', place(at), what, 'Put it between two nodes, or leave it out'))
    }
    return found
  })
}

const place = (at: number): string => `elements[${at}]`
