import type { MoveView } from '../../machine/view.ts'

/** Says which covers will be noted along with the entry. */
export const CoversNoted = ({ move }: { readonly move: MoveView }) => {
  if (move.open.length + move.close.length === 0) return null
  const names = (steps: MoveView['open']): string => steps.map(({ name }) => name).join(', ')
  return (
    <p className="quiet covers-noted">
      {move.close.length > 0 ? `Noted with this as back on: ${names(move.close)}. ` : null}
      {move.open.length > 0 ? `Noted with this as off: ${names(move.open)}.` : null}
    </p>
  )
}
