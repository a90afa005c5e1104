import { createContext, useContext } from 'react'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { ProofView } from '../../machine/proof/proof-view.ts'

/** What every part of the Proof page looks at. */
export type ProofSheet = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  readonly proof: ProofView
  /** True while `proof` is of older notes than `document`. */
  readonly stale: boolean
}

export const ProofSheetContext = createContext<ProofSheet | null>(null)

export const useProofSheet = (): ProofSheet => {
  const sheet = useContext(ProofSheetContext)
  if (sheet === null) throw new Error('A part of the Proof page stands outside it')
  return sheet
}
