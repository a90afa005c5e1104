import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** What an outside reader of PDF finds in a file. */
export type ReadPdf = {
  /** The pages' words, each piece as it was drawn, parted by spaces. */
  readonly pages: readonly string[]
  readonly sizesPt: readonly (readonly [number, number])[]
  readonly title: unknown
  readonly language: unknown
  readonly createdOn: unknown
  readonly xmpTitle: unknown
  readonly marked: boolean
  readonly displaysTitle: boolean
  /** The roles in the structure of each page, depth first, of what has words on it. */
  readonly roles: readonly (readonly string[])[]
}

export const readPdf = (bytes: Uint8Array): Promise<ReadPdf> =>
  withPdf(bytes, async (pdf) => {
    const { info, metadata } = await pdf.getMetadata()
    const facts = info as Record<string, unknown>
    const numbers = Array.from({ length: pdf.numPages }, (_, i) => i + 1)
    const pages = await Promise.all(numbers.map((number) => pdf.getPage(number)))
    const preferences: object = (await pdf.getViewerPreferences()) ?? {}
    return {
      pages: await Promise.all(
        pages.map(async (page) => wordsOf((await page.getTextContent({ disableNormalization: true })).items)),
      ),
      sizesPt: pages.map(({ view }) => [view[2], view[3]] as const),
      title: facts['Title'],
      language: facts['Language'],
      createdOn: facts['CreationDate'],
      xmpTitle: metadata?.get('dc:title') as unknown,
      marked: (await pdf.getMarkInfo())?.Marked === true,
      displaysTitle: 'DisplayDocTitle' in preferences && preferences.DisplayDocTitle === true,
      roles: await Promise.all(pages.map(async (page) => rolesOf((await page.getStructTree()) as Node | null))),
    }
  })

/** The first page as a picture of so many dots for a point, grey by its red channel (the page is black on white). */
export const paintPage = (
  bytes: Uint8Array,
  dotsPerPt: number,
): Promise<{ readonly width: number; readonly height: number; readonly data: Uint8ClampedArray }> =>
  withPdf(bytes, async (pdf) => {
    const page = await pdf.getPage(1)
    const viewport = page.getViewport({ scale: dotsPerPt })
    const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)]
    const factory = pdf.canvasFactory as {
      create(width: number, height: number): { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D }
    }
    const { canvas, context } = factory.create(width, height)
    // Painted as for a printer, which waits for no screen: another library in this process may have made a `window` that has none.
    await page.render({ canvas, canvasContext: context, viewport, intent: 'print' }).promise
    return { width, height, data: context.getImageData(0, 0, width, height).data }
  })

/** The reader takes the bytes it is given for its own, so it gets a copy. */
const withPdf = async <T>(bytes: Uint8Array, read: (pdf: PDFDocumentProxy) => Promise<T>): Promise<T> => {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, stopAtErrors: true })
  try {
    return await read(await task.promise)
  } finally {
    await task.destroy()
  }
}

const wordsOf = (items: readonly object[]): string =>
  items
    .map((item) => ('str' in item ? String(item.str) : ''))
    .filter((words) => words.trim() !== '')
    .join(' ')

type Node = { readonly role?: string; readonly type?: string; readonly children?: readonly Node[] }

/** The reader gives a table whole on each of its pages; only what has words on this one counts. */
const rolesOf = (node: Node | null): readonly string[] => {
  if (node === null || !hasContent(node)) return []
  return [...(node.role === undefined ? [] : [node.role]), ...(node.children ?? []).flatMap(rolesOf)]
}

const hasContent = (node: Node): boolean => node.type === 'content' || (node.children ?? []).some(hasContent)
