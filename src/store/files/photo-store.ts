import { randomUUID } from 'node:crypto'
import { readFile, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { problem } from '../../base/problem.ts'
import type { Photo, PhotoOutcome, PhotoSize, PhotoStore } from '../../bench/photos/photo-ports.ts'
import { makeImage, type MadeImage } from './photo-image.ts'
import { sumOfBytes, writeSums } from './photo-sums.ts'
import { makeFolder, syncFolder, writeWhole } from './whole-file.ts'

/** The port of photographs as files in a folder: `ab/abcd….jpg` and `ab/abcd….small.jpg`. */
export const filePhotoStore = (folder: string): PhotoStore => ({
  put: (bytes) => putPhoto(folder, bytes),
  get: (id, size) => readPhoto(folder, id, size),
  has: async (id) => (await sizeOf(photoPath(folder, id, 'large'))) !== null,
})

const isId = (id: string): boolean => /^[0-9a-f]{64}$/.test(id)

/** Where a photograph lies. Only a hash makes a path, so that no id leads out of the folder. */
export const photoPath = (folder: string, id: string, size: PhotoSize): string | null =>
  isId(id) ? join(folder, id.slice(0, 2), `${id}${size === 'small' ? '.small' : ''}.jpg`) : null

const readPhoto = async (folder: string, id: string, size: PhotoSize): Promise<Uint8Array | null> => {
  const path = photoPath(folder, id, size)
  return path === null ? null : readFile(path).catch(() => null)
}

const sizeOf = async (path: string | null): Promise<number | null> =>
  path === null
    ? null
    : stat(path)
        .then(({ size }) => size)
        .catch(() => null)

const putPhoto = async (folder: string, bytes: Uint8Array): Promise<PhotoOutcome> => {
  const id = sumOfBytes(bytes)
  const made = await makeImage(bytes)
  if (made.kind === 'refused') return { kind: 'refused', problem: made.problems[0] ?? unreadable }
  const photo: Photo = {
    id,
    widthPx: made.value.widthPx,
    heightPx: made.value.heightPx,
    bytes: made.value.large.length,
  }
  const path = photoPath(folder, id, 'large')!
  try {
    const isNew = (await sizeOf(path)) === null
    if (isNew) await writeMade(folder, id, made.value)
    // Another program may have given it its name this moment, not yet brought to the disk.
    else await syncFolder(dirname(path))
    return { kind: 'kept', photo, isNew }
  } catch (fault) {
    return { kind: 'not-kept', problem: writeProblem(fault) }
  }
}

/** The large one last: a photograph counts as kept once that is there. */
export const writeMade = async (
  folder: string,
  id: string,
  made: Pick<MadeImage, 'large' | 'small'>,
): Promise<void> => {
  await makeFolder(join(folder, id.slice(0, 2)))
  const [small, large] = [photoPath(folder, id, 'small')!, photoPath(folder, id, 'large')!]
  await writeSums([
    { path: small, sha256: sumOfBytes(made.small) },
    { path: large, sha256: sumOfBytes(made.large) },
  ])
  await writeImage(small, made.small)
  await writeImage(large, made.large)
}

/** The same one may come twice at the same time, so each is written beside under a name of its own. */
const writeImage = (path: string, bytes: Uint8Array): Promise<void> =>
  writeWhole(path, (file) => file.writeFile(bytes), `${path}.${randomUUID()}.part`)

const unreadable = problem('not-a-photograph', 'photo', 'This is no photograph that can be read', 'Send another one')

const writeProblem = (fault: unknown) => {
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : ''
  return code === 'ENOSPC'
    ? problem('disk-full', 'photo', 'The disk is full, so the photograph was not kept', 'Make room, then send it again')
    : problem('not-writable', 'photo', 'The folder of photographs cannot be written', 'Mend that, then send it again')
}
