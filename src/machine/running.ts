import type { Blueprint, Check, Fault, GradedCheck } from '../blueprint/schema.ts'
import type { Job, JobEvent } from './job.ts'
import type { ReadingResult } from './result.ts'
import type { RedFlag } from './view.ts'

/** How a check that must pass before running stands. */
type GateState = 'not made' | 'passed' | 'failed'

/** Whether a result passes a check that must be passed before the machine is run. `null`: it says nothing either way. */
export const passesGate = (check: Check, result: ReadingResult): boolean | null => {
  if (result.kind === 'cannot-tell') return null
  if (check.kind !== 'meter') return result.kind === 'grade' && passesGrade(check, result.outcome)
  if (result.kind === 'jumps') return false
  const resistanceOhm = result.kind === 'ohms' ? result.resistanceOhm : Infinity
  return resistanceOhm >= (check.passesAtLeastOhm ?? 0) && resistanceOhm <= (check.passesAtMostOhm ?? Infinity)
}

/** The first outcome passes; of the short first run any that runs without danger, since the rest is there to listen to. */
const passesGrade = (check: GradedCheck, outcome: string): boolean =>
  check.firstRun
    ? check.outcomes.some(({ id, danger }) => id === outcome && !danger) && outcome !== check.driven?.otherwise
    : outcome === check.outcomes[0]?.id

/** Whether a result shows danger in itself: a failed gate, or a grade marked as dangerous. */
const showsDanger = (check: Check, result: ReadingResult): boolean => {
  if (check.beforeRunning && passesGate(check, result) === false) return true
  if (check.kind === 'meter' || result.kind !== 'grade') return false
  return check.outcomes.some((outcome) => outcome.id === result.outcome && outcome.danger)
}

/** Faults of the blueprint that a repair takes away. */
const removedBy = (blueprint: Blueprint, repair: string): ReadonlySet<string> =>
  new Set(blueprint.repairs.find((r) => r.id === repair)?.removes ?? [])

const groupOf = (blueprint: Blueprint, part: string): string =>
  blueprint.parts.find((p) => p.id === part)?.group ?? 'electrical'

/**
 * Whether a repair makes a passed gate out of date. Meter gates are made again after work on anything electrical;
 * looks after work on a part whose dangerous faults they are there to see.
 */
export const repairVoidsGate = (blueprint: Blueprint, check: Check, repairId: string): boolean => {
  const repair = blueprint.repairs.find((r) => r.id === repairId)
  if (repair === undefined) return false
  if (check.kind === 'meter' || check.firstRun)
    return ['electrical', 'control'].includes(groupOf(blueprint, repair.part))
  return repair.removes.some((fault) => fault in check.under && isDangerous(blueprint, fault))
}

const isDangerous = (blueprint: Blueprint, faultId: string): boolean =>
  blueprint.faults.find((fault) => fault.id === faultId)?.danger !== undefined

/** A check that other checks wait for: before all running, or the short first run before the rest. */
const isGate = (check: Check): boolean => check.beforeRunning || isFirstRun(check)

export const isFirstRun = (check: Check): boolean => check.kind !== 'meter' && check.firstRun

/** The machine runs during this check. */
export const runsMachine = (check: Check): boolean =>
  check.kind === 'run' || (check.kind === 'air' && check.driven !== undefined)

/** The checks that must have passed before this one: none unless it runs the machine. */
export const gatesOf = (blueprint: Blueprint, check: Check): readonly Check[] =>
  runsMachine(check)
    ? blueprint.checks.filter((gate) => gate.beforeRunning || (isFirstRun(gate) && !isFirstRun(check)))
    : []

/** The state of each gate after these events. */
export const gateStates = (job: Pick<Job, 'blueprint' | 'events'>): ReadonlyMap<string, GateState> => {
  const states = new Map<string, GateState>()
  for (const check of job.blueprint.checks) if (isGate(check)) states.set(check.id, 'not made')
  for (const event of job.events) stepGates(job.blueprint, states, event)
  return states
}

const stepGates = (blueprint: Blueprint, states: Map<string, GateState>, event: JobEvent): void => {
  if (event.kind === 'reading') {
    const check = blueprint.checks.find((c) => c.id === event.check)
    if (check === undefined || !isGate(check)) return
    const passed = passesGate(check, event.result)
    if (passed !== null) states.set(check.id, passed ? 'passed' : 'failed')
  }
  if (event.kind === 'repaired') {
    for (const check of blueprint.checks) {
      if (isGate(check) && repairVoidsGate(blueprint, check, event.repair)) states.set(check.id, 'not made')
    }
  }
}

/**
 * What closes all running until it is mended: a dangerous result that no later result of the same check has cleared,
 * or a confirmed dangerous fault that no repair has taken away.
 */
