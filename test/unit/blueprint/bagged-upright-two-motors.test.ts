import { describe, expect, it } from 'vitest'
import { blueprintById, blueprints } from '../../../src/blueprint/library.ts'
import type { Blueprint, Check, GradedCheck, MeterCheck } from '../../../src/blueprint/schema.ts'
import { readInState } from '../../../src/machine/meter-table.ts'

const find = (id: string): Blueprint => {
  const found = blueprintById(id)
  if (found === undefined) throw new Error(`no blueprint ${id}`)
  return found
}

const blueprint = find('bagged-upright-two-motors')
const meterChecks = blueprint.checks.filter((check): check is MeterCheck => check.kind === 'meter')
const gradedChecks = blueprint.checks.filter((check): check is GradedCheck => check.kind !== 'meter')
const running = (check: Check): boolean => check.kind === 'run' || check.kind === 'air'

const read = (checkId: string, faultIds: readonly string[] = []): number => {
  const check = meterChecks.find(({ id }) => id === checkId)
  if (check === undefined) throw new Error(`no meter check ${checkId}`)
  const state = faultIds.map((id) => blueprint.faults.findIndex((fault) => fault.id === id)).toSorted((a, b) => a - b)
  if (state.includes(-1)) throw new Error(`unknown fault among ${faultIds.join()}`)
  return readInState(blueprint, blueprint.plate, check, state, () => 1)
}

describe('the library', () => {
  it('has each blueprint once and finds it by id', () => {
    expect(new Set(blueprints.map(({ id }) => id)).size).toBe(blueprints.length)
    expect(blueprints.map(({ id }) => blueprintById(id))).toEqual(blueprints)
    expect(blueprintById('no-such-machine')).toBeUndefined()
  })
})

describe('bagged upright with two motors', () => {
  it('is described in depth', () => {
    expect(blueprint.faults.length).toBeGreaterThanOrEqual(40)
    expect(blueprint.checks.length).toBeGreaterThanOrEqual(40)
    expect(blueprint.points.length).toBeGreaterThanOrEqual(18)
    expect(blueprint.covers.length).toBeGreaterThanOrEqual(8)
    expect(new Set(blueprint.faults.map(({ part }) => blueprint.parts.find(({ id }) => id === part)!.group))).toEqual(
      new Set(['electrical', 'air', 'mechanical', 'control']),
    )
  })

  it('draws each point at a place of its own, on the grid of 24 by 14', () => {
    expect(new Set(blueprint.points.map(({ at }) => at.join())).size).toBe(blueprint.points.length)
    for (const { at } of blueprint.points) {
      expect(at[0]).toBeGreaterThanOrEqual(0)
      expect(at[0]).toBeLessThanOrEqual(24)
      expect(at[1]).toBeGreaterThanOrEqual(0)
      expect(at[1]).toBeLessThanOrEqual(14)
    }
  })

  it('lets two faults of one element never be there together', () => {
    const touching = (element: string) =>
      blueprint.faults.filter((f) => f.electrical.some((e) => e.element === element))
    const clashes = blueprint.circuit.flatMap(({ id }) =>
      touching(id).flatMap((a) =>
        touching(id)
          .filter((b) => a.id < b.id && !a.excludes.includes(b.id))
          .map((b) => `${id}: ${a.id}, ${b.id}`),
      ),
    )
    expect(clashes).toEqual([])
  })

  it('shares no component of the open data out more than once over', () => {
    const shares = new Map<string, number>()
    for (const { rate } of blueprint.faults) {
      if (rate.component !== undefined)
        shares.set(rate.component.id, (shares.get(rate.component.id) ?? 0) + rate.component.share)
    }
    expect([...shares].filter(([, share]) => share > 1 + 1e-9)).toEqual([])
  })

  // Weights of machines with this architecture in the trade catalogue, shared/facts/trade.md section 2: the whole of each row.
  it.each([
    ['P04', 5],
    ['P05', 10],
    ['P13', 5],
    ['P16', 6],
    ['P17', 3],
    ['P18', 3],
    ['P19', 2],
    ['H12', 4],
    ['H14', 7],
    ['H19', 3],
    ['M01', 8],
    ['A06', 12],
    ['H04', 14],
  ])('gives row %s of the catalogue its weight, %d in a hundred', (row, weight) => {
    const faults = blueprint.faults.filter(({ rate }) => new RegExp(`^row ${row}\\b`).test(rate.source.clause ?? ''))
    expect(faults.reduce((sum, { rate }) => sum + rate.perHundred, 0)).toBeCloseTo(weight, 9)
  })

  it('proves that it works by one run, in which every fault shows but those the meter or a look finds, or the cleaning before it takes away', () => {
    const proof = gradedChecks.filter((check) => check.provesWorking)
    expect(proof.map(({ id }) => id)).toEqual(['run-full'])
    const silent = blueprint.faults.filter((fault) => fault.electrical.length === 0 && !(fault.id in proof[0].under))
    const cleaned = silent.filter(({ saleShareIfLeft }) => saleShareIfLeft >= 0.95).map(({ id }) => id)
    expect(cleaned.toSorted()).toEqual(
      ['bag-full', 'bag-split', 'exhaust-filter-clogged', 'pre-motor-filter-clogged', 'roll-jammed'].toSorted(),
    )
    expect(
      silent
        .map(({ id }) => id)
        .filter((id) => !cleaned.includes(id))
        .toSorted(),
    ).toEqual([
      'casing-cracked',
      'casing-open',
      'earlier-unsafe-repair',
      'flex-sheath-damaged',
      'plug-damaged',
      'plug-fuse-wrong',
    ])
  })
})

