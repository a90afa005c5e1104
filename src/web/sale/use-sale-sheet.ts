import { useQuery } from '@tanstack/react-query'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { SaleSheetView } from '../../bench/sale/sheet-view.ts'
import type { SheetSection } from '../../bench/sale/worded-note.ts'
import { getFrom } from '../api.ts'

export const sheetAddress = (bench: BenchId, machine: string): string =>
  `/bench/${bench}/machines/${encodeURIComponent(machine)}/sale-sheet`

/** The sheet as the bench makes it of the notes that it has; the last one stays until the next is there. */
export const useSaleSheet = (bench: BenchId, document: MachineDocument | undefined) =>
  useQuery({
    queryKey: ['sale-sheet', bench, document?.state.id, document?.state.version],
    queryFn: ({ signal }): Promise<SaleSheetView> => getFrom(sheetAddress(bench, document?.state.id ?? ''), signal),
    enabled: document !== undefined,
    placeholderData: (before) => before,
  })

/** Own words of a section that the sheet does not have yet: written where the bench does not answer, or on their way. Null: none. */
export const wordsOnTheWay = (document: MachineDocument, view: SaleSheetView, section: SheetSection): string | null => {
  if (view.machine.version >= document.state.version) return null
  const struck = new Set(document.lines.filter((line) => line.struck).map(({ id }) => id))
  const last = document.notes.findLast(
    ({ id, content }) => content.kind === 'worded' && content.section === section && !struck.has(id),
  )
  if (last?.content.kind !== 'worded' || last.seq <= view.machine.version) return null
  const generated = view.sections.find((one) => one.section === section)?.generated ?? ''
  return last.content.text === '' ? generated : last.content.text
}
