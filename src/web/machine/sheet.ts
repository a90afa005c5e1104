import { createContext, useContext } from 'react'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { MachineView } from '../../machine/view.ts'

/** What every part of the Machine page looks at. */
export type Sheet = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  /** Null until the first view is there, and for a machine that has left. */
  readonly view: MachineView | null
  /** True while `view` is of older notes than `document`. */
  readonly stale: boolean
}

export const SheetContext = createContext<Sheet | null>(null)

export const useSheet = (): Sheet => {
  const sheet = useContext(SheetContext)
  if (sheet === null) throw new Error('A part of the Machine page stands outside it')
  return sheet
}
