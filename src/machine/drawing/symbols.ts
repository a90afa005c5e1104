import type { CircuitElement } from '../../blueprint/schema.ts'

/** A line of a symbol. `blank` hides the conductor behind it; `filled` is filled with paper. */
export type SymbolShape =
  | { readonly kind: 'path'; readonly look: SymbolLook; readonly d: string }
  | { readonly kind: 'circle'; readonly look: SymbolLook; readonly x: number; readonly y: number; readonly r: number }
  | { readonly kind: 'letter'; readonly text: string; readonly y: number }
export type SymbolLook = 'line' | 'filled' | 'blank'

const line = (d: string): SymbolShape => ({ kind: 'path', look: 'line', d })
const filled = (d: string): SymbolShape => ({ kind: 'path', look: 'filled', d })
const blank = (d: string): SymbolShape => ({ kind: 'path', look: 'blank', d })
const dot = (x: number): SymbolShape => ({ kind: 'circle', look: 'filled', x, y: 0, r: 1.3 })

const symbols: Readonly<Record<CircuitElement['kind'], readonly SymbolShape[]>> = {
  wire: [],
  stray: [line('M-4-3 0 2 0-2 4 3')],
  resistor: [filled('M-7-3H7V3H-7z')],
  fuse: [filled('M-8-3.5H8V3.5H-8z'), line('M-8 0H8')],
  contact: [blank('M-7-6H7V2H-7z'), line('M-7 0 6-6'), dot(-7), dot(7)],
  capacitor: [blank('M-2-7H2V7H-2z'), line('M-2-7V7M2-7V7')],
  inductor: [blank('M-8-1H8V1H-8z'), line('M-8 0a2 2.6 0 0 1 4 0a2 2.6 0 0 1 4 0a2 2.6 0 0 1 4 0a2 2.6 0 0 1 4 0')],
  motor: [
    { kind: 'circle', look: 'filled', x: 0, y: 0, r: 9 },
    { kind: 'letter', text: 'M', y: 4 },
  ],
  triac: [blank('M-5-7H5V7H-5z'), filled('M-5-7 5-3.5-5 0zM5 0-5 3.5 5 7z'), line('M-5-7V7M5-7V7M5 3l4 4')],
}

/**
 * Plain symbols in the manner of IEC 60617, drawn from memory around the origin along a level line. Half their length stays
 * within 8 units, so they fit between two points of a small drawing.
 */
export const symbolOf = (kind: CircuitElement['kind']): readonly SymbolShape[] => symbols[kind]
