import { areaY, axisX, lineY, plot, ruleX, ruleY, text } from '@observablehq/plot'
import type { AskingView } from '../../machine/asking.ts'
import { Picture } from './picture.tsx'
import { major } from './major.ts'

type DensityProps = { readonly asking: AskingView; readonly description: string }

/** What one sale would bring, as a density: the nine in ten filled, the price to ask as a rule. */
export const DensityPicture = ({ asking, description }: DensityProps) => (
  <Picture draw={(width) => drawn(asking, width)} of={asking} description={description} />
)

const heightPx = 170
/** How far beyond the nine in ten the tails are drawn. */
const beyond = { low: 0.6, high: 1.35 } as const

const drawn = ({ density, sale, askMinor }: AskingView, width: number) => {
  const points = density
    .filter(({ minor }) => minor > sale.lowMinor * beyond.low && minor < sale.highMinor * beyond.high)
    .map(({ minor, perMinor }) => ({ x: major(minor), y: perMinor }))
  const within = points.filter(({ x }) => x >= major(sale.lowMinor) && x <= major(sale.highMinor))
  const top = Math.max(...points.map(({ y }) => y))
  const ask = [{ x: major(askMinor), y: top * 1.12, name: `ask ${Math.round(major(askMinor))}` }]
  return plot({
    className: 'asking-plot',
    width,
    height: heightPx,
    marginLeft: 14,
    marginRight: 14,
    marginTop: 22,
    marginBottom: 30,
    x: { domain: [points[0]?.x ?? 0, points.at(-1)?.x ?? 1] },
    y: { axis: null, domain: [0, top * 1.15] },
    marks: [
      areaY(within, { x: 'x', y: 'y', fill: 'var(--ink)', fillOpacity: 0.16 }),
      lineY(points, { x: 'x', y: 'y', stroke: 'var(--ink)', strokeWidth: 2 }),
      ruleY([0], { stroke: 'var(--ink)' }),
      ruleX(ask, { x: 'x', y1: 0, y2: 'y', stroke: 'var(--ink)', strokeWidth: 2, strokeDasharray: '5 3' }),
      text(ask, { x: 'x', y: 'y', text: 'name', dy: -8, fontWeight: 700, fill: 'var(--ink)' }),
      axisX({ label: null, ticks: Math.max(3, Math.round(width / 90)), tickSize: 4 }),
    ],
  })
}
