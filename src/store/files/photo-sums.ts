import { createHash, randomUUID } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { writeWhole } from './whole-file.ts'

/**
 * The sums of a photograph's two files lie beside them, as `sha256sum -c` reads them: a photograph is called after what was sent, so its
 * name does not say whether the file is still as it was written.
 */
const sumsPath = (photo: string): string => join(dirname(photo), `${basename(photo).slice(0, idLength)}.sha256`)
const idLength = 64

/** One line of a file of sums. */
const sumLine = (sha256: string, path: string): string => `${sha256}  ${basename(path)}\n`

/** Writes the sums of files of one photograph beside them. */
export const writeSums = (sums: readonly { readonly path: string; readonly sha256: string }[]): Promise<void> => {
  const path = sumsPath(sums[0].path)
  const text = sums.map((sum) => sumLine(sum.sha256, sum.path)).join('')
  return writeWhole(path, (file) => file.writeFile(text), `${path}.${randomUUID()}.part`)
}

/** The sum that was written for a photograph's file; null where there is none, as with photographs from before there were sums. */
export const writtenSum = async (path: string): Promise<string | null> => {
  const text = await readFile(sumsPath(path), 'utf8').catch(() => '')
  const line = text.split('\n').find((each) => each.endsWith(`  ${basename(path)}`))
  return line?.slice(0, idLength) ?? null
}

/** SHA-256 of bytes, hexadecimal. */
export const sumOfBytes = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

/** SHA-256 of a file, read in stretches. */
export const sumOfFile = async (path: string): Promise<string> => {
  const hash = createHash('sha256')
  for await (const chunk of createReadStream(path) as AsyncIterable<Uint8Array>) hash.update(chunk)
  return hash.digest('hex')
}
