import { problem, type Problem } from '../../base/problem.ts'
import type { AirflowRequest } from './request-schema.ts'

type Task = Exclude<AirflowRequest['do'], { kind: 'solve' | 'explain' }>

/** Problems of the plain tasks: names of plates and instruments that point at nothing, and quantities that cannot go together. */
export const namesProblems = (task: Task): readonly Problem[] => {
  switch (task.kind) {
    case 'density':
    case 'plate':
    case 'american-air-power':
      return []
    case 'meter-run':
      return meterRunProblems(task)
    case 'air-power':
      return unknownNames('do.readings', 'plate', namesOf(task.readings, 'plate'), task.plates)
    case 'before-after':
      return (['before', 'after'] as const).flatMap((when) => [
        ...task[when].readings.flatMap(({ suctionPa }, i) =>
          suctionPa > 0 ? [] : [noSuction(`do.${when}.readings[${i}]`)],
        ),
        ...unknownNames(`do.${when}.readings`, 'plate', namesOf(task[when].readings, 'plate'), task.plates),
        ...unknownNames(
          `do.${when}.readings`,
          'instrument',
          namesOf(task[when].readings, 'instrument'),
          task.instruments,
        ),
      ])
  }
}

const namesOf = <K extends string>(readings: readonly Readonly<Record<K, string | null>>[], key: K) =>
  readings.map((reading) => reading[key])

const unknownNames = (
  where: string,
  kind: string,
  names: readonly (string | null)[],
  known: readonly { readonly id: string }[],
): readonly Problem[] =>
  names.flatMap((name, i) => {
    if (name === null || known.some(({ id }) => id === name)) return []
    const what = `There is no ${kind} called “${name}”`
    const mend = known.length === 0 ? `List the ${kind} first` : `Use one of ${known.map(({ id }) => id).join(', ')}`
    return [problem(`unknown-${kind}`, `${where}[${i}]`, what, mend)]
  })

const noSuction = (where: string): Problem =>
  problem('no-suction', where, 'Where nothing sucks there is no ratio', 'Leave the reading out')

const meterRunProblems = (task: Extract<Task, { kind: 'meter-run' }>): readonly Problem[] => {
  const { pipeM, holeM, upstreamPa, differentialPa } = task
  const found: Problem[] = []
  if (holeM >= pipeM) {
    found.push(problem('hole-too-wide', 'do.holeM', 'The hole is as wide as the pipe or wider', 'Give a smaller hole'))
  }
  if (differentialPa >= upstreamPa) {
    const what = 'The pressure across the plate is more than there is before it'
    found.push(
      problem('differential-too-large', 'do.differentialPa', what, 'Give the pressure before it against vacuum'),
    )
  }
  return found
}
