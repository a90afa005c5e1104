import type { PlacedLine } from './record-lines.ts'

/** Written together, so that a stretch is neither a line nor the whole. */
const bytesAtOnce = 64 * 1024

/** Lines as bytes of UTF-8, each with its line end, in stretches. */
export async function* bytesOfLines(lines: AsyncIterable<string>): AsyncGenerator<Uint8Array> {
  let waiting: Buffer[] = []
  let length = 0
  for await (const line of lines) {
    const bytes = Buffer.from(`${line}\n`)
    waiting.push(bytes)
    length += bytes.length
    if (length < bytesAtOnce) continue
    yield Buffer.concat(waiting)
    waiting = []
    length = 0
  }
  if (length > 0) yield Buffer.concat(waiting)
}

/** The lines of a text that comes in stretches of bytes. Bytes that are no UTF-8 come out as the sign for that, U+FFFD. */
export async function* linesOfBytes(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<PlacedLine> {
  const decoder = new TextDecoder()
  let rest = ''
  let place = 0
  for await (const chunk of chunks) {
    const pieces = (rest + decoder.decode(chunk, { stream: true })).split('\n')
    rest = pieces.pop() ?? ''
    for (const text of pieces) yield { place: ++place, text }
  }
  rest += decoder.decode()
  if (rest !== '') yield { place: place + 1, text: rest }
}

/** One value as what comes one after another. */
export async function* once<T>(value: T): AsyncGenerator<T> {
  yield await Promise.resolve(value)
}

/** A text that comes in pieces, as bytes of UTF-8. */
export async function* bytesOfText(pieces: AsyncIterable<string>): AsyncGenerator<Uint8Array> {
  for await (const piece of pieces) yield Buffer.from(piece)
}
