import { dryText } from '../base/clock-text.ts'
import { moneyText, type Currency } from '../base/money.ts'
import type { CleanView } from '../bench/cleaning/clean-view.ts'
import type { MachineState } from '../bench/contract.ts'
import { gradeFacts } from '../facts/asking.ts'
import type { CleaningTaskView } from '../machine/cleaning/cleaning-plan.ts'

/** What is worth cleaning on a machine, as lines for a terminal; times in the terminal's own zone. */
export const cleanLines = ({ name, currency }: MachineState, view: CleanView, now: string): readonly string[] => {
  const { plan, drying, grades, done } = view
  const worth = plan.ranked.filter(({ isWorthIt }) => isWorthIt)
  const rest = plan.ranked.filter(({ isWorthIt }) => !isWorthIt)
  const list = (title: string, tasks: readonly CleaningTaskView[]): readonly string[] =>
    tasks.length === 0 ? [] : [title, ...tasks.map((task) => taskLine(task, currency)), '']
  return [
    `${name}: clean${view.isShownToWork ? '' : ', and once it works,'} it is worth asking ${moneyText(plan.askMinor, currency)}, looks ${plan.grade} (${gradeFacts[plan.grade].name})`,
    '',
    ...(drying.length === 0 ? [] : ['Drying; nothing damp goes back in, and the machine is not run with it:']),
    ...drying.map((one) => `  ${one.name}: ${dryText(one.readyAt, now)}  (${one.note})`),
    ...(drying.length === 0 ? [] : ['']),
    ...list('First, whatever it brings:', plan.first),
    ...list('Then, best money first:', worth),
    ...list(`Not worth your minutes at ${moneyText(plan.hourMinor / 60, currency)} each:`, rest),
    ...list('Only if you find it:', plan.ifFound),
    ...(grades.length === 0 ? [] : ['Looks, before and after:']),
    ...grades.map(({ name: part, before, after }) => `  ${part}: ${before ?? '–'}, ${after ?? '–'}`),
    ...(done.length === 0
      ? ['Nothing is noted as cleaned yet']
      : [`Done: ${done.length}, ${view.minutes} min, ${moneyText(view.costMinor, currency)}`]),
    ...done.map(
      (one) => `  ${one.name}${one.part === null ? '' : ` (${one.part})`}, ${one.minutes} min  (${one.note})`,
    ),
  ]
}

const taskLine = (task: CleaningTaskView, currency: Currency): string => {
  const { id, name, minutes, costMinor, gainMinor, perMinuteMinor, dries, must, when, instead } = task
  const words = [
    `${minutes} min`,
    ...(costMinor === 0 ? [] : [`costs ${moneyText(costMinor, currency)}`]),
    ...(gainMinor === 0 ? [] : [`${moneyText(gainMinor, currency)} more`]),
    ...(gainMinor === 0 || must !== null
      ? []
      : [perMinuteMinor < 0 ? 'costs more than it brings' : `${moneyText(perMinuteMinor, currency)} a minute`]),
    ...(dries === null ? [] : [`dries ${dries.warm} h, cold or damp ${dries.damp} h`]),
    ...(when === null ? [] : [`only if: ${when}`]),
    ...(must === null ? [] : [must]),
    ...(instead === null ? [] : [`or ${instead.id}: ${instead.name}`]),
  ]
  return `  ${id}: ${name}: ${words.join(', ')}`
}
