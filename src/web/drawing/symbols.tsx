import type { CircuitElement } from '../../blueprint/schema.ts'
import { symbolOf, type SymbolLook, type SymbolShape } from '../../machine/drawing/symbols.ts'

const classes: Readonly<Record<SymbolLook, string>> = { line: 'symbol', filled: 'symbol filled', blank: 'blank' }

/** The symbol of an element about the origin. */
export const ElementSymbol = ({ kind }: { readonly kind: CircuitElement['kind'] }) =>
  symbolOf(kind).map((shape, at) => <Shape key={at} shape={shape} />)

const Shape = ({ shape }: { readonly shape: SymbolShape }) => {
  switch (shape.kind) {
    case 'path':
      return <path className={classes[shape.look]} d={shape.d} />
    case 'circle':
      return <circle className={classes[shape.look]} cx={shape.x} cy={shape.y} r={shape.r} />
    case 'letter':
      return (
        <text className="symbol-letter" textAnchor="middle" y={shape.y}>
          {shape.text}
        </text>
      )
  }
}
