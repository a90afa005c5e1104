import { createHash } from 'node:crypto'
import type { FileHandle } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { configure, ZipWriter } from '@zip.js/zip.js'
import { writeChunk } from '../files/whole-file.ts'

// Workers of a browser are of no use here.
configure({ useWebWorkers: false })

/** One file inside: its name, how long it is, and the SHA-256 of it. */
export type FileSum = { readonly name: string; readonly bytes: number; readonly sha256: string }

/** Takes files one after another. Photographs are packed already; to pack them again would take time and bring nothing. */
export type ZipSink = {
  readonly add: (name: string, chunks: AsyncIterable<Uint8Array>, how: 'packed' | 'as-it-is') => Promise<FileSum>
}

/** Writes a ZIP into an open file, a stretch at a time; no file inside is ever held in memory as a whole. */
export const writeZip = async (file: FileHandle, fill: (sink: ZipSink) => Promise<void>): Promise<void> => {
  const zip = new ZipWriter(
    new WritableStream<Uint8Array>({
      write: async (chunk) => writeChunk(file, chunk),
    }),
    { extendedTimestamp: false },
  )
  await fill({
    add: async (name, chunks, how) => {
      const sum = summing(chunks)
      const stream = Readable.toWeb(Readable.from(sum.chunks, { objectMode: false })) as ReadableStream
      await zip.add(name, stream, { level: how === 'packed' ? packedLevel : 0 })
      return { name, ...sum.end() }
    },
  })
  await zip.close()
}

/** Middling: more takes twice the time for a few percent. */
const packedLevel = 6

/** The chunks as they come, counted and summed up on their way. */
const summing = (chunks: AsyncIterable<Uint8Array>) => {
  const hash = createHash('sha256')
  let bytes = 0
  const through = async function* () {
    for await (const chunk of chunks) {
      hash.update(chunk)
      bytes += chunk.length
      yield chunk
    }
  }
  return { chunks: through(), end: () => ({ bytes, sha256: hash.digest('hex') }) }
}
