import type { ReactNode } from 'react'
import type { CircuitElement } from '../../blueprint/schema.ts'

/**
 * Plain symbols in the manner of IEC 60617, drawn from memory around the origin along a level line. Half their length stays
 * within 8 units, so they fit between two points of a small drawing.
 */
export const symbolOf = (kind: CircuitElement['kind']): ReactNode => {
  switch (kind) {
    case 'wire':
      return null
    case 'stray':
      return <path className="symbol" d="M-4-3 0 2 0-2 4 3" />
    case 'resistor':
      return <rect className="symbol filled" x="-7" y="-3" width="14" height="6" />
    case 'fuse':
      return (
        <>
          <rect className="symbol filled" x="-8" y="-3.5" width="16" height="7" />
          <path className="symbol" d="M-8 0H8" />
        </>
      )
    case 'contact':
      return (
        <>
          <rect className="blank" x="-7" y="-6" width="14" height="8" />
          <path className="symbol" d="M-7 0 6-6" />
          <circle className="symbol filled" cx="-7" cy="0" r="1.3" />
          <circle className="symbol filled" cx="7" cy="0" r="1.3" />
        </>
      )
    case 'capacitor':
      return (
        <>
          <rect className="blank" x="-2" y="-7" width="4" height="14" />
          <path className="symbol" d="M-2-7V7M2-7V7" />
        </>
      )
    case 'inductor':
      return (
        <>
          <rect className="blank" x="-8" y="-1" width="16" height="2" />
          <path className="symbol" d="M-8 0a2 2.6 0 0 1 4 0a2 2.6 0 0 1 4 0a2 2.6 0 0 1 4 0a2 2.6 0 0 1 4 0" />
        </>
      )
    case 'motor':
      return (
        <>
          <circle className="symbol filled" r="9" />
          <text className="symbol-letter" textAnchor="middle" y="4">
            M
          </text>
        </>
      )
    case 'triac':
      return (
        <>
          <rect className="blank" x="-5" y="-7" width="10" height="14" />
          <path className="symbol filled" d="M-5-7 5-3.5-5 0zM5 0-5 3.5 5 7z" />
          <path className="symbol" d="M-5-7V7M5-7V7M5 3l4 4" />
        </>
      )
  }
}
