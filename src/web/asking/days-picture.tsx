import { axisX, axisY, dot, lineY, plot, ruleY, text } from '@observablehq/plot'
import type { AskingView } from '../../machine/asking.ts'
import { major } from './major.ts'
import { Picture } from './picture.tsx'

type DaysProps = { readonly asking: AskingView; readonly description: string }

/** Price against the days until half have sold. */
export const DaysPicture = ({ asking, description }: DaysProps) => (
  <Picture draw={(width) => drawn(asking, width)} of={asking} description={description} />
)

const heightPx = 200
/** Longer than so many times the time after which it is given up on, nobody asks. */
const shownHorizons = 2

const drawn = ({ curve, best, choices, leftMinor }: AskingView, width: number) => {
  const shown = curve.filter(
    ({ medianDays, priceMinor }) => medianDays <= choices.horizonDays * shownHorizons && priceMinor > leftMinor,
  )
  const points = (shown.length > 1 ? shown : curve).map(({ priceMinor, medianDays }) => ({
    x: major(priceMinor),
    y: medianDays,
  }))
  const at = [{ x: major(best.priceMinor), y: best.medianDays, name: 'brings most' }]
  return plot({
    className: 'asking-plot',
    width,
    height: heightPx,
    marginLeft: 40,
    marginRight: 20,
    marginTop: 16,
    marginBottom: 30,
    y: { domain: [0, Math.max(...points.map(({ y }) => y))] },
    marks: [
      ruleY([0], { stroke: 'var(--ink)' }),
      axisX({ label: null, ticks: Math.max(3, Math.round(width / 90)), tickSize: 4 }),
      axisY({ label: null, ticks: 4, tickSize: 4 }),
      lineY(points, { x: 'x', y: 'y', stroke: 'var(--ink)', strokeWidth: 2 }),
      dot(at, { x: 'x', y: 'y', r: 6, fill: 'var(--paper)', stroke: 'var(--ink)', strokeWidth: 2 }),
      text(at, {
        x: 'x',
        y: 'y',
        text: 'name',
        textAnchor: 'end',
        dx: -10,
        dy: -8,
        fontWeight: 700,
        fill: 'var(--ink)',
        stroke: 'var(--paper)',
        strokeWidth: 4,
      }),
    ],
  })
}
