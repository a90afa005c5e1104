import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { checkNote } from '../../../src/bench/append.ts'
import { addMachine, addNote, type CommandDeps, type CommandOutcome } from '../../../src/bench/commands.ts'
import { foldNotes } from '../../../src/bench/fold.ts'
import { jobOf } from '../../../src/bench/job.ts'
import { noteLines } from '../../../src/bench/lines.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { machineDocument } from '../../../src/bench/queries.ts'
import { adaptBlueprint } from '../../../src/blueprint/adapt.ts'
import type { Edit } from '../../../src/blueprint/adapt-edits.ts'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import { machineModel, machineView, suspectBelief } from '../../../src/machine/index.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { added, content, log } from '../../support/notes.ts'
import { storesOf } from '../../support/stores.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const edits: Edit[] = [
  { kind: 'part-absent', part: 'switch' },
  { kind: 'cover-absent', cover: 'motor-cover' },
]
const variant: Blueprint = { ...valueOf(adaptBlueprint(tinyBlueprint, edits)), id: 'own-tiny-1', name: 'Tiny, odd' }
const described: NoteContentInput = { kind: 'described-by', blueprint: variant.id, edits }
const opened: readonly NoteContentInput[] = [
  { kind: 'opened', cover: 'back-cover', minutes: 3 },
  { kind: 'opened', cover: 'motor-cover', minutes: 5 },
]

const bench = (): CommandDeps => {
  const blueprints = [tinyBlueprint, variant]
  let count = 0
  return {
    ...storesOf(),
    settings: memorySettingsStore(),
    bench: 'own',
    blueprintById: (id) => Promise.resolve(blueprints.find((one) => one.id === id)),
    blueprintIds: () => Promise.resolve(blueprints.map(({ id }) => id)),
    now: () => '2026-03-14T10:00:00.000Z',
    newId: () => `id-${++count}`,
  }
}

const documentOf = (outcome: CommandOutcome) => {
  if (outcome.kind !== 'done') throw new Error(outcome.kind)
  return outcome.document
}

describe('a machine that is different', () => {
  it('is read by the other blueprint from then on, and by the first again when that is struck out', () => {
    expect(foldNotes(log([added(), described])).blueprint).toBe('own-tiny-1')
    expect(foldNotes(log([added(), described, { kind: 'struck', note: 'n2' }])).blueprint).toBe('tiny')
    expect(foldNotes(log([added(), described, { kind: 'described-by', blueprint: 'other' }])).blueprint).toBe('other')
  })

  it('drops covers noted off that it does not have, and keeps the others', async () => {
    const deps = bench()
    await addMachine(deps, added({ missing: ['switch'] }), 'm1')
    for (const [index, note] of [...opened, described].entries()) await addNote(deps, 'm1', index + 1, content(note))
    const { state, notes } = (await machineDocument(deps, 'm1'))!
    expect(state.off).toEqual(['back-cover'])
    expect(state.missing).toEqual([])
    expect(jobOf(foldNotes(notes), notes, variant)).toMatchObject({ off: ['back-cover'], missing: [] })
    // Nothing of the log is lost: read by the first blueprint both covers are off.
    expect(jobOf(foldNotes(notes), notes, tinyBlueprint).off).toEqual(['back-cover', 'motor-cover'])
  })

  it('keeps readings in the log that it has no check for, and they say nothing of its suspects', () => {
    const unplugged = structuredClone(variant)
    unplugged.checks = unplugged.checks.filter(({ id }) => id !== 'flex-line')
    const reading: NoteContentInput = { kind: 'reading', check: 'flex-line', result: { kind: 'open' }, minutes: 1 }
    const gone: NoteContentInput = { kind: 'confirmed', fault: 'switch-open' }
    const notes = log([added(), reading, gone, described])
    const job = jobOf(foldNotes(notes), notes, unplugged)
    const bare = { ...job, events: [] }
    const model = machineModel(unplugged, job.plate)
    expect(suspectBelief(model, job)).toEqual(suspectBelief(model, bare))
    expect(machineView(job).suspects).toEqual(machineView(bare).suspects)
    expect(noteLines(notes, unplugged, [tinyBlueprint]).map(({ text }) => text)).toEqual([
      'Came in: Heather grey upright, paid £5.00',
      'Flex, line conductor: open',
      'Confirmed: handle switch does not close',
      'This machine is different, read by “Tiny, odd”: Handle switch: not there; Motor cover: no such cover',
    ])
  })

  it('takes later notes by the rules of the other blueprint', async () => {
    const deps = bench()
    await addMachine(deps, added(), 'm1')
    documentOf(await addNote(deps, 'm1', 1, content(described)))
    const outcome = await addNote(deps, 'm1', 2, content({ kind: 'opened', cover: 'motor-cover', minutes: 5 }))
    expect(outcome).toMatchObject({ kind: 'refused', problems: [{ code: 'unknown-cover' }] })
    const { lines } = documentOf(await addNote(deps, 'm1', 2, content(opened[0])))
    expect(lines.map(({ text }) => text).at(-1)).toBe('Opened: back cover, 3 min')
  })

  it('must be read by a blueprint that is there, and by another one than before', async () => {
    const deps = bench()
    await addMachine(deps, added(), 'm1')
    const to = (blueprint: string) => addNote(deps, 'm1', 1, content({ kind: 'described-by', blueprint }))
    expect(await to('own-tiny-2')).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'unknown-blueprint', mend: 'Use one of tiny, own-tiny-1' }],
    })
    expect(await to('tiny')).toMatchObject({ kind: 'refused', problems: [{ code: 'read-by-it-already' }] })
  })

  it('is no virtual machine: its fault belongs to the kind that it was made as', () => {
    const notes = log([added({ practiceSeed: 7 })])
    expect(checkNote(notes, content(described), tinyBlueprint)).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'virtual-machine' }],
    })
  })
})