describe('its safety', () => {
  it('has the first looks and the dead meter checks before anything is run', () => {
    expect(
      blueprint.checks
        .filter((check) => check.beforeRunning)
        .map(({ id }) => id)
        .toSorted(),
    ).toEqual(
      [
        'line-pin-to-metal',
        'look-casing',
        'look-flex',
        'look-plug',
        'look-wet',
        'neutral-pin-to-metal',
        'pins-on',
      ].toSorted(),
    )
  })

  it.each(meterChecks.map((check) => [check.id, check.how] as const))('meter check %s has the plug out', (_id, how) => {
    expect(how).toMatch(/^Plug out/)
  })

  it.each(gradedChecks.filter(running).map((check) => [check.id, check] as const))(
    '%s states its guard',
    (_id, check) => {
      expect(check.how).toMatch(/covers on/i)
      expect(check.how).toMatch(/RCD socket of 30 mA or less/)
      expect(check.how).toMatch(/plug out/i)
      expect(check.controls['mains-switch']).toBe('on')
    },
  )

  it('runs with no look: a look has the plug out', () => {
    for (const check of gradedChecks.filter(({ kind }) => kind === 'look'))
      expect(check.how, check.id).toMatch(/^Plug out/)
  })

  it('fails a look before running by danger alone, and only for faults that are a danger', () => {
    for (const check of gradedChecks.filter(({ beforeRunning }) => beforeRunning)) {
      expect(
        check.outcomes.slice(1).every(({ danger }) => danger),
        check.id,
      ).toBe(true)
      const causes = blueprint.faults.filter((fault) => fault.id in check.under)
      expect(
        causes.filter(({ danger }) => danger === undefined).map(({ id }) => id),
        check.id,
      ).toEqual([])
    }
  })

  it('offers neither a bridged cut-out, a left-out capacitor nor a taped flex, and says why', () => {
    const forbidden = (id: string) => blueprint.repairs.find((repair) => repair.id === id)?.forbidden
    expect(forbidden('cut-out-new')).toMatch(/bridging/i)
    expect(forbidden('capacitor-new')).toMatch(/leaving it out/i)
    expect(forbidden('flex-new')).toMatch(/tape/i)
  })
})

