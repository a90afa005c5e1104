import { useMemo, useRef } from 'react'
import type { Blueprint } from '../../blueprint/schema.ts'
import { isLevel, middleOf, type Place } from '../../machine/drawing/grid.ts'
import { placeNumbers } from '../../machine/drawing/labels.ts'
import {
  halves,
  layOut,
  usualGap,
  type DrawnCover,
  type DrawnElement,
  type Layout,
} from '../../machine/drawing/layout.ts'
import { sidesOf } from '../../machine/drawing/potential.ts'
import { fit, type Scale } from '../../machine/drawing/scale.ts'
import type { CheckMove } from '../../machine/view.ts'
import { Fold } from '../parts/fold.tsx'
import { useWidth } from '../use-width.ts'
import { percentText } from '../words.ts'
import { ElementSymbol } from './symbols.tsx'
import { tintStrength } from './tint.ts'

type DrawingProps = {
  readonly blueprint: Blueprint
  /** Probability that each part is faulty, by part id. */
  readonly tints: Readonly<Record<string, number>>
  /** Covers that are off; null for an architecture, which has no covers on or off. */
  readonly off: readonly string[] | null
  readonly probes: CheckMove['probes']
}

/** Cores are brown and blue (IEC 60445) above this voltage, black and white (North American practice) below. */
const blackAndWhiteBelowV = 200

/** The circuit: conductors in their colours, suspects shaded, covers as dashed outlines, probes marked. */
export const Drawing = ({ blueprint, tints, off, probes }: DrawingProps) => {
  const frame = useRef<HTMLDivElement>(null)
  const width = useWidth(frame)
  const layout = useMemo(() => layOut(blueprint), [blueprint])
  const sides = useMemo(() => sidesOf(blueprint), [blueprint])
  const gap = useMemo(() => usualGap(blueprint.points.map(({ at: [x, y] }) => ({ x, y }))), [blueprint])
  const scale = fit(layout, width, gap)
  const solid = layout.elements.filter(({ element }) => element.kind !== 'stray')
  return (
    <div className={blueprint.plate.voltageV < blackAndWhiteBelowV ? 'drawing black-and-white' : 'drawing'}>
      <div ref={frame} className="drawing-frame" {...(scale.width > width ? scrolled : {})}>
        <svg
          width={scale.width}
          height={scale.height}
          role="img"
          aria-label={described(blueprint, layout, tints, probes)}
        >
          {solid.map((drawn) => (
            <Tint
              key={drawn.element.id}
              drawn={drawn}
              scale={scale}
              strength={tintStrength(tints, drawn.element.part)}
            />
          ))}
          {layout.covers.map((cover) => (
            <Outline
              key={`${cover.cover} ${cover.low.x} ${cover.low.y}`}
              cover={cover}
              scale={scale}
              off={off?.includes(cover.cover) ?? false}
            />
          ))}
          {layout.elements.map((drawn) => (
            <Element
              key={drawn.element.id}
              drawn={drawn}
              scale={scale}
              sides={sides}
              name={partName(blueprint, drawn.element.part)}
            />
          ))}
          {placeNumbers(layout, scale).map(({ element, text, at }) => (
            <text key={element} className="part-number" textAnchor="middle" x={at.x} y={at.y + 3.5}>
              {text}
            </text>
          ))}
          <Points blueprint={blueprint} layout={layout} scale={scale} />
          {probes === null ? null : <Probes blueprint={blueprint} scale={scale} probes={probes} />}
        </svg>
      </div>
      <Key blueprint={blueprint} layout={layout} tints={tints} off={off} />
    </div>
  )
}

/** A circuit wider than the window is moved sideways, by key too. */
const scrolled = { tabIndex: 0, role: 'group', 'aria-label': 'Drawing, wider than the window' } as const

const partName = (blueprint: Blueprint, id: string): string =>
  blueprint.parts.find((part) => part.id === id)?.name ?? id

const described = (
  blueprint: Blueprint,
  layout: Layout,
  tints: DrawingProps['tints'],
  probes: DrawingProps['probes'],
): string => {
  const lead = [...layout.parts].sort((a, b) => (tints[b] ?? 0) - (tints[a] ?? 0)).slice(0, 3)
  const suspects = lead
    .filter((id) => (tints[id] ?? 0) > 0)
    .map((id) => `${partName(blueprint, id)} ${percentText(tints[id] ?? 0)}`)
  const suspected = suspects.length === 0 ? '' : ` Most suspected: ${suspects.join(', ')}.`
  return `Circuit of ${blueprint.name}.${suspected}${probes === null ? '' : ` Red probe on ${probes.red.name}, black probe on ${probes.black.name}.`}`
}

const pathOf = (way: readonly Place[], scale: Scale): string =>
  way.map((place, at) => `${at === 0 ? 'M' : 'L'}${scale.at(place).x} ${scale.at(place).y}`).join('')

