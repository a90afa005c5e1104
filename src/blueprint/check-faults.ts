import { problem, type Problem } from '../base/problem.ts'
import type { Blueprint, Fault, Repair } from './schema.ts'
import { canReveal } from './sight.ts'

/** Every fault can be found and mended, says once whom it excludes, and is mended at its own part or with a word about it. */
export const checkFaults = (blueprint: Blueprint): readonly Problem[] => [
  ...blueprint.faults.flatMap((fault) => [
    ...revealed(blueprint, fault),
    ...mended(blueprint, fault),
    ...excludesBothWays(blueprint, fault),
  ]),
  ...blueprint.repairs.flatMap((repair) => repairsOwnPart(blueprint, repair)),
]

const revealed = (blueprint: Blueprint, fault: Fault): readonly Problem[] => {
  if (blueprint.checks.some((check) => canReveal(blueprint, check, fault))) return []
  const what = `No check could reveal “${fault.name}”`
  const mend = 'Name it in the “under” of a look, run or air check, or add a meter check that sees its element'
  return [problem('fault-not-revealed', `faults.${fault.id}`, what, mend)]
}

const mended = (blueprint: Blueprint, fault: Fault): readonly Problem[] => {
  if (blueprint.repairs.some((repair) => repair.removes.includes(fault.id))) return []
  const what = `No repair removes “${fault.name}”`
  return [problem('fault-without-repair', `faults.${fault.id}`, what, 'Name it in the “removes” of a repair')]
}

const excludesBothWays = (blueprint: Blueprint, fault: Fault): readonly Problem[] =>
  fault.excludes.flatMap((id) => {
    const where = `faults.${fault.id}.excludes`
    if (id === fault.id) {
      return [problem('excludes-itself', where, 'A fault cannot exclude itself', `Take “${id}” out of its excludes`)]
    }
    const other = blueprint.faults.find((candidate) => candidate.id === id)
    if (other === undefined || other.excludes.includes(fault.id)) return []
    const what = `It excludes “${id}”, but “${id}” does not exclude it`
    return [problem('excludes-one-way', where, what, `Add “${fault.id}” to the excludes of “${id}”`)]
  })

/** A repair may mend other parts on the way when its note names them. */
const repairsOwnPart = (blueprint: Blueprint, repair: Repair): readonly Problem[] => {
  const note = (repair.note ?? '').toLowerCase()
  const removed = blueprint.faults.filter((fault) => repair.removes.includes(fault.id))
  return blueprint.parts
    .filter((part) => part.id !== repair.part && !note.includes(part.name.toLowerCase()))
    .flatMap((part) => {
      const faults = removed.filter((fault) => fault.part === part.id).map((fault) => `“${fault.id}”`)
      if (faults.length === 0) return []
      const what = `It removes ${faults.join(', ')} of another part, “${part.name}”, and does not say so`
      const mend = `Name “${part.name}” in the note, or take the faults out`
      return [problem('repair-of-another-part', `repairs.${repair.id}.removes`, what, mend)]
    })
}
