import type { PhotoStore } from '../photos/photo-ports.ts'
import type { SheetPaper } from './sheet-paper.ts'

type Pictured = Omit<SheetPaper, 'photos'> & {
  readonly photos: readonly { readonly alt: string; readonly jpeg: Uint8Array }[]
}

/** The sheet with its photographs fetched; one that is not kept here is left out. */
export const photographed = async (paper: SheetPaper, photos: Pick<PhotoStore, 'get'>): Promise<Pictured> => {
  const fetched = await Promise.all(
    paper.photos.map(async ({ photo, alt }) => ({ alt, jpeg: await photos.get(photo, 'large') })),
  )
  return { ...paper, photos: fetched.flatMap(({ alt, jpeg }) => (jpeg === null ? [] : [{ alt, jpeg }])) }
}
