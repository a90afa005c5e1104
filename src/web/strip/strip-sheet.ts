import { createContext, useContext } from 'react'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { StripView } from '../../bench/stripping/strip-view.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { StepWay } from './step-notes.ts'

/** What every part of the Strip-down page looks at. */
export type StripSheet = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  readonly strip: StripView
  /** True while `strip` is of older notes than `document`. */
  readonly stale: boolean
  /** To be called as a step is noted: it leads to what came of it. */
  readonly noted: (way: StepWay) => void
}

export const StripContext = createContext<StripSheet | null>(null)

export const useStripSheet = (): StripSheet => {
  const sheet = useContext(StripContext)
  if (sheet === null) throw new Error('A part of the Strip-down page stands outside it')
  return sheet
}
