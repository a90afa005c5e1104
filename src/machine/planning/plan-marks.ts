import type { Check } from '../../blueprint/schema.ts'
import type { Job } from '../job.ts'
import { gatesOf, gateStates, isFirstRun, redFlags, runsMachine, shownWorking } from '../running.ts'

/** Held when the machine has been seen to work as a whole. */
export const workingMark = 'shown-working'
/** Held while a check that running waits for stands passed. */
export const gateMark = (check: string): string => `passed ${check}`

/** Whether running, or all further running, waits for a check. */
export const isGate = (check: Check): boolean => check.beforeRunning || isFirstRun(check)

/** Checks that are no gates and have shown danger that nothing has cleared yet. */
const flaggedChecks = (job: Job): readonly Check[] => {
  const flagged = new Set(redFlags(job).map((flag) => flag.note))
  const seen = new Set(
    job.events.flatMap((event) => (event.kind === 'reading' && flagged.has(event.note) ? [event.check] : [])),
  )
  return job.blueprint.checks.filter((check) => !check.beforeRunning && seen.has(check.id))
}

/** Given when a check that has shown danger is made again and shows none. */
const clearMark = (check: string): string => `no danger in ${check}`

/** The marks that a job holds as its notes stand. */
export const marksHeld = (job: Job): string[] => {
  const passed = [...gateStates(job)].filter(([, state]) => state === 'passed').map(([id]) => gateMark(id))
  return [...passed, ...(shownWorking(job) ? [workingMark] : [])]
}

/**
 * Marks that a check needs: its gates passed, and danger that was seen in other checks cleared. The short first run
 * does not wait for other run checks, since those wait for it.
 */
export const marksNeeded = (job: Job, check: Check): string[] => {
  if (!runsMachine(check)) return []
  const gates = gatesOf(job.blueprint, check).map((gate) => gateMark(gate.id))
  const flagged = flaggedChecks(job).filter(
    (other) => other.id !== check.id && !(isFirstRun(check) && runsMachine(other)),
  )
  return [...gates, ...flagged.map((other) => clearMark(other.id))]
}

/** Marks that a result of a check gives. */
export const gives = (check: Check, passes: boolean, danger: boolean): string[] => [
  ...(isGate(check) && passes ? [gateMark(check.id)] : []),
  ...(check.beforeRunning || danger ? [] : [clearMark(check.id)]),
]

/** Marks that a result of a check takes away. */
export const takes = (check: Check, passes: boolean, danger: boolean): string[] => [
  ...(isGate(check) && !passes ? [gateMark(check.id)] : []),
  ...(!check.beforeRunning && danger ? [clearMark(check.id)] : []),
]
