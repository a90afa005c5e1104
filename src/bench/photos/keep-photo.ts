import type { SettingsStore } from '../ports.ts'
import { currentSettings } from '../settings.ts'
import type { OriginalStore } from './original-ports.ts'
import type { PhotoOutcome, PhotoStore } from './photo-ports.ts'

/** Where photographs are kept. Without `originals`, no file is kept as it was sent. */
export type PhotoPlaces = {
  readonly photos: PhotoStore
  readonly originals?: OriginalStore | undefined
  readonly settings: SettingsStore
}

/** Keeps a photograph, and the file as it was sent where the settings ask for it; it counts as kept once both are. */
export const keepPhoto = async (
  { photos, originals, settings }: PhotoPlaces,
  bytes: Uint8Array,
): Promise<PhotoOutcome> => {
  const outcome = await photos.put(bytes)
  if (outcome.kind !== 'kept' || originals === undefined) return outcome
  if (!(await currentSettings(settings)).keepOriginals) return outcome
  const wrong = await originals.keep(outcome.photo.id, bytes)
  return wrong === null ? outcome : { kind: 'not-kept', problem: wrong }
}
