import { axisX, axisY, dot, line, plot, ruleY, text, type Markish } from '@observablehq/plot'
import { useLayoutEffect, useRef } from 'react'
import { useWidth } from '../use-width.ts'
import { bandOutline, toXY, type CurveLine, type Figure, type ShownUnits, type XY } from './curve-lines.ts'
import { threeFigures } from './gauge-units.ts'

type CurvePictureProps = {
  readonly figure: Figure
  readonly lines: readonly CurveLine[]
  readonly units: ShownUnits
  /** What the picture shows, in words. */
  readonly description: string
}

/** The curves to the width of their box, in the colours of the theme. */
export const CurvePicture = ({ figure, lines, units, description }: CurvePictureProps) => {
  const frame = useRef<HTMLDivElement>(null)
  const width = useWidth(frame)
  const { suction, airflow } = units
  useLayoutEffect(() => {
    const picture = drawn(figure, lines, { suction, airflow }, width)
    // The page's policy lets no style sheet into a drawing; its few rules stand in air.css.
    picture.querySelector('style')?.remove()
    // The frame says in words what is drawn.
    picture.setAttribute('aria-hidden', 'true')
    frame.current?.replaceChildren(picture)
  }, [figure, lines, suction, airflow, width])
  return <div ref={frame} className="curve-frame" role="img" aria-label={description} />
}

const drawn = (figure: Figure, lines: readonly CurveLine[], units: ShownUnits, width: number) =>
  plot({
    className: 'air-plot',
    width,
    height: heightFor(width),
    ...margins,
    x: { domain: [0, endOf(lines, figure, units, 'x')] },
    y: { domain: [0, endOf(lines, figure, units, 'y')] },
    marks: [
      ruleY([0], { stroke: 'var(--ink)' }),
      axisX({ label: null, ticks: Math.max(3, Math.round(width / 90)), tickSize: 4 }),
      axisY({ label: null, ticks: 5, tickSize: 4 }),
      ...lines.flatMap((one) => marksOf(one, figure, units)),
      ...(figure === 'suction' ? namesOf(lines, units, width) : lines.flatMap((one) => peakMarks(one, lines, units))),
    ],
  })

const margins = { marginLeft: 46, marginRight: 20, marginTop: 14, marginBottom: 30 } as const

const heightFor = (width: number): number => Math.round(Math.min(300, Math.max(220, width * 0.72)))

/** Room beyond the largest figure. */
const beyond = { x: 1.04, y: 1.1 } as const

/** Where an axis ends. */
const endOf = (lines: readonly CurveLine[], figure: Figure, units: ShownUnits, axis: keyof XY): number =>
  beyond[axis] *
  Math.max(
    ...lines.flatMap(({ curve, look }) => [
      ...bandOutline(curve, figure, units).map((at) => at[axis]),
      ...(look === 'sound' ? [] : curve.points.map((point) => toXY(point, figure, units)[axis])),
    ]),
  )

const looks = {
  now: { stroke: 'var(--ink)', strokeWidth: 2, fillOpacity: 0.16, filled: 'var(--ink)' },
  before: { stroke: 'var(--pencil)', strokeWidth: 2, fillOpacity: 0.2, filled: 'var(--paper)' },
} as const

const marksOf = ({ look, curve }: CurveLine, figure: Figure, units: ShownUnits): Markish[] => {
  const outline = bandOutline(curve, figure, units)
  const at = { x: 'x', y: 'y' } as const
  if (look === 'sound')
    return [line(closed(outline), { ...at, stroke: 'var(--edge)', strokeWidth: 1, strokeDasharray: '4 3' })]
  const { stroke, strokeWidth, fillOpacity, filled } = looks[look]
  const points = curve.points.map((point) => toXY(point, figure, units))
  return [
    line(outline, { ...at, fill: stroke, fillOpacity, stroke: 'none' }),
    line(
      curve.band.map(({ middle }) => toXY(middle, figure, units)),
      { ...at, stroke, strokeWidth },
    ),
    dot(points, { ...at, r: 4, fill: filled, stroke, strokeWidth: 2 }),
  ]
}

const closed = (outline: readonly XY[]): readonly XY[] => [...outline, ...outline.slice(0, 1)]

/** Letters stand out from the lines behind them. */
const halo = { fill: 'var(--ink)', stroke: 'var(--paper)', strokeWidth: 4 } as const

/** Names of the newest points, beside each on the side away from the falling curve; a name that would lie on another is left out. */
const namesOf = (lines: readonly CurveLine[], units: ShownUnits, width: number): Markish[] => {
  const now = lines.find(({ look }) => look === 'now')
  if (now === undefined) return []
  const right = endOf(lines, 'suction', units, 'x')
  // What a pixel is worth along each axis.
  const wide = right / (width - margins.marginLeft - margins.marginRight)
  const high = endOf(lines, 'suction', units, 'y') / (heightFor(width) - margins.marginTop - margins.marginBottom)
  const named = now.curve.points
    .map((point) => ({ ...toXY(point, 'suction', units), name: point.name.replace(/ hole$/, '') }))
    .reduce<readonly Named[]>((kept, one) => {
      const isFree = kept.every(
        ({ x, y }) => Math.abs(x - one.x) > namePx * wide || Math.abs(y - one.y) > linePx * high,
      )
      return isFree ? [...kept, one] : kept
    }, [])
  const isFarRight = ({ x }: XY): boolean => x > right + (margins.marginRight - besidePx - namePx) * wide
  const beside = (points: readonly Named[], textAnchor: 'start' | 'end', dx: number): Markish =>
    text(points, { x: 'x', y: 'y', text: 'name', textAnchor, dx, dy: -9, ...halo })
  return [
    beside(
      named.filter((one) => !isFarRight(one)),
      'start',
      besidePx,
    ),
    beside(named.filter(isFarRight), 'end', besidePx),
  ]
}
/** Width of the longest name, height of a line, and how far a name stands from its point, px. */
const namePx = 46
const linePx = 17
const besidePx = 8
type Named = XY & { readonly name: string }

/** The top of each curve that was read; of the sound machine's where it stands alone. */
const peakMarks = ({ look, curve: { peak } }: CurveLine, lines: readonly CurveLine[], units: ShownUnits): Markish[] => {
  if (peak.kind !== 'peak' || (look === 'sound' && lines.length > 1)) return []
  const at = [{ ...toXY(peak, 'air-power', units), name: `${threeFigures(peak.airPowerW)} W` }]
  return [
    dot(at, { x: 'x', y: 'y', r: 8, stroke: 'var(--ink)', strokeWidth: look === 'before' ? 1 : 2 }),
    text(at, { x: 'x', y: 'y', text: 'name', dy: look === 'before' ? 22 : -20, fontWeight: 700, ...halo }),
  ]
}
