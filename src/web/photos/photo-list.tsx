import { Button } from 'react-aria-components/Button'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { MachinePhoto, PhotosView } from '../../bench/photos/machine-photos.ts'
import { Problems } from '../parts/problems.tsx'
import { useNotes } from '../use-notes.ts'
import { momentText } from '../words.ts'
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

const Picture = ({ photo, text }: { readonly photo: MachinePhoto; readonly text: string }) => (
  <figure>
    <a
      href={photoAddress(photo.photo, 'large')}
      target="_blank"
      rel="noreferrer"
      aria-label={`Look at it large: ${text}`}
    >
      <img src={photoAddress(photo.photo, 'small')} alt={text} loading="lazy" />
    </a>
    <figcaption>{text}</figcaption>
  </figure>
)

type ListProps = { readonly bench: BenchId; readonly document: MachineDocument; readonly photos: PhotosView }

/** All photographs, the newest first; only those in sight are fetched. */
export const PhotoList = ({ bench, document, photos }: ListProps) => {
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const textOf = textsOf(document)
  if (photos.photos.length === 0) return <p>No photographs yet. The first should show it as it came in.</p>
  return (
    <section aria-label="All photographs">
      <h2>
        {photos.photos.length === 1 ? 'One photograph' : `${photos.photos.length} photographs`}
        {', newest first'}
      </h2>
      <Problems problems={problems} />
      <ul className="photos">
        {photos.photos.toReversed().map((photo) => (
          <li key={photo.note}>
            <Picture photo={photo} text={textOf(photo)} />
            <time dateTime={photo.at} className="quiet">
              {momentText(photo.at)}
            </time>
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
