import { moneyFromText } from '../../base/money.ts'
import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { quantityFromText, type Quantity } from '../../base/units.ts'
import type { Edit } from '../../blueprint/adapt-edits.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { ThingKind, Way } from './things.ts'

export type FixingDraft = { readonly count: string; readonly kind: string }

/** What is being said about one thing, as typed. Fields that the way does not need stay as they were filled in. */
export type EditDraft = {
  readonly thing: ThingKind
  readonly id: string
  readonly way: Way
  readonly text: string
  /** Id of a cover; empty: behind none. */
  readonly cover: string
  readonly fixings: readonly FixingDraft[]
  readonly openMin: string
  readonly closeMin: string
  readonly perHundred: string
  readonly sharePercent: string
  readonly option: string
  readonly costLow: string
  readonly costHigh: string
  readonly minutes: string
  readonly voltageV: string
  readonly frequencyHz: string
  readonly powerW: string
  readonly protectionClass: 'I' | 'II'
}

/** A draft of one thing, filled in with what the blueprint says now. */
export const draftOf = (blueprint: Blueprint, thing: ThingKind, id: string, way: Way): EditDraft => {
  const part = thing === 'part' ? blueprint.parts.find((one) => one.id === id) : undefined
  const cover = thing === 'cover' ? blueprint.covers.find((one) => one.id === id) : undefined
  const fault = thing === 'fault' ? blueprint.faults.find((one) => one.id === id) : undefined
  const { plate } = blueprint
  return {
    thing,
    id,
    way,
    text: textNow(blueprint, thing, id, way),
    cover: part?.behind ?? '',
    fixings: (cover?.fixings ?? []).map(({ count, kind }) => ({ count: String(count), kind })),
    openMin: String(cover?.openMin ?? ''),
    closeMin: String(cover?.closeMin ?? ''),
    perHundred: fault === undefined ? '' : String(fault.rate.perHundred),
    sharePercent: fault === undefined ? '' : String(Math.round(fault.saleShareIfLeft * 100)),
    ...optionNow(blueprint, thing === 'repair' ? id : '', ''),
    voltageV: String(plate.voltageV),
    frequencyHz: String(plate.frequencyHz),
    powerW: String(plate.powerW),
    protectionClass: plate.protectionClass,
  }
}

const textNow = (blueprint: Blueprint, thing: ThingKind, id: string, way: Way): string => {
  if (way === 'part-note') return blueprint.parts.find((one) => one.id === id)?.note ?? ''
  if (way === 'check-how') return blueprint.checks.find((one) => one.id === id)?.how ?? ''
  const { parts, covers, controls, points, checks } = blueprint
  const lists = { part: parts, cover: covers, control: controls, point: points, check: checks }
  return thing in lists ? (lists[thing as keyof typeof lists].find((one) => one.id === id)?.name ?? '') : ''
}

type OptionDraft = Pick<EditDraft, 'option' | 'costLow' | 'costHigh' | 'minutes'>

/** A way of mending with what it costs now; the repair's first when none is named. */
export const optionNow = (blueprint: Blueprint, repairId: string, optionId: string): OptionDraft => {
  const options = blueprint.repairs.find(({ id }) => id === repairId)?.options ?? []
  const option = options.find(({ id }) => id === optionId) ?? options[0]
  if (option === undefined) return { option: '', costLow: '', costHigh: '', minutes: '' }
  const money = (minor: number): string => (minor / 100).toFixed(2)
  return {
    option: option.id,
    costLow: money(option.costMinor.low),
    costHigh: money(option.costMinor.high),
    minutes: String(option.minutes),
  }
}

/** The edit that a draft says, or what is wrong with it, by field. */
export const editOf = (draft: EditDraft): Result<Edit> => {
  const { id } = draft
  if (id === '') return refused(problem('nothing-chosen', 'id', 'Nothing is chosen', 'Choose what is different'))
  switch (draft.way) {
    case 'part-absent':
      return ok({ kind: 'part-absent', part: id })
    case 'part-moved':
      return ok({ kind: 'part-moved', part: id, behind: draft.cover === '' ? null : draft.cover })
    case 'cover-absent':
      return ok({ kind: 'cover-absent', cover: id })
    case 'cover-fixings':
      return fixingsEdit(draft)
    case 'renamed':
      return written(draft, (name) => ({ kind: 'renamed', what: draft.thing as 'part', id, name }))
    case 'part-note':
      return written(draft, (text) => ({ kind: 'part-note', part: id, text }))
    case 'check-how':
      return written(draft, (how) => ({ kind: 'check-how', check: id, how }))
    case 'fault-share':
      return shareEdit(draft)
    case 'repair-cost':
      return costEdit(draft)
    case 'plate':
      return plateEdit(draft)
  }
}

