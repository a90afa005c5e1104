import { problem, type Problem } from '../base/problem.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { meterTable } from './meter-table.ts'
import { passesGate } from './running.ts'

/**
 * Meter checks before running that a sound machine could never pass, so that it could never be run: what they would read
 * follows from the circuit. Happens when a contact that used to part the supply is bridged.
 */
export const gateProblems = (blueprint: Blueprint): readonly Problem[] => {
  const { checks, resistanceOhm } = meterTable(blueprint, blueprint.plate, [[]])
  return checks.flatMap((check, row) => {
    const ohm = resistanceOhm[row]
    const reading = Number.isFinite(ohm) ? ({ kind: 'ohms', resistanceOhm: ohm } as const) : ({ kind: 'open' } as const)
    if (!check.beforeRunning || passesGate(check, reading) !== false) return []
    const reads = reading.kind === 'open' ? 'open' : `${Number(ohm.toPrecision(3))} Ω`
    const what = `A sound machine reads ${reads} at “${check.name}”, and would not pass it`
    const mend = 'Change its limit or its probe points, or say what is across them'
    return [problem('gate-not-passed-when-sound', `checks.${check.id}`, what, mend)]
  })
}
