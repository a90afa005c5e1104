import { moneyText, type Currency } from '../../base/money.ts'
import type { BuyingView } from '../../machine/buying/index.ts'

type DensityProps = { readonly atAsking: BuyingView['atAsking']; readonly currency: Currency }

const [width, height] = [320, 64]

/** What buying at the asking price may earn, as a small heap: below nothing hatched, the average marked. */
export const Density = ({ atAsking, currency }: DensityProps) => {
  const { density, profitMinor, ninety } = atAsking
  const first = density[0]
  const last = density.at(-1)
  if (first === undefined || last === undefined || first === last) return null
  const step = (last.minor - first.minor) / (density.length - 1)
  const [low, high] = [first.minor - step / 2, last.minor + step / 2]
  const at = (minor: number): number => (width * (Math.min(high, Math.max(low, minor)) - low)) / (high - low)
  // One column that stands for everything at one amount would flatten the rest.
  const tallest = density.map(({ share }) => share).toSorted((a, b) => b - a)[1] ?? first.share
  const tall = (share: number): number => Math.min(height, (height * 0.9 * share) / Math.max(tallest, 1e-9))
  const money = (minor: number): string => moneyText(Math.round(minor), currency)
  const isZeroInside = low < 0 && high > 0
  return (
    <figure className="buy-density">
      <svg
        viewBox={`0 0 ${width} ${height + 4}`}
        role="img"
        aria-label={`Profit nine times in ten between ${money(ninety[0])} and ${money(ninety[1])}, on average ${money(profitMinor)}`}
      >
        {density.map(({ minor, share }) => (
          <rect
            key={minor}
            className={minor < 0 ? 'loss' : 'gain'}
            x={at(minor - step / 2) + 0.4}
            y={height - tall(share)}
            width={Math.max(0.5, width / density.length - 0.8)}
            height={tall(share)}
          />
        ))}
        <line x1="0" x2={width} y1={height} y2={height} className="ground" />
        {isZeroInside ? <line x1={at(0)} x2={at(0)} y1="0" y2={height + 4} className="zero" /> : null}
        <path d={`M${at(profitMinor)} ${height - 8}l5 10h-10z`} className="mean" />
      </svg>
      <figcaption>
        <span className="figure">{money(low)}</span>
        {isZeroInside ? <span>loss | profit; ▲ on average</span> : <span>▲ on average</span>}
        <span className="figure">{money(high)}</span>
      </figcaption>
    </figure>
  )
}
