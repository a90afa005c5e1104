import { writeFile } from 'node:fs/promises'
import type { Command } from 'commander'
import { problem, type Problem } from '../base/problem.ts'
import { makeReckoner } from '../bench/prices/reckoner.ts'
import { photographed } from '../bench/sale/photographed.ts'
import { saleSheetOf } from '../bench/sale/sale-sheet.ts'
import { sheetPaper } from '../bench/sale/sheet-paper.ts'
import type { SaleSheetView } from '../bench/sale/sheet-view.ts'
import { sheetSections, type SheetSection } from '../bench/sale/worded-note.ts'
import { unknownId } from '../bench/unknown.ts'
import { saleSheetHtml } from '../report/sale-sheet-html.ts'
import { saleSheetPdf } from '../report/sale-sheet-pdf.ts'
import { saleSheetText } from '../report/sale-sheet-text.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { exitCodes, show, showProblems, type Shell } from './output.ts'
import { withBench, type Options } from './with-bench.ts'

/** `thrum sale-sheet` and `thrum worded`. */
export const addSaleCommands = (program: Command, shell: Shell): void => {
  addSheet(program, shell)
  addWorded(program, shell)
}

const addSheet = (program: Command, shell: Shell): void => {
  program
    .command('sale-sheet <machine>')
    .description('the sale sheet of a machine, each claim held against the notes')
    .option('--text', 'only the text, to be copied')
    .option('--pdf <file>', 'write it as PDF')
    .option('--html <file>', 'write it as one page with the photographs inside')
    .action(
      withBench(shell, async ({ deps, photos }, options, [wanted = '']) => {
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const view = await saleSheetOf({ ...deps, reckoner: makeReckoner() }, document.value)
        if (view.kind === 'refused') return showProblems(shell.output, options.json, view.problems)
        const paper = sheetPaper(view.value)
        if (options['text'] !== undefined && !options.json) {
          shell.output.out(saleSheetText(paper).trimEnd())
          return exitCodes.fine
        }
        const pictured = filesAsked(options) ? await photographed(paper, photos) : null
        const files: { readonly path: string; readonly content: Uint8Array | string }[] = []
        if (pictured !== null && typeof options['pdf'] === 'string')
          files.push({ path: options['pdf'], content: await saleSheetPdf(pictured) })
        if (pictured !== null && typeof options['html'] === 'string')
          files.push({ path: options['html'], content: saleSheetHtml(pictured) })
        const wrong = await writeAll(files)
        if (wrong !== null) return showProblems(shell.output, options.json, [wrong])
        const written = files.map(({ path }) => path)
        return show(
          shell.output,
          options.json,
          { ...view.value, ...(written.length === 0 ? {} : { files: written }) },
          () => [
            ...(written.length === 0 ? [saleSheetText(paper).trimEnd(), ''] : [`Written: ${written.join(', ')}`]),
            ...claimLines(view.value),
          ],
        )
      }),
    )
}

const filesAsked = (options: Options): boolean => options['pdf'] !== undefined || options['html'] !== undefined

const writeAll = async (
  files: readonly { readonly path: string; readonly content: Uint8Array | string }[],
): Promise<Problem | null> => {
  for (const { path, content } of files) {
    try {
      await writeFile(path, content)
    } catch (error) {
      const why = error instanceof Error ? error.message : 'for a reason not given'
      return problem(
        'not-written',
        path,
        `The file could not be written: ${why}`,
        'Name a folder that can be written to',
      )
    }
  }
  return null
}

const verdictWords = {
  supported: 'Borne out',
  unsupported: 'No note bears it out',
  contradicted: 'The notes say otherwise',
  'not-placed': 'Look at it: the check cannot tell what it is said of',
  'own-words': 'In your own words',
} as const

/** What the notes do not bear out, and sections whose facts moved since they were put in own words. */
const claimLines = ({ sections }: SaleSheetView): readonly string[] => [
  ...sections.flatMap(({ section, claims }) =>
    claims
      .filter(({ verdict }) => verdict !== 'supported')
      .map(({ words, verdict, why }) => `${verdictWords[verdict]}: “${words}” (${section}). ${why}.`),
  ),
  ...sections.flatMap(({ section, own, generated }) =>
    own?.was === null || own?.was === undefined
      ? []
      : [
          `The notes say something else since ${section} was put in own words on ${own.on}. Now: ${generated.replaceAll('\n', ' ')}`,
        ],
  ),
]

const addWorded = (program: Command, shell: Shell): void => {
  program
    .command('worded <machine> <section> <text>')
    .description(
      `own words for a section of the sale sheet; "" brings the notes’ words back: ${sheetSections.join(', ')}`,
    )
    .action(
      withBench(shell, async ({ deps }, options, [wanted = '', section = '', text = '']) => {
        const known = sheetSections.find((one): one is SheetSection => one === section)
        if (known === undefined)
          return showProblems(shell.output, options.json, [unknownId('section', 'section', section, sheetSections)])
        const document = await findMachine(deps, wanted)
        if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
        const content = { kind: 'worded', section: known, text } as const
        const written = await writeNote(deps, document.value, content)
        if (written.kind === 'refused') return showProblems(shell.output, options.json, written.problems)
        const view = await saleSheetOf({ ...deps, reckoner: makeReckoner() }, written.value)
        if (view.kind === 'refused') return showProblems(shell.output, options.json, view.problems)
        return show(shell.output, options.json, view.value, () => [
          view.value.sections.find((one) => one.section === known)?.text ?? '',
          ...claimLines(view.value),
        ])
      }),
    )
}
