import type { NoteContentInput } from '../../src/bench/note.ts'
import type { Blueprint } from '../../src/blueprint/schema.ts'

/** Every check that must be passed before a machine of this blueprint is run, passed. */
export const gatesPassedOf = (blueprint: Blueprint): readonly NoteContentInput[] =>
  blueprint.checks
    .filter(({ beforeRunning }) => beforeRunning)
    .map((check): NoteContentInput => {
      const reading = { kind: 'reading', check: check.id, minutes: 1 } as const
      if (check.kind !== 'meter') return { ...reading, result: { kind: 'grade', outcome: check.outcomes[0].id } }
      return check.passesAtMostOhm === undefined
        ? { ...reading, result: { kind: 'open' } }
        : { ...reading, result: { kind: 'ohms', resistanceOhm: check.passesAtMostOhm / 2 } }
    })

/** The same with the covers that must come off for them: those made with covers on first, then all covers off, the rest, all on again. */
export const gatesPassedWithCovers = (blueprint: Blueprint): readonly NoteContentInput[] => {
  const gates = gatesPassedOf(blueprint)
  const needsCoversOn = (note: NoteContentInput): boolean =>
    note.kind === 'reading' && blueprint.checks.some(({ id, coversOn }) => id === note.check && coversOn)
  const order = coversInOrder(blueprint)
  return [
    ...gates.filter(needsCoversOn),
    ...order.map((cover): NoteContentInput => ({ kind: 'opened', cover, minutes: 1 })),
    ...gates.filter((note) => !needsCoversOn(note)),
    ...order.toReversed().map((cover): NoteContentInput => ({ kind: 'closed', cover, minutes: 1 })),
  ]
}

/** Covers in an order in which they come off. */
const coversInOrder = ({ covers }: Blueprint): readonly string[] => {
  const off: string[] = []
  while (off.length < covers.length) {
    const next = covers.find(({ id, after }) => !off.includes(id) && after.every((one) => off.includes(one)))
    if (next === undefined) throw new Error('covers that wait for each other')
    off.push(next.id)
  }
  return off
}
