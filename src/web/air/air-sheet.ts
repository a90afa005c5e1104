import { createContext, useContext } from 'react'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { AirRig } from '../../machine/air/air-rig.ts'
import type { AirView } from '../../machine/air/air-view.ts'
import type { GaugeUnits } from './gauge-units.ts'

/** What every part of the Air page looks at. */
export type AirSheet = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  readonly air: AirView
  /** Names of what bars any running now. */
  readonly barred: readonly string[]
  /** Null until it is there, and where none can be worked out. */
  readonly rig: AirRig | null
  /** True while `air` is of older notes than `document`. */
  readonly stale: boolean
  readonly units: GaugeUnits
  /** Holes of the bench's own rig as written, kept on this device; empty for those of the usual rig. */
  readonly ownHoles: string
  readonly setOwnHoles: (text: string) => void
}

export const AirSheetContext = createContext<AirSheet | null>(null)

export const useAirSheet = (): AirSheet => {
  const sheet = useContext(AirSheetContext)
  if (sheet === null) throw new Error('A part of the Air page stands outside it')
  return sheet
}
