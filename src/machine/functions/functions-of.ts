import { inSentence } from '../../base/in-sentence.ts'
import { flatBlades } from '../../blueprint/library/mains.ts'
import { reword } from '../../blueprint/reword.ts'
import type { Blueprint, GradedCheck } from '../../blueprint/schema.ts'
import { controlFunction, functionCautions, nothingRuns, type FunctionKind } from '../../facts/function-kind.ts'
import { functionKinds } from '../../facts/function-kinds.ts'
import { runsMachine } from '../running.ts'
import { belongsTo, controlsOf, partsOf, touchedBy } from './belongs.ts'
import type { FunctionCheck, FunctionGroup, FunctionsOf, NotCovered } from './function-check.ts'
import { isGraded, madeCheck, provesWorking } from './made-check.ts'

const kept = new WeakMap<Blueprint, FunctionsOf>()

/**
 * What can be tried of this blueprint's machine before it is sold, in an order that wastes no work: what must be opened, then
 * what is tried by hand on the closed machine, then what needs it running. The same blueprint object gives the same list.
 */
export const functionsOf = (blueprint: Blueprint): FunctionsOf => {
  const known = kept.get(blueprint)
  if (known !== undefined) return known
  const functions = inOrder(functionsByKind(blueprint).map((one) => inWordsOf(blueprint, one)))
  const made = { functions, notCovered: notCovered(blueprint, functions) }
  kept.set(blueprint, made)
  return made
}

/** Mains below this are those of flat blades, where the trade says some things otherwise. Common practice. */
const lowMainsV = 150

/** The general words as the trade says them where the machine was made for; the blueprint's own stand already. */
const inWordsOf = (blueprint: Blueprint, one: FunctionCheck): FunctionCheck => {
  if (blueprint.plate.voltageV > lowMainsV) return one
  const texts = reword({ name: one.name, how: one.how, note: one.good, caution: one.cautions }, flatBlades.wording)
  return { ...one, name: texts.name, how: texts.how, good: texts.note, cautions: texts.caution }
}

/** The function of this id, or undefined. */
export const functionById = (blueprint: Blueprint, id: string): FunctionCheck | undefined =>
  functionsOf(blueprint).functions.find((one) => one.id === id)

const functionsByKind = (blueprint: Blueprint): readonly FunctionCheck[] => {
  const taken = new Set<string>()
  const byKind = functionKinds.flatMap((kind) => {
    const own = ownCheck(kind, blueprint, taken)
    if (own === undefined && kind.onlyAsCheck === true) return []
    if (own !== undefined) taken.add(own.id)
    return functionOfKind(kind, blueprint, own)
  })
  const worked = new Set(byKind.flatMap(({ controls }) => controls))
  const rest = blueprint.controls.filter(({ id }) => !worked.has(id))
  return [...byKind, ...rest.map((control) => functionOfControl(control, blueprint))]
}

/** The blueprint's own check of a kind; each stands for one function only. */
const ownCheck = (kind: FunctionKind, { checks }: Blueprint, taken: ReadonlySet<string>): GradedCheck | undefined =>
  kind.whole === true
    ? checks.find(provesWorking)
    : kind.checks
        .flatMap((id) => checks.filter(isGraded).filter((check) => check.id === id))
        .find(({ id }) => !taken.has(id))

const functionOfKind = (
  kind: FunctionKind,
  blueprint: Blueprint,
  own: GradedCheck | undefined,
): readonly FunctionCheck[] => {
  const parts = partsOf(kind, blueprint)
  const controls = controlsOf(kind, blueprint, parts)
  if (!belongsTo(kind, blueprint, parts, controls)) return []
  const ids = parts.map(({ id }) => id)
  const check = own ?? madeCheck(blueprint, kind, ids)
  return [
    {
      id: kind.id,
      name: kind.name,
      how: howOf(check),
      good: own === undefined ? kind.good : (own.outcomes[0]?.name ?? kind.good),
      cautions: cautionsOf(check, kind.turns === true),
      minutes: check.minutes,
      group: groupOf(check),
      parts: parts.map(({ id, name }) => ({ id, name })),
      touches: touchedBy(kind, blueprint).filter((id) => !ids.includes(id)),
      controls: [...new Set([...controls, ...Object.keys(check.controls)])],
      check,
      isReading: own !== undefined,
    },
  ]
}

