import { inSentence } from '../../base/in-sentence.ts'
import type { AirWayView } from '../../machine/air/air-view.ts'
import type { Place } from './place.ts'

/** How the machine would be set up: `19 mm hole at the end of the hose, without the bag`. */
export const setUpName = (place: Place, ways: readonly AirWayView[]): string => {
  const way = ways.find(({ id }) => id === place.way)
  const nameOf = (parts: AirWayView['taps'], part: string): string =>
    inSentence(parts.find((one) => one.part === part)?.name ?? part)
  return [
    `${openingName(place)} at the ${inSentence(way?.name ?? place.way)}`,
    place.tapBefore === '' ? '' : `tapped before the ${nameOf(way?.taps ?? [], place.tapBefore)}`,
    place.out.length === 0
      ? ''
      : `without the ${place.out.map((part) => nameOf(way?.outs ?? [], part)).join(' and the ')}`,
    place.measure === 'suction' ? '' : place.measure === 'airflow' ? 'airflow with a vane' : 'pitch of the motor',
  ]
    .filter((part) => part !== '')
    .join(', ')
}

const openingName = ({ opening, holeMm }: Place): string => {
  if (opening === 'sealed' || opening === 'open') return opening
  return holeMm.trim() === '' ? 'another hole' : `${holeMm.trim()} mm hole`
}
