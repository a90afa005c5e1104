import type { StripStep } from '../../bench/stripping/strip-view.ts'
import { photoAddress } from '../photos/send-photo.ts'

/** The photographs of a step, small; a tap shows one large. */
export const StepPhotos = ({ step }: { readonly step: StripStep }) =>
  step.photos.length === 0 ? null : (
    <ul className="step-photos" aria-label={`Photographs: ${step.piece.name}`}>
      {step.photos.map(({ note, photo, text }, at) => (
        <li key={note}>
          <a
            href={photoAddress(photo, 'large')}
            target="_blank"
            rel="noreferrer"
            aria-label={`Look at it large: ${step.piece.name}, photograph ${at + 1}`}
          >
            <img
              src={photoAddress(photo, 'small')}
              alt={text === '' ? `${step.piece.name} as it came away` : text}
              loading="lazy"
            />
          </a>
        </li>
      ))}
    </ul>
  )
