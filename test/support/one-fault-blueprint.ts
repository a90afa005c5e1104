import { blueprintSchema, type Blueprint } from '../../src/blueprint/schema.ts'
import { tinyBlueprint } from './tiny-blueprint.ts'

/** What repairing its one fault takes; invented, to be followed by hand. */
export const oneFault = { repairMin: 15, partsMinor: 700, success: 0.8, runMin: 2, saleMinor: 8000 } as const

/**
 * A machine with one fault, one repair that works four times in five, and a run that never errs; spares bring nothing. So the
 * quick formula's assumptions hold: it is mended and sold, or thrown away.
 */
export const oneFaultBlueprint: Blueprint = blueprintSchema.parse({
  ...tinyBlueprint,
  id: 'one-fault',
  faults: tinyBlueprint.faults
    .filter(({ id }) => id === 'flex-open')
    .map((fault) => ({ ...fault, danger: undefined, complaints: { dead: 1 } })),
  checks: tinyBlueprint.checks
    .filter(({ id }) => id === 'run')
    .map((check) => ({
      ...check,
      cannotTell: 0,
      minutes: oneFault.runMin,
      driven: undefined,
      sound: { runs: 1, weak: 0, dead: 0 },
      under: { 'flex-open': { runs: 0, weak: 0, dead: 1 } },
    })),
  repairs: tinyBlueprint.repairs
    .filter(({ id }) => id === 'refit-flex')
    .map((repair) => ({
      ...repair,
      options: repair.options.map((option) => ({
        ...option,
        minutes: oneFault.repairMin,
        costMinor: { low: oneFault.partsMinor, high: oneFault.partsMinor },
        success: oneFault.success,
        breakRisk: 0,
      })),
    })),
  worth: {
    ...tinyBlueprint.worth,
    workingMinor: { low: oneFault.saleMinor, high: oneFault.saleMinor },
    sparesMinor: { low: 0, high: 0 },
  },
})
