import type { StripStep } from '../../bench/stripping/strip-view.ts'
import { usePhotoAddress } from '../photos/photo-image.tsx'

/** The photographs of a step, small; a tap shows one large. */
export const StepPhotos = ({ step }: { readonly step: StripStep }) =>
  step.photos.length === 0 ? null : (
    <ul className="step-photos" aria-label={`Photographs: ${step.piece.name}`}>
      {step.photos.map(({ note, photo, text }, at) => (
        <li key={note}>
          <StepPhoto
            photo={photo}
            label={`Look at it large: ${step.piece.name}, photograph ${at + 1}`}
            alt={text === '' ? `${step.piece.name} as it came away` : text}
          />
        </li>
      ))}
    </ul>
  )

type StepPhotoProps = { readonly photo: string; readonly label: string; readonly alt: string }

/** From the bench, or from this device while it waits to be sent. */
const StepPhoto = ({ photo, label, alt }: StepPhotoProps) => {
  const address = usePhotoAddress(photo)
  return (
    <a href={address('large')} target="_blank" rel="noreferrer" aria-label={label}>
      <img src={address('small')} alt={alt} loading="lazy" />
    </a>
  )
}
