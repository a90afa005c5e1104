import { describe, expect, it } from 'vitest'
import { addMachine, type CommandDeps } from '../../../src/bench/commands.ts'
import { costsOf } from '../../../src/bench/costs.ts'
import { changeSettings, currentSettings, settingsOf } from '../../../src/bench/settings.ts'
import { memorySettingsStore } from '../../../src/store/memory/settings-store.ts'
import { added } from '../../support/notes.ts'
import { storesOf } from '../../support/stores.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const bench = (): CommandDeps => {
  let count = 0
  return {
    ...storesOf(),
    settings: memorySettingsStore(),
    bench: 'own',
    blueprintById: (id) => (id === tinyBlueprint.id ? tinyBlueprint : undefined),
    blueprintIds: () => [tinyBlueprint.id],
    now: () => '2026-03-14T10:00:00.000Z',
    newId: () => `id-${++count}`,
  }
}

const hourOf = async (deps: CommandDeps, machine: string): Promise<unknown> => {
  const [first] = await deps.store.notes(machine)
  return first?.content.kind === 'added' ? first.content.hourMinor : null
}

describe('settings', () => {
  it('hold until something else is set; what a change leaves out stays', async () => {
    const deps = bench()
    expect(await currentSettings(deps.settings)).toEqual({
      hourMinor: 800,
      currency: 'GBP',
      attitude: 'average',
      region: 'UK',
      checkedBy: '',
      keepOriginals: false,
      costs: {},
    })
    await changeSettings(deps, { hourMinor: 0, currency: 'NZD' })
    const outcome = await changeSettings(deps, { attitude: 'cautious' })
    expect(outcome).toEqual({
      kind: 'changed',
      settings: {
        hourMinor: 0,
        currency: 'NZD',
        attitude: 'cautious',
        region: 'UK',
        checkedBy: '',
        keepOriginals: false,
        costs: {},
      },
    })
  })

  it('keep the day of each change, so that the earlier ones can be looked at', async () => {
    const deps = bench()
    await changeSettings(deps, { hourMinor: 900 })
    expect(await deps.settings.changes()).toEqual([{ at: deps.now(), change: { hourMinor: 900 } }])
  })

  it('refuse a change of nothing, and write nothing', async () => {
    const deps = bench()
    expect(await changeSettings(deps, {})).toMatchObject({ kind: 'refused', problems: [{ code: 'nothing-given' }] })
    expect(await deps.settings.changes()).toEqual([])
  })

  it('are those of two hands that change different things at once', () => {
    const one = { at: '2026-03-14T10:00:00.000Z', change: { hourMinor: 950 } }
    const other = { at: '2026-03-14T10:00:00.000Z', change: { attitude: 'cautious' as const } }
    expect(settingsOf([one, other])).toEqual(settingsOf([other, one]))
  })
})

describe('what things cost', () => {
  it('follows the region until it is set; null puts it back', async () => {
    const deps = bench()
    const costs = async () => costsOf(await currentSettings(deps.settings))
    const usual = await costs()
    await changeSettings(deps, { costs: { postageMinor: 350, partFeeShare: 0 } })
    expect(await costs()).toMatchObject({ postageMinor: 350, partFeeShare: 0, collectMin: usual.collectMin })
    expect((await costs()).from).toMatchObject({ postageMinor: 'set', partFeeShare: 'set' })
    await changeSettings(deps, { costs: { postageMinor: null } })
    expect((await currentSettings(deps.settings)).costs).toEqual({ partFeeShare: 0 })
    await changeSettings(deps, { costs: { partFeeShare: null } })
    expect(await costs()).toEqual(usual)
  })

  it('an amount that was set in one currency does not hold for a machine in another; minutes and shares do', () => {
    const settings = { region: 'UK', currency: 'GBP', costs: { materialsMinor: 100, collectMin: 3 } } as const
    expect(costsOf(settings)).toMatchObject({ materialsMinor: 100, collectMin: 3 })
    const abroad = costsOf(settings, 'EUR')
    expect(abroad).toMatchObject({
      materialsMinor: costsOf({ ...settings, region: 'EU', currency: 'EUR', costs: {} }).materialsMinor,
      collectMin: 3,
    })
    expect(abroad.from.materialsMinor).not.toBe('set')
  })

  it('a change that names no cost is a change of nothing', async () => {
    expect(await changeSettings(bench(), { costs: {} })).toMatchObject({ problems: [{ code: 'nothing-given' }] })
  })

  it('two hands that set different costs both have their way', () => {
    const one = { at: '2026-03-14T10:00:00.000Z', change: { costs: { collectMin: 5 } } }
    const other = { at: '2026-03-14T10:00:00.000Z', change: { costs: { comebackMin: 30 } } }
    expect(settingsOf([one, other]).costs).toEqual({ collectMin: 5, comebackMin: 30 })
    expect(settingsOf([one, other])).toEqual(settingsOf([other, one]))
  })
})

describe('a new machine', () => {
  it('takes the hour over, unless another one is given with it', async () => {
    const deps = bench()
    await changeSettings(deps, { hourMinor: 950 })
    await addMachine(deps, added(), 'm1')
    await addMachine(deps, added({ hourMinor: 0 }), 'm2')
    await changeSettings(deps, { hourMinor: 1200 })
    expect([await hourOf(deps, 'm1'), await hourOf(deps, 'm2')]).toEqual([950, 0])
  })

  it('may be sent again after the settings have changed', async () => {
    const deps = bench()
    await addMachine(deps, added(), 'm1')
    await changeSettings(deps, { hourMinor: 1200 })
    expect((await addMachine(deps, added(), 'm1')).kind).toBe('done')
    expect((await addMachine(deps, added({ hourMinor: 1200 }), 'm1')).kind).toBe('conflict')
    expect(await hourOf(deps, 'm1')).toBe(800)
  })
})
