import { useState } from 'react'
import type { BenchId } from '../../bench/contract.ts'
import type { PhotoTime } from '../../bench/photos/photo-note.ts'
import { Loading } from '../parts/loading.tsx'
import { AddPhotos } from '../photos/add-photos.tsx'
import { PhotoList, PhotoPairs, textsOf } from '../photos/photo-list.tsx'
import { SaleShots } from '../photos/sale-shots.tsx'
import { usePhotos } from '../photos/use-photos.ts'
import { useBlueprint, useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import '../style/photos.css'

/** The photographs of a machine: taken, paired, and those that a sale still wants. */
export const PhotosPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: document, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(document?.state.blueprint ?? '')
  const photos = usePhotos(document)
  const [when, setWhen] = useState<PhotoTime | null>(null)
  if (document === undefined || blueprint === undefined || photos === null)
    return (
      <div className="sheet">
        <PageTitle windowTitle="Photographs">Photographs</PageTitle>
        <Loading what="its photographs" error={error ?? blueprintError} />
      </div>
    )
  const { name, left } = document.state
  return (
    <div className="sheet">
      <PageTitle windowTitle={`${name}: photographs`}>{name}: photographs</PageTitle>
      <Link to={{ kind: 'machine', bench, id }} className="on-its-own">
        Back to the machine
      </Link>
      {left === null ? (
        <AddPhotos bench={bench} document={document} blueprint={blueprint} pressed={when} onPress={setWhen} />
      ) : null}
      {left === null ? <SaleShots bench={bench} machine={id} photos={photos} when={when} /> : null}
      <PhotoPairs photos={photos} textOf={textsOf(document)} />
      <PhotoList bench={bench} document={document} photos={photos} />
    </div>
  )
}
