import type { CostFigures } from '../costs.ts'

/** Fetching a machine: money for the kilometres, and own minutes with what they are worth. */
export type Travel = {
  readonly km: number
  readonly kmMinor: number
  readonly minutes: number
  readonly timeMinor: number
  readonly minor: number
}

/** There and back by car, and the minutes at the door. `distanceKm` is one way. Minor units; not rounded. */
export const travelOf = (
  distanceKm: number,
  { perKmMinor, minutesPerKm, collectMin }: Pick<CostFigures, 'perKmMinor' | 'minutesPerKm' | 'collectMin'>,
  hourMinor: number,
): Travel => {
  const km = 2 * distanceKm
  const minutes = km * minutesPerKm + collectMin
  const [kmMinor, timeMinor] = [km * perKmMinor, (minutes * hourMinor) / 60]
  return { km, kmMinor, minutes, timeMinor, minor: kmMinor + timeMinor }
}
