import type { Blueprint } from '../../blueprint/schema.ts'
import { percentText } from '../words.ts'
import { tintStrength } from './tint.ts'

type AirRibbonProps = { readonly blueprint: Blueprint; readonly tints: Readonly<Record<string, number>> }

/** The air's way from the floor to the outlet, each part shaded by how much it is suspected. */
export const AirRibbon = ({ blueprint, tints }: AirRibbonProps) => {
  if (blueprint.airPath.length === 0) return null
  return (
    <div className="air">
      <h3>The way of the air</h3>
      <ol className="ribbon" aria-label="Air path from the floor to the outlet">
        {blueprint.airPath.map((id) => {
          const probability = tints[id] ?? 0
          return (
            <li key={id}>
              <span className="ribbon-tint" aria-hidden="true" style={{ opacity: 0.6 * tintStrength(tints, id) }} />
              <span className="ribbon-name">
                {blueprint.parts.find((part) => part.id === id)?.name ?? id}
                {probability >= 0.01 ? <span className="figure quiet"> {percentText(probability)}</span> : null}
              </span>
            </li>
          )
        })}
      </ol>
    </div>
  )
}
