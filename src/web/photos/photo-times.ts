import type { PhotoTime } from '../../bench/photos/photo-note.ts'
import type { SaleShot } from '../../facts/sale-shots.ts'

/** When a photograph was taken, in the order of the work. */
export const timeNames = {
  before: 'Before',
  work: 'At work',
  after: 'After',
} as const satisfies Record<PhotoTime, string>

/** When a shot that sells is filed: as was pressed; else as it is sold. The shots of the gauge say it in their names. */
export const shotTime = (shot: SaleShot, pressed: PhotoTime | null): PhotoTime => {
  if (shot === 'gauge-before') return 'before'
  if (shot === 'gauge-after') return 'after'
  return pressed ?? 'after'
}
