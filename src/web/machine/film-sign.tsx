import type { MachineDocument } from '../../bench/contract.ts'
import { Link } from '../router.tsx'
import { useSheet } from './sheet.ts'

/** A small sign that the film clock of this machine runs, so that nobody forgets it. */
export const FilmSign = () => {
  const { bench, document } = useSheet()
  if (document.state.left !== null || !isFilmClockOn(document)) return null
  return (
    <p className="film-sign">
      <span className="camera-dot" aria-hidden="true" />{' '}
      <Link to={{ kind: 'story', bench, id: document.state.id }}>Film clock is running</Link>
    </p>
  )
}

/** Whether the last word on the camera that stands is that it runs. */
export const isFilmClockOn = ({ notes, lines }: Pick<MachineDocument, 'notes' | 'lines'>): boolean => {
  const struck = new Set(lines.filter((line) => line.struck).map(({ id }) => id))
  const last = notes
    .filter(({ id, content }) => content.kind === 'camera' && !struck.has(id))
    .toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at) || a.seq - b.seq)
    .at(-1)
  return last?.content.kind === 'camera' && last.content.state === 'rolling'
}
