import { standardAir } from '../../facts/air.ts'

/** Standard air, as the airflow engine takes it. */
export const standardRoom = {
  kind: 'given',
  pressurePa: standardAir.pressurePa,
  densityKgPerM3: standardAir.densityKgPerM3,
} as const
