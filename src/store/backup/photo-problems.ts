import { problem, type Problem } from '../../base/problem.ts'
import type { KeptSize } from '../copy/kept-photos.ts'

const mend = 'Look for it in an older backup'

/** A note names a photograph that is not there. */
export const photoMissing = (id: string): Problem =>
  problem('photograph-missing', `photograph ${id}`, 'A note names this photograph, and it is not there', mend)

/** A photograph's file is not what was written. */
export const photoDamaged = (id: string, size: KeptSize): Problem =>
  problem('photograph-damaged', `photograph ${id}, ${size}`, 'This photograph is not as it was written', mend)
