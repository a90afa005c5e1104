import type { Blueprint, Check } from '../../blueprint/schema.ts'
import { coversFor } from '../planning/covers-for.ts'

/** Nobody lets a buyer do more than this on a doorstep, minutes. Judgement. */
const longestMin = 3

/** Whether a check can be made at the seller's: no power, no cover off, no wire unplugged. */
export const isForTheSpot = (blueprint: Blueprint, check: Check): boolean =>
  (check.kind === 'look' || (check.kind === 'meter' && check.unplug.length === 0)) &&
  coversFor(blueprint, check).length === 0 &&
  check.minutes <= longestMin
