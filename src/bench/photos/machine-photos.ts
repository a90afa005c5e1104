import { saleShotIds, type SaleShot } from '../../facts/sale-shots.ts'
import { standing } from '../fold.ts'
import type { Note } from '../note.ts'
import type { PhotoNote } from './photo-note.ts'

/** A photograph of a machine with the note that tells of it. */
export type MachinePhoto = PhotoNote & { readonly note: string; readonly at: string }

/** The photographs that stand, in the order of the log; one that was sent twice for the same thing stands once. */
export const machinePhotos = (notes: readonly Note[]): readonly MachinePhoto[] => {
  const seen = new Set<string>()
  return standing(notes).flatMap(({ id, at, content }) => {
    if (content.kind !== 'photo') return []
    const key = JSON.stringify([content.photo, content.about, content.when, content.shot ?? ''])
    if (seen.has(key)) return []
    seen.add(key)
    return [{ ...content, note: id, at }]
  })
}

/** A pair that shows what the work did: the last of before and the last of after, of the same thing. */
export type PhotoPair = { readonly before: MachinePhoto; readonly after: MachinePhoto }

/** Pairs of before and after: of the same shot, else of the same part; the machine as a whole counts as one thing. */
export const photoPairs = (photos: readonly MachinePhoto[]): readonly PhotoPair[] => {
  const thing = (photo: MachinePhoto): string => photo.shot ?? JSON.stringify(photo.about)
  const things = [...new Set(photos.map(thing))]
  return things.flatMap((one) => {
    const of = photos.filter((photo) => thing(photo) === one)
    const before = of.findLast(({ when }) => when === 'before')
    const after = of.findLast(({ when }) => when === 'after')
    return before === undefined || after === undefined ? [] : [{ before, after }]
  })
}

/** The photographs of a machine as a page shows them. */
export type PhotosView = {
  readonly photos: readonly MachinePhoto[]
  readonly pairs: readonly PhotoPair[]
  readonly shotsLeft: readonly SaleShot[]
  /** The photographs of the shots that sell and are taken, in the order of the shots. */
  readonly selling: readonly MachinePhoto[]
}

export const photosView = (notes: readonly Note[]): PhotosView => {
  const photos = machinePhotos(notes)
  return { photos, pairs: photoPairs(photos), shotsLeft: shotsLeft(photos), selling: sellingPhotos(photos) }
}

/** Shots that sell a machine and are not taken yet, in their order. */
export const shotsLeft = (photos: readonly MachinePhoto[]): readonly SaleShot[] =>
  saleShotIds.filter((shot) => sellingPhoto(photos, shot) === null)

/** One photograph of each shot that sells, in the order of the shots; those that are not taken yet are left out. */
export const sellingPhotos = (photos: readonly MachinePhoto[]): readonly MachinePhoto[] =>
  saleShotIds.flatMap((shot) => sellingPhoto(photos, shot) ?? [])

/**
 * The photograph of a shot that sells: the last of after, else the last at work; null where there is none. One of before shows what
 * nobody is sold any more, but for the gauge before the work.
 */
export const sellingPhoto = (photos: readonly MachinePhoto[], shot: SaleShot): MachinePhoto | null => {
  const of = photos.filter((photo) => photo.shot === shot)
  const lastOf = (when: MachinePhoto['when']) => of.findLast((photo) => photo.when === when)
  return (shot === 'gauge-before' ? of.at(-1) : (lastOf('after') ?? lastOf('work'))) ?? null
}