const functionOfControl = ({ id, name }: Blueprint['controls'][number], blueprint: Blueprint): FunctionCheck => {
  const parts = blueprint.parts.filter((part) =>
    blueprint.circuit.some(
      (element) => element.kind === 'contact' && element.part === part.id && element.closedWhen.control === id,
    ),
  )
  const { how, good, minutes } = controlFunction
  const check = madeCheck(
    blueprint,
    { id: `control.${id}`, name, how, way: 'run', minutes },
    parts.map((part) => part.id),
  )
  return {
    id: `control.${id}`,
    name,
    how,
    good,
    cautions: cautionsOf(check, false),
    minutes,
    group: 'run',
    parts: parts.map((part) => ({ id: part.id, name: part.name })),
    touches: [],
    controls: [id],
    check,
    isReading: false,
  }
}

/** With a made check, what to do where nothing runs; the blueprint's own can show that. */
const howOf = ({ how, driven, id }: GradedCheck): string =>
  driven?.otherwise === 'dead' && id.startsWith('function.') ? `${how} ${nothingRuns}` : how

const groupOf = (check: GradedCheck): FunctionGroup =>
  runsMachine(check) ? 'run' : check.coversOff.length > 0 ? 'opened' : 'by-hand'

/** Said before it, unless how it is done says so itself. */
const cautionsOf = (check: GradedCheck, turns: boolean): readonly string[] => [
  ...(isSaid(check) ? [] : [runsMachine(check) ? functionCautions.run : functionCautions['by-hand']]),
  ...(turns ? [functionCautions.turns] : []),
  ...(check.caution === undefined ? [] : [check.caution]),
]

const isSaid = (check: GradedCheck): boolean =>
  runsMachine(check) ? /covers on.*hands clear/i.test(check.how) : check.how.startsWith('Plug out')

const groups: readonly FunctionGroup[] = ['opened', 'by-hand', 'run']

/** Group by group; what is behind the same cover side by side; the run that others wait for first, the whole machine last. */
const inOrder = (functions: readonly FunctionCheck[]): readonly FunctionCheck[] =>
  functions
    .map((one, place) => ({ one, place, key: one.check.coversOff.join(' ') }))
    .toSorted(
      (a, b) =>
        groups.indexOf(a.one.group) - groups.indexOf(b.one.group) ||
        Number(a.one.check.provesWorking) - Number(b.one.check.provesWorking) ||
        a.key.localeCompare(b.key) ||
        a.place - b.place,
    )
    .map(({ one }) => one)

const usedByHand: readonly string[] = ['air', 'mechanical', 'control']

/** Parts of the air path, of the works and of the controls that can fail and that no function touches. */
const notCovered = (blueprint: Blueprint, functions: readonly FunctionCheck[]): readonly NotCovered[] => {
  const covered = new Set(functions.flatMap(({ parts, touches }) => [...parts.map(({ id }) => id), ...touches]))
  return blueprint.parts
    .filter(({ id, group }) => usedByHand.includes(group) && !covered.has(id))
    .filter(({ id }) => blueprint.faults.some(({ part }) => part === id))
    .map(({ id, name, behind }) => ({ part: { id, name }, why: whyNot(blueprint, behind) }))
}

const whyNot = ({ covers, checks }: Blueprint, behind: string | undefined): string => {
  const cover = covers.find(({ id }) => id === behind)
  const shows = checks.some(provesWorking) ? '; the run of the whole machine has to show it' : ''
  return cover === undefined
    ? `no function of its own is known for it${shows}`
    : `it is behind the ${inSentence(cover.name)} and does nothing that can be tried from outside${shows}`
}
