import { describe, expect, it } from 'vitest'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { faultyOhm, soundOhm } from '../../../src/machine/circuit.ts'
import { meterTable, type MeterTable } from '../../../src/machine/meter-table.ts'
import { spiceResistanceBatch, type ResistanceCase } from '../../support/spice.ts'
import { depth } from '../../support/depth.ts'

/**
 * Every fault × every meter check of every blueprint, read by ngspice (the eecircuit-engine package) on the same element
 * values. What is compared is the solving of the network: the program's one factorisation for many probe pairs against a
 * general circuit simulator that is given one netlist for each reading.
 */
const relativeTolerance = 1e-6

const casesOf = (blueprint: Blueprint, table: MeterTable, states: readonly (readonly number[])[]): ResistanceCase[] =>
  states.flatMap((state) =>
    table.checks.map((check) => {
      const setUp = { controls: check.controls, unplug: check.unplug }
      const elements = blueprint.circuit.map((element) => {
        const effects = state
          .flatMap((f) => blueprint.faults[f].electrical)
          .filter((effect) => effect.element === element.id)
        const sound = soundOhm(element, setUp, blueprint, blueprint.plate)
        const isUnplugged = check.unplug.includes(element.id)
        const value = isUnplugged ? sound : effects.reduce((ohm, { becomes }) => faultyOhm(ohm, becomes), sound)
        return { from: element.from, to: element.to, resistanceOhm: value.resistanceOhm }
      })
      return { elements, probes: [[check.red, check.black] as const] }
    }),
  )

const differenceOf = (ours: number, theirs: number): number => {
  if (!Number.isFinite(ours) || !Number.isFinite(theirs)) return ours === theirs ? 0 : Infinity
  return Math.abs(ours - theirs) / Math.max(Math.abs(theirs), 1e-9)
}

/** The same machine for another mains or plug is wired alike, with other figures; those are compared in the deeper run. */
const compared = depth > 1 ? blueprints : blueprints.filter(({ id }) => !/-(120-v|moulded-plug)$/.test(id))

describe.each(compared.map((blueprint) => [blueprint.id, blueprint] as const))('%s', (_id, blueprint) => {
  it('reads as ngspice reads, for every single fault and every meter check', { timeout: 300_000 }, async () => {
    const states = [[], ...blueprint.faults.map((_, f) => [f])].filter((state) =>
      state.every((f) => blueprint.faults[f].electrical.length > 0),
    )
    const table = meterTable(blueprint, blueprint.plate, states)
    const theirs = (await spiceResistanceBatch(casesOf(blueprint, table, states))).map((row) => row[0])
    const worst = { difference: 0, at: '' }
    let numbers = 0
    states.forEach((state, s) =>
      table.checks.forEach((check, c) => {
        const ours = table.resistanceOhm[c * states.length + s]
        const spice = theirs[s * table.checks.length + c]
        const difference = differenceOf(ours, spice)
        if (Number.isFinite(ours)) numbers++
        if (difference > worst.difference)
          Object.assign(worst, {
            difference,
            at: `${blueprint.faults[state[0] ?? -1]?.id ?? 'sound'} × ${check.id}: ${ours} against ${spice}`,
          })
      }),
    )
    console.log(
      `${blueprint.id}: ${states.length} states × ${table.checks.length} meter checks, ${numbers} numbers, worst relative difference ${worst.difference.toExponential(1)} ${worst.at}`,
    )
    expect(numbers).toBeGreaterThan(states.length)
    expect(worst.difference, worst.at).toBeLessThanOrEqual(relativeTolerance)
  })
})