const written = ({ text }: EditDraft, make: (text: string) => Edit): Result<Edit> =>
  text.trim() === ''
    ? refused(problem('empty', 'text', 'Nothing is written', 'Write it in a few words'))
    : ok(make(text.trim()))

/** Reads fields one after another and gathers what is wrong with them. */
const reader = () => {
  const problems: Problem[] = []
  const quantity = (text: string, kind: Quantity, where: string): number => {
    const read = quantityFromText(text, kind, where)
    if (read.kind === 'ok') return read.value
    problems.push(...read.problems)
    return 0
  }
  const number = (text: string, where: string, most: number, whole = false): number => {
    const value = Number(text.trim().replace(',', '.'))
    const isRight = text.trim() !== '' && value >= 0 && value <= most && (!whole || Number.isInteger(value))
    if (isRight) return value
    const what = `“${text}” is not ${whole ? 'a whole number' : 'a number'} from 0 to ${most}`
    problems.push(problem('not-a-number', where, what, 'Write it in figures'))
    return 0
  }
  const money = (text: string, where: string): number => {
    const minor = moneyFromText(text)
    if (minor !== null) return minor
    problems.push(problem('not-money', where, `“${text}” is not an amount of money`, 'Write it like 4.50'))
    return 0
  }
  const result = (edit: Edit): Result<Edit> => (problems.length === 0 ? ok(edit) : refused(...problems))
  return { problems, quantity, number, money, result }
}

const mostFixings = 99

/** A fixing without a count or with none of it is left out. */
const fixingsEdit = (draft: EditDraft): Result<Edit> => {
  const read = reader()
  const fixings = draft.fixings.flatMap(({ count, kind }, at) => {
    if (count.trim() === '' && kind.trim() === '') return []
    const many = read.number(count, `fixings[${at}].count`, mostFixings, true)
    if (many > 0 && kind.trim() === '')
      read.problems.push(problem('empty', `fixings[${at}].kind`, 'It does not say of what kind', 'Write such as TX15'))
    return many === 0 ? [] : [{ count: many, kind: kind.trim() }]
  })
  const openMin = read.quantity(draft.openMin, 'durationMin', 'openMin')
  const closeMin = read.quantity(draft.closeMin, 'durationMin', 'closeMin')
  return read.result({ kind: 'cover-fixings', cover: draft.id, fixings, openMin, closeMin })
}

const shareEdit = (draft: EditDraft): Result<Edit> => {
  const read = reader()
  const perHundred = read.number(draft.perHundred, 'perHundred', 100)
  const saleShareIfLeft = read.number(draft.sharePercent, 'sharePercent', 100) / 100
  return read.result({ kind: 'fault-share', fault: draft.id, perHundred, saleShareIfLeft })
}

const costEdit = (draft: EditDraft): Result<Edit> => {
  const read = reader()
  const costMinor = { low: read.money(draft.costLow, 'costLow'), high: read.money(draft.costHigh, 'costHigh') }
  const minutes = read.quantity(draft.minutes, 'durationMin', 'minutes')
  if (costMinor.low > costMinor.high)
    read.problems.push(
      problem('low-above-high', 'costHigh', 'The lower cost is above the higher one', 'Write the lower one first'),
    )
  return read.result({ kind: 'repair-cost', repair: draft.id, option: draft.option, costMinor, minutes })
}

const plateEdit = (draft: EditDraft): Result<Edit> => {
  const read = reader()
  const plate = {
    voltageV: read.quantity(draft.voltageV, 'voltageV', 'voltageV'),
    frequencyHz: read.number(draft.frequencyHz, 'frequencyHz', 400),
    powerW: read.quantity(draft.powerW, 'powerW', 'powerW'),
  }
  for (const [field, value] of Object.entries(plate)) {
    if (value === 0 && read.problems.every(({ where }) => where !== field))
      read.problems.push(problem('zero', field, 'This cannot be zero', 'Write what the plate says'))
  }
  return read.result({ kind: 'plate', ...plate, protectionClass: draft.protectionClass })
}
