import { mkdir, open, rename, rm, type FileHandle } from 'node:fs/promises'
import { dirname } from 'node:path'

/**
 * Writes a file that is there whole or not at all: beside it first, brought to the disk, and only then given its name. What stood under
 * the name before stays until then. When this is fulfilled, the file outlasts a loss of power.
 * @param beside where it is written until it is whole, in the same folder
 * @throws what the file system throws; nothing is left behind then
 */
export const writeWhole = async (
  path: string,
  write: (file: FileHandle) => Promise<void>,
  beside = `${path}.part`,
): Promise<void> => {
  try {
    const file = await open(beside, 'w')
    try {
      await write(file)
      await file.sync()
    } finally {
      await file.close()
    }
    await rename(beside, path)
    await syncFolder(dirname(path))
  } catch (fault) {
    await rm(beside, { force: true }).catch(() => undefined)
    throw fault
  }
}

/** Brings the names in a folder to the disk: without it a file that was just named may be gone after a loss of power. */
export const syncFolder = async (folder: string): Promise<void> => {
  // Windows keeps names by itself and opens no folder as a file.
  if (process.platform === 'win32') return
  const handle = await open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}

/** Makes a folder and those above it that are not there, so that they outlast a loss of power. */
export const makeFolder = async (folder: string): Promise<void> => {
  const first = await mkdir(folder, { recursive: true }).catch((fault: unknown) => sayWhy(folder, fault))
  if (first === undefined) return
  for (let made = folder; made.length >= first.length; made = dirname(made)) await syncFolder(dirname(made))
}

/** Where a disk can only be read, making folders on the way says that there is no such folder; making the one alone says why. */
const sayWhy = async (folder: string, fault: unknown): Promise<string | undefined> => {
  if (!(fault instanceof Error && 'code' in fault && fault.code === 'ENOENT')) throw fault
  return mkdir(folder).then(() => folder)
}

/** Writes what comes in stretches, one after another. */
export const writeStretches = async (file: FileHandle, chunks: AsyncIterable<Uint8Array>): Promise<void> => {
  for await (const chunk of chunks) await writeChunk(file, chunk)
}

/** Writes a chunk whole; one write alone may take only the beginning of it. */
export const writeChunk = async (file: FileHandle, chunk: Uint8Array): Promise<void> => {
  for (let at = 0; at < chunk.length;) {
    const { bytesWritten } = await file.write(chunk, at, chunk.length - at)
    at += bytesWritten
  }
}
