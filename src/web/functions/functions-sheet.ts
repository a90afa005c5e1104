import { createContext, use } from 'react'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'

/** What every row of the page needs. */
export type FunctionsSheet = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  /** True while the rows are of older notes. */
  readonly stale: boolean
}

export const FunctionsSheetContext = createContext<FunctionsSheet | null>(null)

export const useFunctionsSheet = (): FunctionsSheet => {
  const sheet = use(FunctionsSheetContext)
  if (sheet === null) throw new Error('A row of functions stands in a sheet')
  return sheet
}
