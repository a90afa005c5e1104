import { parse } from '../base/parse.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { withoutParts } from './adapt-absent.ts'
import { isShorted } from './adapt-circuit.ts'
import { withCovers } from './adapt-covers.ts'
import { editsFileSchema, editsOf, editsSchema, type Edit } from './adapt-edits.ts'
import { withFigures } from './adapt-figures.ts'
import { editProblems } from './adapt-names.ts'
import { checkBlueprint } from './check.ts'
import type { Blueprint, Check } from './schema.ts'
import { canReveal } from './sight.ts'

/**
 * The blueprint as the edits make it: valid again, with all that hung on what changed put right. Its id and name stay.
 * Edits of different parts may come in any order. Refused with what is wrong and what would be right when an edit names what
 * is not there, when edits contradict each other, or when what is left would not be a blueprint any more.
 */
export const adaptBlueprint = (blueprint: Blueprint, edits: readonly Edit[]): Result<Blueprint> => {
  const wrong = editProblems(blueprint, edits)
  if (wrong.length > 0) return refused(...wrong)
  const moved = withCovers(withFigures(blueprint, edits), edits)
  const adapted = withNotesOfOtherParts(withoutParts(moved, edits))
  const lost = lostProblems(blueprint, adapted, edits)
  if (lost.length > 0) return refused(...lost)
  const checked = checkBlueprint(adapted)
  return checked.kind === 'ok' ? checked : refused(...checked.problems.map(explained(adapted, edits)))
}

/** Edits from outside input: a list, or a file of the form `thrum-edits-1`. */
export const parseEdits = (input: unknown): Result<readonly Edit[]> => {
  if (Array.isArray(input)) return parse(editsSchema, input, 'list of edits')
  const file = parse(editsFileSchema, input, 'file of edits')
  return file.kind === 'ok' ? ok(file.value.edits) : file
}

/** A repair that mends another part on the way names it; a part with a new name is named anew. */
const withNotesOfOtherParts = (blueprint: Blueprint): Blueprint => ({
  ...blueprint,
  repairs: blueprint.repairs.map((repair) => {
    const note = (repair.note ?? '').toLowerCase()
    const unnamed = blueprint.parts.filter(
      ({ id, name }) =>
        id !== repair.part &&
        !note.includes(name.toLowerCase()) &&
        blueprint.faults.some((fault) => fault.part === id && repair.removes.includes(fault.id)),
    )
    if (unnamed.length === 0) return repair
    const also = `Mends too: ${unnamed.map(({ name }) => name).join(', ')}.`
    return { ...repair, note: repair.note === undefined ? also : `${repair.note} ${also}` }
  }),
})

/** What a machine cannot do without: a supply that is not shorted, something to mend, a check before running, and one that proves it works. */
const lostProblems = (before: Blueprint, after: Blueprint, edits: readonly Edit[]): readonly Problem[] => {
  const parts = absentNames(before, edits)
  if (parts === '') return []
  const where = 'edits'
  const proofs = ({ checks }: Blueprint): boolean =>
    checks.some((check) => check.kind !== 'meter' && check.provesWorking)
  const pins = Object.values(after.supply)
  if (new Set(pins).size < pins.length || (isShorted(after) && !isShorted(before))) {
    return [problem('supply-shorted', where, `Without ${parts} two pins of the plug would be joined`, takeAway)]
  }
  return [
    ...(before.supply.earth !== undefined && after.supply.earth === undefined && after.plate.protectionClass === 'I'
      ? [
          problem(
            'earth-lost',
            where,
            `Without ${parts} nothing is on the earth pin, and the plate says class I`,
            keepEarth,
          ),
        ]
      : []),
    ...(after.faults.length === 0 || after.repairs.length === 0 || after.circuit.length === 0
      ? [problem('nothing-left', where, `Without ${parts} nothing is left that could be faulty`, otherBlueprint)]
      : []),
    ...lostGates(before, after, edits).map((check) => {
      const what = `Without ${parts} the check “${check.name}”, to be passed before it is run, could not be made`
      return problem('check-before-running-lost', where, what, otherBlueprint)
    }),
    ...(proofs(before) && !proofs(after)
      ? [problem('no-proof-left', where, `Without ${parts} no check is left that shows that it works`, otherBlueprint)]
      : []),
  ]
}

/** Checks before running that could not be made any more, though parts that they watch over are still there. */
const lostGates = (before: Blueprint, after: Blueprint, edits: readonly Edit[]): readonly Check[] => {
  const gone = new Set(editsOf(edits, 'part-absent').map(({ part }) => part))
  return before.checks
    .filter((check) => check.beforeRunning && !after.checks.some(({ id }) => id === check.id))
    .filter((check) => before.faults.some((fault) => !gone.has(fault.part) && canReveal(before, check, fault)))
}

const takeAway = 'Say that its element is taken away instead of bridged, or keep the part'
const keepEarth = 'Keep the part, or say that the plate is of class II: only a double square on it means that'
const otherBlueprint = 'Keep the part, or take another blueprint: this machine is of another kind'

const absentNames = (blueprint: Blueprint, edits: readonly Edit[]): string =>
  editsOf(edits, 'part-absent')
    .map(({ part }) => `“${blueprint.parts.find(({ id }) => id === part)?.name ?? part}”`)
    .join(', ')

/** A problem of the outcome, said with the edits in mind. */
const explained =
  (adapted: Blueprint, edits: readonly Edit[]) =>
  (one: Problem): Problem => {
    const parts = absentNames(adapted, edits)
    const fault = adapted.faults.find(({ id }) => one.where === `faults.${id}`)
    const part = adapted.parts.find(({ id }) => id === fault?.part)
    const what = `After these edits: ${one.what}`
    if (part === undefined || parts === '') return { ...one, what }
    const mend =
      one.code === 'fault-not-revealed' || one.code === 'fault-without-repair'
        ? `Say that “${part.name}” is not there either, or keep what is not there`
        : one.mend
    return { ...one, what, mend }
  }
