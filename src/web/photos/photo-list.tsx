import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { MachinePhoto, PhotosView } from '../../bench/photos/machine-photos.ts'
import { Problems } from '../parts/problems.tsx'
import { useSettings } from '../queries.ts'
import { useNotes } from '../use-notes.ts'
import { momentText } from '../words.ts'
import { PhotoImage, usePhotoAddress } from './photo-image.tsx'
import { photoAddress } from './send-photo.ts'

/** What the work did: before and after side by side. */
export const PhotoPairs = ({ photos, textOf }: { readonly photos: PhotosView; readonly textOf: TextOf }) =>
  photos.pairs.length === 0 ? null : (
    <section className="panel" aria-label="Before and after">
      <h2>Before and after</h2>
      {photos.pairs.map(({ before, after }) => (
        <div key={`${before.note} ${after.note}`} className="photo-pair">
          <Picture photo={before} text={textOf(before)} />
          <Picture photo={after} text={textOf(after)} />
        </div>
      ))}
    </section>
  )

type TextOf = (photo: MachinePhoto) => string

/** What the log says of a photograph. */
export const textsOf = ({ lines }: MachineDocument): TextOf => {
  const texts = new Map(lines.map(({ id, text }) => [id, text]))
  return ({ note }) => texts.get(note) ?? 'Photograph'
}

const Picture = ({ photo, text }: { readonly photo: MachinePhoto; readonly text: string }) => {
  const address = usePhotoAddress(photo.photo)
  return (
    <figure>
      <a href={address('large')} target="_blank" rel="noreferrer" aria-label={`Look at it large: ${text}`}>
        <PhotoImage id={photo.photo} alt={text} />
      </a>
      <figcaption>{text}</figcaption>
    </figure>
  )
}

type ListProps = { readonly bench: BenchId; readonly document: MachineDocument; readonly photos: PhotosView }

/** What fills the window below the form, and is painted first. */
const firstShown = 12

/** How many of a list stand on the page: those in sight at once, all once they are painted, so that a long list keeps nobody waiting. */
const useShown = (count: number): number => {
  const [all, setAll] = useState(count <= firstShown)
  useEffect(() => {
    if (all) return undefined
    let timer = 0
    // A frame, and after it: the first ones are on the screen by then.
    const frame = requestAnimationFrame(() => {
      timer = window.setTimeout(() => setAll(true))
    })
    return () => {
      cancelAnimationFrame(frame)
      window.clearTimeout(timer)
    }
  }, [all])
  return all ? count : firstShown
}

/** All photographs, the newest first; only those in sight are fetched. */
export const PhotoList = ({ bench, document, photos }: ListProps) => {
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const { data: settings } = useSettings()
  const textOf = useMemo(() => textsOf(document), [document])
  const newestFirst = photos.photos.toReversed()
  const shown = useShown(newestFirst.length)
  if (photos.photos.length === 0) return <p>No photographs yet. The first should show it as it came in.</p>
  return (
    <section className="all-photos" aria-label="All photographs">
      <h2>
        {photos.photos.length === 1 ? 'One photograph' : `${photos.photos.length} photographs`}
        {', newest first'}
      </h2>
      <Problems problems={problems} />
      <ul className="photos">
        {newestFirst.slice(0, shown).map((photo) => (
          <li key={photo.note}>
            <Picture photo={photo} text={textOf(photo)} />
            <time dateTime={photo.at} className="quiet">
              {momentText(photo.at)}
            </time>
            {settings?.keepOriginals === true ? (
              <a className="plain" href={photoAddress(photo.photo, 'original')}>
                file as it was sent
              </a>
            ) : null}
            <Button
              className="plain strike"
              isDisabled={busy}
              aria-label={`Strike out: ${textOf(photo)}`}
              onPress={() => void write([{ kind: 'struck', note: photo.note, reason: '' }])}
            >
              strike out
            </Button>
          </li>
        ))}
      </ul>
    </section>
  )
}
