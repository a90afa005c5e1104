import { keepPreviousData, useQuery } from '@tanstack/react-query'
import type { MachineDocument } from '../../bench/contract.ts'
import type { PhotosView } from '../../bench/photos/machine-photos.ts'
import { engine } from '../engine-client.ts'

/** The photographs of a machine; null until they are known. */
export const usePhotos = (document: MachineDocument | undefined): PhotosView | null => {
  const { data } = useQuery({
    queryKey: ['photos', document?.state.id, document?.state.addedAt, document?.state.version],
    queryFn: async ({ signal }) => {
      if (document === undefined) throw new Error('Photographs need a machine')
      return (await engine().ask({ kind: 'photos', notes: document.notes }, signal)).photos
    },
    enabled: document !== undefined,
    staleTime: Infinity,
    retry: false,
    placeholderData: keepPreviousData,
  })
  return data ?? null
}
