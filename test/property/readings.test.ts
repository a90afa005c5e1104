import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { blueprints } from '../../src/blueprint/library.ts'
import { electricalStates } from '../../src/machine/electrical-state.ts'
import { meterTable, readInState } from '../../src/machine/meter-table.ts'
import { suspectSets } from '../../src/engines/belief/index.ts'

describe.each(blueprints.map((blueprint) => [blueprint.id, blueprint] as const))('readings of %s', (_id, blueprint) => {
  const { states } = electricalStates(blueprint, suspectSets(blueprint.faults, 2))
  const table = meterTable(blueprint, blueprint.plate, states)

  it('the table says what one circuit solved on its own says', () => {
    fc.assert(
      fc.property(fc.nat(table.checks.length - 1), fc.nat(states.length - 1), (c, s) => {
        const alone = readInState(blueprint, blueprint.plate, table.checks[c], states[s], () => 1)
        const inTable = table.resistanceOhm[c * states.length + s]
        return alone === inTable || Math.abs(alone - inTable) <= 1e-9 * alone
      }),
      { seed: 1, numRuns: 400 },
    )
  })

  it('the spread is that of drawing the parts’ values: first-order against 4,000 draws, on readings that are finite', () => {
    const check = table.checks.findIndex(
      (c, i) => Number.isFinite(table.resistanceOhm[i * states.length]) && c.unplug.length === 0,
    )
    const sd = table.sdOhm[check * states.length]
    const mean = table.resistanceOhm[check * states.length]
    let seed = 12345
    const uniform = () => ((seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0) + 0.5) / 4294967296
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
    // Small spreads only: a tenth of each, for which first order holds; the standard deviation then scales by a tenth.
    const draws = Array.from({ length: 4000 }, () =>
      readInState(blueprint, blueprint.plate, table.checks[check], [], (_element, spread) =>
        Math.exp(0.1 * spread * normal()),
      ),
    )
    const sample = Math.sqrt(draws.reduce((sum, x) => sum + (x - mean) ** 2, 0) / draws.length)
    expect(sample / (0.1 * sd)).toBeGreaterThan(0.93)
    expect(sample / (0.1 * sd)).toBeLessThan(1.07)
  })
})
