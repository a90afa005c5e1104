import { open, type FileHandle } from 'node:fs/promises'
import { PassThrough, Writable } from 'node:stream'
import { configure, Reader, ZipReader, type FileEntry } from '@zip.js/zip.js'

configure({ useWebWorkers: false })

/** One file inside, read a stretch at a time. Reading throws where it is damaged. */
export type ZippedFile = {
  readonly name: string
  readonly bytes: number
  readonly read: () => AsyncIterable<Uint8Array>
}
export type OpenZip = { readonly files: readonly ZippedFile[]; readonly close: () => Promise<void> }

/** Opens a ZIP to read from. Throws where there is no such file, or where it is no whole ZIP. */
export const openZip = async (path: string): Promise<OpenZip> => {
  const file = await open(path, 'r')
  try {
    const zip = new ZipReader(new HandleReader(file))
    const entries = await zip.getEntries()
    const files = entries.filter((entry): entry is FileEntry => !entry.directory)
    return {
      files: files.map((entry) => ({
        name: entry.filename,
        bytes: entry.uncompressedSize,
        read: () => reading(entry),
      })),
      close: async () => {
        await zip.close()
        await file.close()
      },
    }
  } catch (fault) {
    await file.close()
    throw fault
  }
}

const reading = (entry: FileEntry): AsyncIterable<Uint8Array> => {
  const through = new PassThrough()
  entry
    .getData(Writable.toWeb(through) as WritableStream, { checkSignature: true })
    .catch((fault: unknown) => through.destroy(fault instanceof Error ? fault : new Error(String(fault))))
  return through as AsyncIterable<Uint8Array>
}

/** An open file as the library reads it. */
class HandleReader extends Reader<FileHandle> {
  readonly #file: FileHandle

  constructor(file: FileHandle) {
    super(file)
    this.#file = file
  }

  override async init(): Promise<void> {
    await super.init?.()
    this.size = (await this.#file.stat()).size
  }

  override async readUint8Array(index: number, length: number): Promise<Uint8Array<ArrayBuffer>> {
    const bytes = new Uint8Array(length)
    let at = 0
    while (at < length) {
      const { bytesRead } = await this.#file.read(bytes, at, length - at, index + at)
      if (bytesRead === 0) break
      at += bytesRead
    }
    return bytes.subarray(0, at)
  }
}