export const redFlags = (job: Pick<Job, 'blueprint' | 'events'>): readonly RedFlag[] => {
  const open = new Map<string, RedFlag>()
  for (const event of job.events) stepFlags(job.blueprint, open, event)
  return [...open.values()]
}

const stepFlags = (blueprint: Blueprint, open: Map<string, RedFlag>, event: JobEvent): void => {
  if (event.kind === 'reading') readingFlag(blueprint, open, event)
  if (event.kind === 'confirmed') {
    const fault = blueprint.faults.find((f) => f.id === event.fault)
    if (fault?.danger !== undefined)
      open.set(`fault ${fault.id}`, {
        note: event.note,
        text: `${fault.name}: ${fault.danger}`,
        mendedBy: repairsOf(blueprint, [fault]),
      })
  }
  if (event.kind === 'repaired') {
    for (const fault of removedBy(blueprint, event.repair)) open.delete(`fault ${fault}`)
    for (const key of open.keys()) {
      const check = blueprint.checks.find((c) => `check ${c.id}` === key)
      if (check !== undefined && removesACause(blueprint, check, event.repair)) open.delete(key)
    }
  }
}

const readingFlag = (blueprint: Blueprint, open: Map<string, RedFlag>, event: JobEvent & { kind: 'reading' }): void => {
  const check = blueprint.checks.find((c) => c.id === event.check)
  if (check === undefined || event.result.kind === 'cannot-tell') return
  const key = `check ${check.id}`
  if (!showsDanger(check, event.result)) {
    open.delete(key)
    return
  }
  const causes = dangerousCauses(blueprint, check)
  open.set(key, {
    note: event.note,
    text: `${check.name}: not passed. Nothing is run until it is mended`,
    mendedBy: repairsOf(blueprint, causes),
  })
}

/** Faults that can make this check fail, as far as the blueprint says: those listed under it, or any dangerous electrical one. */
const dangerousCauses = (blueprint: Blueprint, check: Check): readonly Fault[] =>
  blueprint.faults.filter((fault) =>
    check.kind === 'meter' ? fault.electrical.length > 0 && fault.danger !== undefined : fault.id in check.under,
  )

const removesACause = (blueprint: Blueprint, check: Check, repair: string): boolean => {
  const removed = removedBy(blueprint, repair)
  return dangerousCauses(blueprint, check).some((fault) => removed.has(fault.id))
}

const repairsOf = (blueprint: Blueprint, faults: readonly Fault[]): readonly string[] => {
  const ids = new Set(faults.map((fault) => fault.id))
  return blueprint.repairs.filter((repair) => repair.removes.some((id) => ids.has(id))).map((repair) => repair.name)
}

/** Names of what bars any running of this machine now: red flags first, then the gates not yet passed. Empty when it may be run. */
export const runningBarred = (job: Pick<Job, 'blueprint' | 'events'>): readonly string[] =>
  barred(
    job,
    job.blueprint.checks.filter((check) => check.beforeRunning),
  )

/** Names of what bars this check now; empty for a check that does not run the machine. */
export const checkBarred = (job: Pick<Job, 'blueprint' | 'events'>, check: Check): readonly string[] =>
  runsMachine(check) ? barred(job, gatesOf(job.blueprint, check)) : []

const barred = (job: Pick<Job, 'blueprint' | 'events'>, gates: readonly Check[]): readonly string[] => {
  const states = gateStates(job)
  const missing = gates.filter((check) => states.get(check.id) !== 'passed')
  return [...redFlags(job).map((flag) => flag.text), ...missing.map((check) => check.name)]
}

/**
 * Whether a repair makes a check worth making again: what it can see may have changed. Meter checks and those that something
 * must be driven for see electrical work; looks see the faults they name.
 */
export const repairRenews = (blueprint: Blueprint, repairId: string, check: Check): boolean => {
  const repair = blueprint.repairs.find((r) => r.id === repairId)
  if (repair === undefined) return false
  const removed = blueprint.faults.filter((fault) => repair.removes.includes(fault.id))
  const electrical = removed.some((fault) => fault.electrical.length > 0)
  if (check.kind === 'meter') return electrical
  return (
    check.provesWorking ||
    (electrical && check.driven !== undefined) ||
    removed.some((fault) => fault.id in check.under)
  )
}

/** Whether the machine has been shown to work since it was last repaired or opened. */
export const shownWorking = (job: Pick<Job, 'blueprint' | 'events'>): boolean => {
  let works = false
  for (const event of job.events) {
    if (event.kind === 'repaired' || event.kind === 'opened') works = false
    if (event.kind !== 'reading' || event.result.kind !== 'grade') continue
    const check = job.blueprint.checks.find((c) => c.id === event.check)
    if (check === undefined || check.kind === 'meter' || !check.provesWorking) continue
    works = event.result.outcome === check.outcomes[0]?.id
  }
  return works
}
