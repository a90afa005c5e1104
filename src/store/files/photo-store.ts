import { createHash, randomUUID } from 'node:crypto'
import { mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { problem } from '../../base/problem.ts'
import type { Photo, PhotoOutcome, PhotoSize, PhotoStore } from '../../bench/photos/photo-ports.ts'
import { makeImage, type MadeImage } from './photo-image.ts'

/** The port of photographs as files in a folder: `ab/abcd….jpg` and `ab/abcd….small.jpg`. */
export const filePhotoStore = (folder: string): PhotoStore => ({
  put: (bytes) => putPhoto(folder, bytes),
  get: (id, size) => readPhoto(folder, id, size),
  has: async (id) => (await sizeOf(pathOf(folder, id, 'large'))) !== null,
})

const isId = (id: string): boolean => /^[0-9a-f]{64}$/.test(id)

/** Only a hash makes a path, so that no id leads out of the folder. */
const pathOf = (folder: string, id: string, size: PhotoSize): string | null =>
  isId(id) ? join(folder, id.slice(0, 2), `${id}${size === 'small' ? '.small' : ''}.jpg`) : null

const readPhoto = async (folder: string, id: string, size: PhotoSize): Promise<Uint8Array | null> => {
  const path = pathOf(folder, id, size)
  return path === null ? null : readFile(path).catch(() => null)
}

const sizeOf = async (path: string | null): Promise<number | null> =>
  path === null
    ? null
    : stat(path)
        .then(({ size }) => size)
        .catch(() => null)

const putPhoto = async (folder: string, bytes: Uint8Array): Promise<PhotoOutcome> => {
  const id = createHash('sha256').update(bytes).digest('hex')
  const made = await makeImage(bytes)
  if (made.kind === 'refused') return { kind: 'refused', problem: made.problems[0] ?? unreadable }
  const photo: Photo = {
    id,
    widthPx: made.value.widthPx,
    heightPx: made.value.heightPx,
    bytes: made.value.large.length,
  }
  if ((await sizeOf(pathOf(folder, id, 'large'))) !== null) return { kind: 'kept', photo, isNew: false }
  try {
    await writeBoth(folder, id, made.value)
    return { kind: 'kept', photo, isNew: true }
  } catch (fault) {
    return { kind: 'not-kept', problem: writeProblem(fault) }
  }
}

/** The small one first: a photograph counts as kept once its large file is there. */
const writeBoth = async (folder: string, id: string, { large, small }: MadeImage): Promise<void> => {
  await mkdir(join(folder, id.slice(0, 2)), { recursive: true })
  await writeWhole(pathOf(folder, id, 'small')!, small)
  await writeWhole(pathOf(folder, id, 'large')!, large)
}

/** Written beside, brought to the disk, and only then given its name: no half file is ever found under it. */
const writeWhole = async (path: string, bytes: Uint8Array): Promise<void> => {
  const beside = `${path}.${randomUUID()}.part`
  try {
    const file = await open(beside, 'wx')
    try {
      await file.writeFile(bytes)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(beside, path)
  } catch (fault) {
    await rm(beside, { force: true })
    throw fault
  }
}

const unreadable = problem('not-a-photograph', 'photo', 'This is no photograph that can be read', 'Send another one')

const writeProblem = (fault: unknown) => {
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : ''
  return code === 'ENOSPC'
    ? problem('disk-full', 'photo', 'The disk is full, so the photograph was not kept', 'Make room, then send it again')
    : problem('not-writable', 'photo', 'The folder of photographs cannot be written', 'Mend that, then send it again')
}
