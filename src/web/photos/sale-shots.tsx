import type { BenchId } from '../../bench/contract.ts'
import type { PhotosView } from '../../bench/photos/machine-photos.ts'
import type { PhotoTime } from '../../bench/photos/photo-note.ts'
import { sourceText } from '../../base/source-text.ts'
import { saleShotIds, saleShots, saleShotsSource, type SaleShot } from '../../facts/sale-shots.ts'
import { Fold } from '../parts/fold.tsx'
import { Problems } from '../parts/problems.tsx'
import { PhotoButton } from './photo-button.tsx'
import { PhotoImage } from './photo-image.tsx'
import { shotTime, timeNames } from './photo-times.ts'
import { useAdding } from './use-adding.ts'

type ShotsProps = {
  readonly bench: BenchId
  readonly machine: string
  readonly photos: PhotosView
  /** What was pressed above; null where nothing was. */
  readonly when: PhotoTime | null
}

/** The shots that sell a machine, ticked as they come; each row takes its own. */
export const SaleShots = ({ bench, machine, photos, when }: ShotsProps) => {
  const { add, busy, problems } = useAdding(bench, machine)
  const taken = saleShotIds.length - photos.shotsLeft.length
  const others = when ?? 'after'
  return (
    <Fold title={`Shots that sell it: ${taken} of ${saleShotIds.length} taken`}>
      <p>
        Filed as <strong>{timeNames[others]}</strong>
        {when === null ? ', as it is sold' : ', as pressed above'}
        {others === 'before' ? '. Those of before do not sell it: take each again when it is done' : ''}.
      </p>
      <ol className="shots">
        {saleShotIds.map((shot) => (
          <li key={shot}>
            <Shown shot={shot} photos={photos} />
            <span>{saleShots[shot]}</span>
            <PhotoButton
              isDisabled={busy}
              label={`${photos.shotsLeft.includes(shot) ? 'Take' : 'Again'}: ${saleShots[shot]}`}
              onFiles={(files) => void add(files, { about: { kind: 'machine' }, when: shotTime(shot, when), shot })}
            >
              {photos.shotsLeft.includes(shot) ? 'Take' : 'Again'}
            </PhotoButton>
          </li>
        ))}
      </ol>
      <p className="hint">{sourceText(saleShotsSource)}</p>
      <Problems problems={problems} />
    </Fold>
  )
}

const Shown = ({ shot, photos }: { readonly shot: SaleShot; readonly photos: PhotosView }) => {
  const photo = photos.selling.find((one) => one.shot === shot)
  return photo === undefined ? (
    <span className="shot-place" aria-hidden="true" />
  ) : (
    <PhotoImage id={photo.photo} alt="Taken" className="shot-place" />
  )
}
