import type { Blueprint, Check, GradedCheck, MeterCheck } from '../blueprint/schema.ts'
import type { RankedMove } from '../engines/plan/index.ts'
import type { MachineModel } from './model.ts'
import { jumping } from './meter-outcome.ts'
import { meterRemarks } from './meter-remarks.ts'
import type { Plate } from './plate.ts'
import { wattBands, wattBandText } from './scale.ts'
import type { CheckMove, CoverStep, ExitId, ExitMove, ExpectedResult, MoveView, RepairMove } from './view.ts'
import { lessSum, moveSum } from './money-grounds.ts'
import { exitWorkMin } from './payoff.ts'
import { offerFor, repairCostMinor } from './shelf/repair-cost.ts'
import { bandText, chargingText, exitNames, fixingsText, setUpLines, suspectName } from './words.ts'
import type { MoveContext } from './move-context.ts'
import { whyCheck, whyExit, whyRepair } from './why.ts'

/** A ranked move of the planner in a bench's words. */
export const moveView = (context: MoveContext, ranked: RankedMove): MoveView => {
  switch (ranked.move.kind) {
    case 'check':
      return checkMove(context, ranked, ranked.move.id)
    case 'repair':
      return repairMove(context, ranked, ranked.move.id)
    case 'exit':
      return exitMove(context, ranked, ranked.move.id as ExitId)
  }
}

const common = (context: MoveContext, ranked: RankedMove) => {
  const best = context.answer.ranked[0]?.expectedMinor ?? ranked.expectedMinor
  return {
    minutes: ranked.minutes,
    expectedMinor: ranked.expectedMinor,
    lessMinor: best - ranked.expectedMinor,
    lossProbability: ranked.lossProbability,
    // Of the other checks and repairs it stands in what they are worth less.
    sum: ranked === context.answer.ranked[0] || ranked.move.kind === 'exit' ? moveSum(context, ranked) : null,
    lessSum: lessSum(context, ranked),
    open: coverSteps(context.job.blueprint, ranked.open, 'openMin'),
    close: coverSteps(context.job.blueprint, ranked.close, 'closeMin'),
  }
}

const coverSteps = (blueprint: Blueprint, ids: readonly string[], time: 'openMin' | 'closeMin'): readonly CoverStep[] =>
  ids.flatMap((id) => {
    const cover = blueprint.covers.find((c) => c.id === id)
    if (cover === undefined) return []
    return [{ id, name: cover.name, minutes: cover[time], fixings: fixingsText(cover), hint: cover.hint ?? null }]
  })

const checkMove = (context: MoveContext, ranked: RankedMove, id: string): CheckMove => {
  const { blueprint } = context.job
  const check = blueprint.checks.find((c) => c.id === id)!
  const graded = check.kind === 'meter' ? null : check
  return {
    kind: 'check',
    id,
    name: check.name,
    how: check.how,
    costMinor: check.costMinor,
    caution: check.caution ?? null,
    why: whyCheck(context, ranked, check),
    ...common(context, ranked),
    checkKind: check.kind,
    probes: check.kind === 'meter' ? probesOf(blueprint, check) : null,
    setUp: setUpLines(blueprint, check),
    expected: expectedResults(context, check),
    remarks: check.kind === 'meter' ? meterRemarks(context.model, check) : [],
    choices: graded === null ? [] : gradeChoices(graded, ranked, context.job.plate),
    informationMinor: ranked.informationMinor,
  }
}

const probesOf = (blueprint: Blueprint, check: MeterCheck) => ({
  red: probe(blueprint, check.red),
  black: probe(blueprint, check.black),
})

const probe = (blueprint: Blueprint, point: string) => ({
  point,
  name: blueprint.points.find((p) => p.id === point)?.name ?? point,
})

const gradeChoices = (check: GradedCheck, ranked: RankedMove, plate: Plate) =>
  check.outcomes.map(({ id, name, danger }, i) => ({
    id,
    name,
    danger,
    probability: ranked.outcomeProbability[i] ?? 0,
    band: bandOf(check, id, plate),
  }))

