import { randomUUID } from 'node:crypto'
import { readFile, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { problem } from '../../base/problem.ts'
import type { OriginalStore } from '../../bench/photos/original-ports.ts'
import { makeFolder, writeWhole } from './whole-file.ts'

/** The port of files as they were sent, in a folder of its own: `ab/abcd…`. */
export const fileOriginalStore = (folder: string): OriginalStore => ({
  keep: async (id, bytes) => {
    const path = originalPath(folder, id)
    if (path === null) return notWritable
    try {
      if ((await sizeOf(path)) === bytes.length) return null
      await makeFolder(join(folder, id.slice(0, 2)))
      await writeWhole(path, (file) => file.writeFile(bytes), `${path}.${randomUUID()}.part`)
      return null
    } catch (fault) {
      return fault instanceof Error && 'code' in fault && fault.code === 'ENOSPC' ? diskFull : notWritable
    }
  },
  get: async (id) => {
    const path = originalPath(folder, id)
    return path === null ? null : readFile(path).catch(() => null)
  },
})

/** Where a file as it was sent lies. Only a hash makes a path, so that no id leads out of the folder. */
export const originalPath = (folder: string, id: string): string | null =>
  /^[0-9a-f]{64}$/.test(id) ? join(folder, id.slice(0, 2), id) : null

const sizeOf = (path: string): Promise<number | null> =>
  stat(path)
    .then(({ size }) => size)
    .catch(() => null)

const diskFull = problem(
  'disk-full',
  'photo',
  'The disk is full, so the file as it was sent was not kept',
  'Make room, or stop keeping files as they are sent; then send it again',
)
const notWritable = problem(
  'not-writable',
  'photo',
  'The folder of files as they were sent cannot be written',
  'Mend that, then send it again',
)
