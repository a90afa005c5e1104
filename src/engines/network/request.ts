import { z } from 'zod'
import { parse } from '../../base/parse.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { handheldOhmmeter, readOhmmeter, type OhmmeterReading } from './ohmmeter.ts'
import { networkProblems } from './problems.ts'
import { networkSchema } from './schema.ts'
import { solveAc, solveDc, type NetworkSolution } from './solve.ts'

const node = z.string().min(1)
const meter = z.strictObject({ testCurrentA: z.number().positive(), complianceV: z.number().positive() })

/** A network and what to find out about it. Without a meter, a hand-held one with a top range of 40 MΩ is meant. */
export const networkRequestSchema = z.strictObject({
  network: networkSchema,
  do: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('dc') }),
    z.strictObject({ kind: z.literal('ac'), frequencyHz: z.number().positive() }),
    z.strictObject({ kind: z.literal('ohms'), from: node, to: node, meter: meter.default(handheldOhmmeter) }),
  ]),
})

export type NetworkRequest = z.infer<typeof networkRequestSchema>
export type NetworkAnswer = NetworkSolution | OhmmeterReading

/** Answers a request from outside. The answer is plain JSON; a request that is not of the form is refused with its problems. */
export const runNetwork = (input: unknown): Result<NetworkAnswer> => {
  const request = parse(networkRequestSchema, input, 'network request')
  if (request.kind === 'refused') return request
  const problems = networkProblems(request.value.network)
  return problems.length > 0 ? refused(...problems) : ok(answer(request.value))
}

const answer = ({ network, do: task }: NetworkRequest): NetworkAnswer => {
  switch (task.kind) {
    case 'dc':
      return solveDc(network)
    case 'ac':
      return solveAc(network, task.frequencyHz)
    case 'ohms':
      return readOhmmeter(network, task.meter, task.from, task.to)
  }
}