const bandOf = ({ scale }: GradedCheck, outcome: string, { powerW }: Plate): string | null => {
  const band = scale === undefined ? undefined : wattBands(scale, powerW).find((one) => one.outcome === outcome)
  return band === undefined ? null : wattBandText(band)
}

/** How many leading suspects are set against the sound machine, and from how many the telling ones are chosen. */
const comparedSuspects = 3
const consideredSuspects = 12

/** What the check shows when all is good, and under the likeliest suspects that would show something else. */
const expectedResults = (context: MoveContext, check: Check): readonly ExpectedResult[] => {
  const sound = { under: 'good', suspect: null, text: resultText(context.model, check, 0) }
  const considered = context.leading.slice(0, consideredSuspects).map((s) => ({
    under: suspectName(context.job.blueprint, context.model.sets[s]),
    suspect: `s${s}`,
    text: resultText(context.model, check, s),
  }))
  const telling = considered.filter(({ text }) => text !== sound.text)
  return [sound, ...(telling.length > 0 ? telling : considered.slice(0, 1)).slice(0, comparedSuspects)]
}

/** What a check most likely shows under a suspect, in words. */
export const resultText = (model: MachineModel, check: Check, suspect: number): string => {
  if (check.kind !== 'meter') return likeliestGrade(model, check, suspect)
  const row = model.meter.checks.findIndex((c) => c.id === check.id)
  const { states, jumps } = model.predict(row, model.electrical.mixOf[suspect])
  const texts = [
    ...new Set(states.map(({ predicted, showsCapacitor }) => (showsCapacitor ? chargingText : bandText(predicted)))),
  ].join(' or ')
  return jumps > jumping.onSound ? `jumps when moved, else ${texts}` : texts
}

const likeliestGrade = (model: MachineModel, check: GradedCheck, suspect: number): string => {
  const row = model.graded(check, suspect)
  const best = row.indexOf(Math.max(...row))
  const { id, name } = check.outcomes[best]
  const band = bandOf(check, id, model.plate)
  return band === null ? name : `${name}: ${band} on this plate`
}

const repairMove = (context: MoveContext, ranked: RankedMove, id: string): RepairMove => {
  const [repairId = '', optionId = ''] = id.split(':')
  const { blueprint } = context.job
  const repair = blueprint.repairs.find((r) => r.id === repairId)!
  const option = repair.options.find((o) => o.id === optionId)!
  const needed = anyOf(context, repair.removes)
  return {
    kind: 'repair',
    id,
    repair: repairId,
    option: optionId,
    name: repair.name,
    optionName: option.name,
    how: repair.note ?? '',
    costMinor: repairCostMinor(context.job, repair, option),
    caution: null,
    why: whyRepair(needed, option.success),
    ...common(context, ranked),
    removes: repair.removes,
    needed,
    success: option.success,
    costLowMinor: option.costMinor.low,
    costHighMinor: option.costMinor.high,
    forbidden: repair.forbidden ?? null,
    shelf: offerFor(context.job, repair, option),
  }
}

/** Probability that at least one of these faults is there. */
const anyOf = (context: MoveContext, faults: readonly string[]): number => {
  const isWanted = context.job.blueprint.faults.map(({ id }) => faults.includes(id))
  return context.model.sets.reduce(
    (sum, set, s) => (set.some((f) => isWanted[f]) ? sum + context.probability[s] : sum),
    0,
  )
}

const exitMove = (context: MoveContext, ranked: RankedMove, exit: ExitId): ExitMove => ({
  kind: 'exit',
  id: exit,
  exit,
  workMin: exitWorkMin(context.job, exit),
  name: exitNames[exit],
  how: '',
  costMinor: 0,
  caution: null,
  why: whyExit(context.answer, exit),
  ...common(context, ranked),
})