type TintProps = { readonly drawn: DrawnElement; readonly scale: Scale; readonly strength: number }

const Tint = ({ drawn, scale, strength }: TintProps) =>
  strength === 0 ? null : <path className="tint" d={pathOf(drawn.way, scale)} style={{ opacity: 0.75 * strength }} />

type ElementProps = {
  readonly drawn: DrawnElement
  readonly scale: Scale
  readonly sides: ReturnType<typeof sidesOf>
  readonly name: string
}

const Element = ({ drawn, scale, sides, name }: ElementProps) => {
  const { element, run } = drawn
  const [first, second] = halves(drawn)
  const middle = scale.at(middleOf(run))
  const turn = element.kind === 'motor' || isLevel(run) ? '' : ' rotate(90)'
  return (
    <g className={`element ${element.kind}`}>
      <title>{name}</title>
      <path className={`conductor ${sides.get(element.from) ?? 'neither'}`} d={pathOf(first, scale)} />
      <path className={`conductor ${sides.get(element.to) ?? 'neither'}`} d={pathOf(second, scale)} />
      <g transform={`translate(${middle.x} ${middle.y})${turn}`}>
        <ElementSymbol kind={element.kind} />
      </g>
    </g>
  )
}

const outlinePad = 10
/** How far a cover lifts off the drawing when it is off. */
const liftPx = 5

const Outline = ({
  cover,
  scale,
  off,
}: {
  readonly cover: DrawnCover
  readonly scale: Scale
  readonly off: boolean
}) => {
  const [low, high] = [scale.at(cover.low), scale.at(cover.high)]
  const [x, y] = [low.x - outlinePad, low.y - outlinePad]
  return (
    <g className={off ? 'outline off' : 'outline'} transform={off ? `translate(${liftPx} ${-liftPx})` : undefined}>
      <rect x={x} y={y} width={high.x - low.x + 2 * outlinePad} height={high.y - low.y + 2 * outlinePad} />
      <text x={x + 2} y={high.y + outlinePad + 10}>
        {cover.letter}
      </text>
    </g>
  )
}

const Points = ({
  blueprint,
  layout,
  scale,
}: {
  readonly blueprint: Blueprint
  readonly layout: Layout
  readonly scale: Scale
}) => {
  const points = blueprint.points.map(({ at: [x, y] }) => ({ x, y }))
  return [...points, ...layout.joints].map((place, index) => {
    const at = scale.at(place)
    return <circle key={`${index} ${place.x} ${place.y}`} className="point" cx={at.x} cy={at.y} r={2.2} />
  })
}

const Probes = ({
  blueprint,
  scale,
  probes,
}: {
  readonly blueprint: Blueprint
  readonly scale: Scale
  readonly probes: NonNullable<CheckMove['probes']>
}) =>
  (['red', 'black'] as const).map((colour) => {
    const point = blueprint.points.find(({ id }) => id === probes[colour].point)
    if (point === undefined) return null
    const at = scale.at({ x: point.at[0], y: point.at[1] })
    return (
      <g key={colour} className={`probe-mark ${colour}`}>
        <circle cx={at.x} cy={at.y} r={8} />
        <text x={at.x} y={at.y + 4} textAnchor="middle">
          {colour === 'red' ? 'R' : 'B'}
        </text>
      </g>
    )
  })

type KeyProps = {
  readonly blueprint: Blueprint
  readonly layout: Layout
  readonly tints: DrawingProps['tints']
  readonly off: readonly string[] | null
}

const Key = ({ blueprint, layout, tints, off }: KeyProps) => {
  const letters = new Map(layout.covers.map(({ cover, letter }) => [cover, letter]))
  return (
    <Fold title="Key to the drawing">
      <ol className="key-list" aria-label="Parts by number">
        {layout.parts.map((part, at) => (
          <li key={part}>
            <b className="figure">{at + 1}</b> {partName(blueprint, part)}{' '}
            {(tints[part] ?? 0) >= 0.01 ? <span className="figure quiet">{percentText(tints[part] ?? 0)}</span> : null}
          </li>
        ))}
      </ol>
      <ul className="key-list" aria-label="Covers by letter">
        {[...letters].map(([cover, letter]) => (
          <li key={cover}>
            <b>{letter}</b> {blueprint.covers.find(({ id }) => id === cover)?.name ?? cover}{' '}
            {off === null ? null : <span className="quiet">{off.includes(cover) ? 'off' : 'on'}</span>}
          </li>
        ))}
      </ul>
      <p className="quiet">
        Brown: line. Blue: neutral. Dashed: covers, and paths that only a fault makes.
        {Object.keys(tints).length === 0 ? null : ' Shading: how suspected.'}
      </p>
    </Fold>
  )
}
