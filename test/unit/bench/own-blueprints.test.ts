import { describe, expect, it } from 'vitest'
import { blueprintFinder, keepBlueprint, keepVariant, type BlueprintDeps } from '../../../src/bench/blueprints.ts'
import { nextOwnId, slugOf } from '../../../src/bench/own-blueprint.ts'
import type { Edit } from '../../../src/blueprint/adapt-edits.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { gateProblems } from '../../../src/machine/index.ts'
import { memoryBlueprintStore } from '../../../src/store/memory/blueprint-store.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const shelf = (): BlueprintDeps => ({
  library: [tinyBlueprint],
  own: memoryBlueprintStore(),
  now: () => '2026-03-14T10:00:00.000Z',
})
const noSwitch: Edit[] = [{ kind: 'part-absent', part: 'switch' }]
const elsewhere: Edit[] = [{ kind: 'part-moved', part: 'switch', behind: 'back-cover' }]

describe('ids of own blueprints', () => {
  it('say the name in plain letters, and the revision', () => {
    expect(slugOf('Görel 2, no cut-out!')).toBe('gorel-2-no-cut-out')
    expect(slugOf('吸尘器')).toBe('blueprint')
    expect(slugOf(`${'long '.repeat(30)}`)).toMatch(/^(long-){7}long$/)
    expect(nextOwnId('Tiny', [])).toBe('own-tiny-1')
    expect(nextOwnId('Tiny', ['own-tiny-1', 'own-tiny-9', 'own-tiny-odd-12', 'own-tinyish-3'])).toBe('own-tiny-10')
  })
})

describe('a variant', () => {
  it('is kept whole with what it was made from; the same name again makes a new revision', async () => {
    const deps = shelf()
    expect(await keepVariant(deps, 'tiny', { name: 'Tiny odd', edits: noSwitch })).toMatchObject({
      kind: 'kept',
      id: 'own-tiny-odd-1',
      isNew: true,
    })
    expect(await keepVariant(deps, 'tiny', { name: 'Tiny odd', edits: elsewhere })).toMatchObject({
      id: 'own-tiny-odd-2',
    })
    const [first] = await deps.own.list()
    expect(first).toMatchObject({
      name: 'Tiny odd',
      base: 'tiny',
      edits: noSwitch,
      savedAt: '2026-03-14T10:00:00.000Z',
      blueprint: { id: 'own-tiny-odd-1', name: 'Tiny odd', controls: [] },
    })
  })

  it('sent again is not kept twice', async () => {
    const deps = shelf()
    await keepVariant(deps, 'tiny', { name: 'Tiny odd', edits: noSwitch })
    expect(await keepVariant(deps, 'tiny', { name: 'Tiny odd', edits: noSwitch })).toMatchObject({
      kind: 'kept',
      id: 'own-tiny-odd-1',
      isNew: false,
    })
    expect(await deps.own.list()).toHaveLength(1)
  })

  it('can be adapted again', async () => {
    const deps = shelf()
    await keepVariant(deps, 'tiny', { name: 'Odd', edits: elsewhere })
    const again = await keepVariant(deps, 'own-odd-1', { name: 'Odder', edits: noSwitch })
    expect(again).toMatchObject({ kind: 'kept', id: 'own-odder-1' })
    expect((await deps.own.get('own-odder-1'))?.base).toBe('own-odd-1')
  })

  it('of what is not there, or of nothing different, is refused', async () => {
    const deps = shelf()
    expect(await keepVariant(deps, 'tinny', { name: 'Odd', edits: noSwitch })).toMatchObject({ kind: 'missing' })
    expect(await keepVariant(deps, 'tiny', { name: 'Odd', edits: [] })).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'nothing-different' }],
    })
    expect(await deps.own.list()).toEqual([])
  })

  it('that no sound machine could be run as is refused', async () => {
    const deps = shelf()
    const gated = structuredClone(tinyBlueprint)
    const pins = gated.checks.find(({ id }) => id === 'pins-on')
    // Before running, the pins must be parted with the switch off.
    Object.assign(pins!, { beforeRunning: true, controls: {}, passesAtLeastOhm: 1e6 })
    expect(gateProblems(gated)).toEqual([])
    const outcome = await keepVariant({ ...deps, library: [gated] }, 'tiny', { name: 'Odd', edits: noSwitch })
    expect(outcome).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'gate-not-passed-when-sound', where: 'checks.pins-on' }],
    })
  })
})

describe('a whole blueprint', () => {
  it('taken in gets an id of its own; what was given out and comes back is known again', async () => {
    const deps = shelf()
    const written = { ...tinyBlueprint, id: 'mine', name: 'Mine' }
    const first = await keepBlueprint(deps, written)
    expect(first).toMatchObject({ kind: 'kept', id: 'own-mine-1', isNew: true })
    const file: unknown = JSON.parse(JSON.stringify((await deps.own.get('own-mine-1'))?.blueprint))
    expect(await keepBlueprint(deps, file)).toMatchObject({ kind: 'kept', id: 'own-mine-1', isNew: false })
    expect(await keepBlueprint(deps, tinyBlueprint)).toMatchObject({ id: 'tiny', isNew: false })
  })

  it('with mistakes is refused with each of them', async () => {
    const deps = shelf()
    const broken = structuredClone(tinyBlueprint)
    broken.supply.line = 'plug.ll'
    expect(await keepBlueprint(deps, broken)).toMatchObject({
      kind: 'refused',
      problems: [{ code: 'unknown-point', where: 'supply.line', mend: expect.stringContaining('plug.l') as string }],
    })
    expect(await keepBlueprint(deps, 'no blueprint')).toMatchObject({ kind: 'refused' })
    expect(await deps.own.list()).toEqual([])
  })
})

it('the finder gives the same object each time, from the library or from one’s own', async () => {
  const deps = shelf()
  await keepVariant(deps, 'tiny', { name: 'Odd', edits: noSwitch })
  const find = blueprintFinder(deps.library, deps.own)
  expect(await find('tiny')).toBe(tinyBlueprint)
  expect(await find('own-odd-1')).toBe(await find('own-odd-1'))
  expect(await find('huge')).toBeUndefined()
})

it('a sound machine passes the checks before running of every blueprint that comes with the program', () => {
  expect(blueprints.flatMap(gateProblems)).toEqual([])
})
