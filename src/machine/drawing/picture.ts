import type { Blueprint } from '../../blueprint/schema.ts'
import { isLevel, liesOn, middleOf, runsOf, type Place } from './grid.ts'
import { placeNumbers } from './labels.ts'
import { halves, layOut, usualGap, type DrawnCover, type DrawnElement } from './layout.ts'
import { sidesOf } from './potential.ts'
import { fit, type Scale } from './scale.ts'
import { symbolOf, type SymbolShape } from './symbols.ts'

/** One line, dot or word of a picture, px. `look` says how it is drawn. */
export type PictureShape =
  | { readonly kind: 'path'; readonly look: string; readonly d: string }
  | { readonly kind: 'circle'; readonly look: string; readonly x: number; readonly y: number; readonly r: number }
  | {
      readonly kind: 'text'
      readonly look: string
      readonly x: number
      readonly y: number
      readonly anchor: 'start' | 'middle'
      readonly text: string
    }
  /** Shapes about a place of their own, turned upright where `turned`. */
  | {
      readonly kind: 'at'
      readonly x: number
      readonly y: number
      readonly turned: boolean
      readonly shapes: readonly PictureShape[]
    }

/** The circuit of a machine as plain shapes, for paper and files. */
export type MachinePicture = {
  readonly widthPx: number
  readonly heightPx: number
  readonly description: string
  readonly shapes: readonly PictureShape[]
  /** Cores are black and white instead of brown and blue. */
  readonly blackAndWhite: boolean
  /** Names of the parts by number from 1, and of the covers by letter. */
  readonly parts: readonly string[]
  readonly covers: readonly { readonly letter: string; readonly name: string }[]
}

/** Cores are brown and blue (IEC 60445) above this voltage, black and white (North American practice) below. */
export const blackAndWhiteBelowV = 200

/**
 * The circuit of a blueprint fitted into a width, with some parts marked.
 * @param marked ids of the parts that are shaded
 */
export const machinePicture = (blueprint: Blueprint, marked: readonly string[], widthPx: number): MachinePicture => {
  const layout = layOut(blueprint)
  const sides = sidesOf(blueprint)
  const scale = fit(layout, widthPx, usualGap(blueprint.points.map(({ at: [x, y] }) => ({ x, y }))))
  const nameOf = (id: string): string => blueprint.parts.find((part) => part.id === id)?.name ?? id
  const drawn = layout.elements.filter(({ element }) => element.kind !== 'stray')
  // A point that nothing drawn leads to, such as the metal of the motor, would be a dot in the void.
  const touched = blueprint.points.filter(({ id }) =>
    drawn.some(({ element: { from, to } }) => from === id || to === id),
  )
  const joints = layout.joints.filter((joint) => drawn.some(({ way }) => runsOf(way).some((run) => liesOn(joint, run))))
  const isMarked = ({ element }: DrawnElement): boolean => marked.includes(element.part)
  const shapes: readonly PictureShape[] = [
    ...drawn.filter(isMarked).map(({ way }) => path('tint', way, scale)),
    ...layout.covers.flatMap((cover) => outline(cover, scale)),
    ...drawn.flatMap((one) => element(one, scale, sides)),
    ...placeNumbers(layout, scale).map(({ text, at }) => label('part-number', text, at.x, at.y + 3.5, 'middle')),
    ...[...touched.map(({ at: [x, y] }) => ({ x, y })), ...joints].map((place) => point(place, scale)),
  ]
  const names = [...new Set(drawn.filter(isMarked).map(({ element: { part } }) => nameOf(part)))]
  const letters = new Map(layout.covers.map(({ cover, letter }) => [cover, letter]))
  return {
    widthPx: scale.width,
    heightPx: scale.height,
    description: `Circuit of ${blueprint.name}.${names.length === 0 ? '' : ` Shaded: ${names.join(', ')}.`}`,
    shapes,
    blackAndWhite: blueprint.plate.voltageV < blackAndWhiteBelowV,
    parts: layout.parts.map(nameOf),
    covers: [...letters].map(([cover, letter]) => ({
      letter,
      name: blueprint.covers.find(({ id }) => id === cover)?.name ?? cover,
    })),
  }
}

const pathText = (way: readonly Place[], scale: Scale): string =>
  way.map((place, at) => `${at === 0 ? 'M' : 'L'}${tidy(scale.at(place).x)} ${tidy(scale.at(place).y)}`).join('')

const tidy = (px: number): number => Number(px.toFixed(2))

const path = (look: string, way: readonly Place[], scale: Scale): PictureShape => ({
  kind: 'path',
  look,
  d: pathText(way, scale),
})

const label = (look: string, text: string, x: number, y: number, anchor: 'start' | 'middle'): PictureShape => ({
  kind: 'text',
  look,
  x: tidy(x),
  y: tidy(y),
  anchor,
  text,
})

const point = (place: Place, scale: Scale): PictureShape => {
  const { x, y } = scale.at(place)
  return { kind: 'circle', look: 'point', x: tidy(x), y: tidy(y), r: 2.2 }
}

const element = (drawn: DrawnElement, scale: Scale, sides: ReturnType<typeof sidesOf>): readonly PictureShape[] => {
  const { element: one, run } = drawn
  const [first, second] = halves(drawn)
  const { x, y } = scale.at(middleOf(run))
  const shapes = symbolOf(one.kind).map(symbolShape)
  return [
    path(`conductor ${sides.get(one.from) ?? 'neither'}`, first, scale),
    path(`conductor ${sides.get(one.to) ?? 'neither'}`, second, scale),
    { kind: 'at', x: tidy(x), y: tidy(y), turned: one.kind !== 'motor' && !isLevel(run), shapes },
  ]
}

const looks = { line: 'symbol', filled: 'symbol filled', blank: 'blank' } as const

const symbolShape = (shape: SymbolShape): PictureShape => {
  switch (shape.kind) {
    case 'path':
      return { kind: 'path', look: looks[shape.look], d: shape.d }
    case 'circle':
      return { kind: 'circle', look: looks[shape.look], x: shape.x, y: shape.y, r: shape.r }
    case 'letter':
      return label('symbol-letter', shape.text, 0, shape.y, 'middle')
  }
}

const outlinePadPx = 10

const outline = ({ low, high, letter }: DrawnCover, scale: Scale): readonly PictureShape[] => {
  const [from, to] = [scale.at(low), scale.at(high)]
  const [left, top, right, bottom] = [
    from.x - outlinePadPx,
    from.y - outlinePadPx,
    to.x + outlinePadPx,
    to.y + outlinePadPx,
  ].map(tidy)
  return [
    { kind: 'path', look: 'outline', d: `M${left} ${top}H${right}V${bottom}H${left}z` },
    label('outline-letter', letter, (left ?? 0) + 2, (bottom ?? 0) + 10, 'start'),
  ]
}
