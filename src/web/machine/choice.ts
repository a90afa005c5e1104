import type { Blueprint, Check, GradedCheck, MeterCheck } from '../../blueprint/schema.ts'
import { powerMeter } from '../../facts/power-meter.ts'
import type {
  CheckMove,
  CoverStep,
  ExitId,
  GradeChoice,
  MachineView,
  MoveView,
  RepairMove,
} from '../../machine/view.ts'
import { coversToClose, coversToOpen } from './cover-steps.ts'

/** Which move is on the card: as a text, so that it can be a form's value too. `check plug-on`, `repair flex new`, `exit scrap`. */
export type Choice = string

export const choiceOf = (move: MoveView): Choice => {
  switch (move.kind) {
    case 'check':
      return `check ${move.id}`
    case 'repair':
      return `repair ${move.repair} ${move.option}`
    case 'exit':
      return `exit ${move.exit}`
  }
}

/** A move on the card. `figured`: the plan has worked out what it is worth; otherwise only what the blueprint says is known. */
export type ShownMove = { readonly move: MoveView; readonly figured: boolean }

/** The chosen move, from the plan where it has it, otherwise from the blueprint. Null when neither knows it. */
export const moveOf = (
  choice: Choice,
  view: MachineView | null,
  blueprint: Blueprint,
  off: readonly string[],
): ShownMove | null => {
  const planned = view === null ? [] : [view.next, ...view.others]
  const found = planned.find((move) => choiceOf(move) === choice)
  if (found !== undefined) return { move: found, figured: true }
  const move = fromBlueprint(choice, blueprint, off)
  return move === null ? null : { move, figured: false }
}

const fromBlueprint = (choice: Choice, blueprint: Blueprint, off: readonly string[]): MoveView | null => {
  const [kind, id = '', option = ''] = choice.split(' ')
  if (kind === 'repair') return repairMove(id, option, blueprint, off)
  if (kind === 'exit') return exitMove(id as ExitId, blueprint, off)
  const check = blueprint.checks.find((one) => one.id === id)
  return check === undefined ? null : checkMove(check, blueprint, off)
}

const unfigured = { expectedMinor: 0, lessMinor: 0, lossProbability: null, sum: null, lessSum: null, why: '' }

/** Runs the machine, so every cover must be on. */
export const runs = (check: Check): boolean =>
  check.kind !== 'meter' && (check.kind === 'run' || check.driven !== undefined)

const totalMin = (steps: readonly CoverStep[]): number => steps.reduce((sum, step) => sum + step.minutes, 0)

const checkMove = (check: Check, blueprint: Blueprint, off: readonly string[]): CheckMove => {
  const behind = check.kind === 'meter' ? pointCovers(check, blueprint) : []
  const open = coversToOpen(blueprint, off, [...check.coversOff, ...behind])
  const close = runs(check) || check.coversOn ? coversToClose(blueprint, off) : []
  return {
    ...unfigured,
    kind: 'check',
    id: check.id,
    name: check.name,
    how: check.how,
    minutes: check.minutes + totalMin(open) + totalMin(close),
    costMinor: check.costMinor,
    open,
    close,
    caution: check.caution ?? null,
    checkKind: check.kind,
    probes: check.kind === 'meter' ? probesOf(check, blueprint) : null,
    setUp: setUpOf(check, blueprint),
    expected: [],
    remarks: [],
    choices: check.kind === 'meter' ? [] : choicesOf(check),
    informationMinor: 0,
  }
}

const pointCovers = (check: MeterCheck, blueprint: Blueprint): readonly string[] =>
  blueprint.points
    .filter(({ id }) => id === check.red || id === check.black)
    .flatMap(({ behind }) => (behind === undefined ? [] : [behind]))

const probesOf = (check: MeterCheck, blueprint: Blueprint): CheckMove['probes'] => {
  const named = (id: string) => ({ point: id, name: blueprint.points.find((point) => point.id === id)?.name ?? id })
  return { red: named(check.red), black: named(check.black) }
}

const choicesOf = (check: GradedCheck): readonly GradeChoice[] =>
  check.outcomes.map(({ id, name, danger }) => ({ id, name, danger, probability: 0, band: null }))

const setUpOf = (check: Check, blueprint: Blueprint): readonly string[] => {
  const controls = Object.entries(check.controls).map(([id, position]) => {
    const control = blueprint.controls.find((one) => one.id === id)
    return `${control?.name ?? id}: ${position}`
  })
  if (check.kind !== 'meter')
    return check.scale === undefined ? controls : [`${powerMeter.name} between plug and socket`, ...controls]
  const unplug = check.unplug.map((id) => `Unplug: ${blueprint.circuit.find((one) => one.id === id)?.id ?? id}`)
  return ['Plug out', ...controls, ...unplug]
}

const repairMove = (id: string, option: string, blueprint: Blueprint, off: readonly string[]): RepairMove | null => {
  const repair = blueprint.repairs.find((one) => one.id === id)
  const way = repair?.options.find((one) => one.id === option) ?? repair?.options[0]
  if (repair === undefined || way === undefined) return null
  const open = coversToOpen(blueprint, off, repair.coversOff)
  return {
    ...unfigured,
    kind: 'repair',
    id: `${repair.id} ${way.id}`,
    name: repair.name,
    how: repair.note ?? '',
    minutes: way.minutes + totalMin(open),
    costMinor: Math.round((way.costMinor.low + way.costMinor.high) / 2),
    open,
    close: [],
    caution: null,
    repair: repair.id,
    option: way.id,
    optionName: way.name,
    removes: repair.removes,
    needed: 0,
    success: way.success,
    costLowMinor: way.costMinor.low,
    costHighMinor: way.costMinor.high,
    forbidden: repair.forbidden ?? null,
    shelf: null,
  }
}

const exitMove = (exit: ExitId, blueprint: Blueprint, off: readonly string[]): MoveView => {
  const close = exit === 'sell-working' || exit === 'sell-for-spares' ? coversToClose(blueprint, off) : []
  return {
    ...unfigured,
    kind: 'exit',
    id: exit,
    exit,
    workMin: null,
    name: '',
    how: '',
    minutes: totalMin(close),
    costMinor: 0,
    open: [],
    close,
    caution: null,
  }
}