describe('what its meter checks read', () => {
  // Trade: pin to pin, switch on, 1 to 30 Ω means the motor's path is complete; under 1 Ω is a short (field check, section 1.2).
  it('reads a motor on a sound machine, pin to pin', () => {
    expect(read('pins-on')).toBeGreaterThan(1)
    expect(read('pins-on')).toBeLessThan(30)
    expect(read('pins-off')).toBe(Infinity)
  })

  it.each(['flex-short', 'pinched-wire-short', 'capacitor-shorted'])('reads a short under 1 Ω: %s', (fault) => {
    expect(read('pins-on', [fault])).toBeLessThan(1)
  })

  // Healthy winding of a motor of about 1,100 W at 230 V: 3 to 17 Ω (electrical figures, section 5.2: 900 W 2.9–17, 1,200 W 2.1–13).
  it('reads 3 to 17 Ω at the suction motor’s own leads, and cannot tell shorted turns from sound', () => {
    const sound = read('motor-at-leads')
    expect(sound).toBeGreaterThan(3)
    expect(sound).toBeLessThan(17)
    expect(read('motor-at-leads', ['armature-shorted'])).toBeGreaterThan(3)
  })

  // IEC 60228 class 5, 1 mm²: at most 19.5 Ω/km at 20 °C, so 0.195 Ω a core of 10 m; contacts add a few hundredths.
  it('reads a flex core under 0.25 Ω from pin to handle', () => {
    expect(read('line-pin-to-entry')).toBeLessThan(0.25)
    expect(read('neutral-pin-to-entry')).toBeLessThan(0.25)
  })

  it('tells the halves apart: each core, the loom, the cut-out, the neck', () => {
    expect(read('line-pin-to-entry', ['flex-entry-line-open'])).toBe(Infinity)
    expect(read('neutral-pin-to-entry', ['flex-entry-line-open'])).toBeLessThan(1)
    expect(read('loom-line-through', ['loom-line-open'])).toBe(Infinity)
    expect(read('cut-out-through', ['cut-out-blown'])).toBe(Infinity)
    expect(read('neck-line-through', ['neck-line-open'])).toBe(Infinity)
  })

  it('sees an unplugged motor alone: open is open, though board and capacitor hang on the same wires', () => {
    expect(read('motor-at-leads', ['field-open'])).toBe(Infinity)
    expect(read('body-line-to-neutral', ['field-open'])).toBeGreaterThan(1e5)
  })

  it('sees the board’s standby load, and sees it gone', () => {
    expect(read('board-standby')).toBeGreaterThan(3e5)
    expect(read('board-standby')).toBeLessThan(1e6)
    expect(read('board-standby', ['board-dead'])).toBe(Infinity)
  })

  it('sees the park switch in both positions', () => {
    expect(read('park-reclined')).toBeLessThan(1)
    expect(read('park-upright')).toBe(Infinity)
    expect(read('park-upright', ['park-switch-closed'])).toBeLessThan(1)
    expect(read('park-reclined', ['park-switch-open'])).toBe(Infinity)
  })

  it('sees a path to bare metal from either pin', () => {
    for (const fault of ['winding-to-metal', 'pinched-wire-metal', 'water-in-motor']) {
      expect(read('line-pin-to-metal', [fault]), fault).toBeLessThan(2e7)
      expect(read('neutral-pin-to-metal', [fault]), fault).toBeLessThan(2e7)
    }
    expect(read('line-pin-to-metal')).toBe(Infinity)
  })

  it('leaves every electrical fault visible to the meter, but an open triac', () => {
    const shows = (fault: string) =>
      meterChecks.some(
        ({ id }) =>
          Math.abs(Math.log((read(id, [fault]) + 1e-3) / (read(id) + 1e-3))) > 0.05 ||
          Number.isFinite(read(id, [fault])) !== Number.isFinite(read(id)),
      )
    const hidden = blueprint.faults
      .filter((fault) => fault.electrical.length > 0 && !shows(fault.id))
      .map(({ id }) => id)
    expect(hidden).toEqual(['triac-open'])
  })
})
