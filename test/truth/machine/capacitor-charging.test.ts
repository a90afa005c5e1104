import { describe, expect, it } from 'vitest'
import type { NetworkElement } from '../../../src/engines/network/index.ts'
import { chargedShare, chargingMeter, climbingS, visibleCapacitanceF } from '../../../src/facts/charging.ts'
import { meterTable } from '../../../src/machine/meter-table.ts'
import { spiceAc, spiceRun } from '../../support/spice.ts'
import { withCapacitors } from '../../support/tiny-blueprint.ts'

/** ngspice's own integration in time: a meter of 0.4 V behind 10 MΩ on a capacitor that starts empty. */
const chargedBySpice = async (capacitanceF: number, timeS: number): Promise<number> => {
  const netlist = [
    'meter on a capacitor',
    'v1 a 0 dc 0.4',
    `r1 a b ${chargingMeter.seriesOhm}`,
    `c1 b 0 ${capacitanceF} ic=0`,
    `.tran ${timeS / 2000} ${timeS} 0 ${timeS / 2000} uic`,
    '.save v(b)',
    '.end',
    '',
  ].join('\n')
  return (await spiceRun(netlist)).get('v(b)')!.re / 0.4
}

describe('charging a capacitor with an ohmmeter', () => {
  /** Textbooks: 63.2 % after one time constant, 86.5 % after two, 99.3 % after five. */
  it.each([
    [1, 0.632],
    [2, 0.865],
    [5, 0.993],
  ])('after %s time constants the voltage is %s of the last', (count, share) => {
    expect(chargedShare(count * 2, 1e7, 0.2e-6)).toBeCloseTo(share, 3)
  })

  it.each([0.02e-6, 0.1e-6, 0.47e-6])(
    '%s F charges as ngspice charges it, and is at the end of the range when the climb ends',
    async (c) => {
      const end = climbingS(c)
      for (const timeS of [0.3 * end, end]) {
        expect(await chargedBySpice(c, timeS)).toBeCloseTo(chargedShare(timeS, chargingMeter.seriesOhm, c), 3)
      }
      const share = chargedShare(end, chargingMeter.seriesOhm, c)
      expect((chargingMeter.seriesOhm * share) / (1 - share)).toBeCloseTo(chargingMeter.rangeOhm, -1)
    },
  )

  it('worked by hand: 0.1 µF on 10 MΩ, range 40 MΩ: 1 s × ln 5 = 1.61 s', () => {
    expect(climbingS(0.1e-6)).toBeCloseTo(1.609, 3)
  })

  it('the smallest capacitor in sight climbs for about one figure of the display', () => {
    expect(climbingS(visibleCapacitanceF) / chargingMeter.updateS).toBeGreaterThan(0.8)
    expect(climbingS(visibleCapacitanceF) / chargingMeter.updateS).toBeLessThan(1.2)
  })
})

describe('capacitance between two points', () => {
  it('is that of ngspice at a frequency so low that resistances do not count', async () => {
    const frequencyHz = 1
    const blueprint = withCapacitors([
      { id: 'c1', from: 'plug.l', to: 'plug.n', capacitanceF: 0.1e-6 },
      { id: 'c2', from: 'switch.out', to: 'metal', capacitanceF: 2.2e-9 },
      { id: 'c3', from: 'plug.n', to: 'metal', capacitanceF: 4.7e-9 },
      { id: 'c4', from: 'switch.in', to: 'switch.out', capacitanceF: 0.047e-6 },
    ])
    const states = [[], ...blueprint.faults.map((_, f) => [f])]
    const table = meterTable(blueprint, blueprint.plate, states)
    const open = states.flatMap((state, s) =>
      table.checks.flatMap((check, row) =>
        table.resistanceOhm[row * states.length + s] === Infinity ? [{ state, s, check, row }] : [],
      ),
    )
    const impedances = await spiceAc(
      open.map(({ state, check }) => ({
        elements: blueprint.circuit.flatMap((element): NetworkElement[] => {
          const { id, from, to } = element
          if (check.unplug.includes(id) || element.kind === 'stray') return []
          if (element.kind === 'capacitor')
            return [{ kind: 'capacitor', id, from, to, capacitanceF: element.capacitanceF }]
          if (element.kind === 'contact' && check.controls['handle'] !== 'on') return []
          const opened = state.some((f) => blueprint.faults[f].electrical.some((e) => e.element === id))
          return opened ? [] : [{ kind: 'resistor', id, from, to, resistanceOhm: 5 }]
        }),
        probes: [[check.red, check.black] as const],
      })),
      frequencyHz,
    )
    let compared = 0
    open.forEach(({ s, row }, i) => {
      const { re, im } = impedances[i][0]
      const ours = table.capacitanceF[row * states.length + s]
      // ngspice holds unjoined nodes with 10¹² Ω; a picofarad is nothing here.
      const theirs = 1 / (2 * Math.PI * frequencyHz * Math.hypot(re, im))
      if (ours === 0) expect(theirs).toBeLessThan(1e-9)
      else {
        expect(Math.abs(ours - theirs) / theirs).toBeLessThan(1e-3)
        compared++
      }
    })
    expect(compared).toBeGreaterThan(4)
  })
})
