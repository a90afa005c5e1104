import { htmlText } from './html-text.ts'
import type { StoryAir, StoryCurve, StoryFigure, StoryXY } from './story.ts'

const box = { width: 640, height: 300, left: 52, right: 16, top: 14, bottom: 42 } as const
/** Room beyond the largest figure. */
const beyond = { x: 1.04, y: 1.1 } as const

type Chart = {
  readonly curves: readonly StoryCurve[]
  readonly of: (curve: StoryCurve) => StoryFigure
  readonly title: string
}

/** What the gauge showed of the air, before and after: two charts, what their lines mean, and the figures by hole. */
export const storyCurves = ({ text, curves, times }: StoryAir): string =>
  [
    text === '' ? '' : `<p>${htmlText(text)}</p>`,
    chart({ curves, of: ({ suction }) => suction, title: 'Suction, kPa, against airflow, L/s' }),
    chart({ curves, of: ({ airPower }) => airPower, title: 'Air power, W, against airflow, L/s' }),
    `<ul class="lines">${curves.map(lineName).join('')}</ul>`,
    times.length === 0 ? '' : timesTable(times),
  ].join('')

const lineName = ({ look, name, peak }: StoryCurve): string =>
  `<li><svg class="chart" width="40" height="12" aria-hidden="true"><path class="curve ${look}" d="M2 6H38"/></svg> ${htmlText(name)}${peak === '' ? '' : `: ${htmlText(peak)} of air power at most`}</li>`

const chart = ({ curves, of, title }: Chart): string => {
  const figures = curves.map((curve) => ({ look: curve.look, figure: of(curve) }))
  const all = figures.flatMap(({ figure: { low, high, points } }) => [...low, ...high, ...points])
  const end = {
    x: beyond.x * Math.max(1e-9, ...all.map(({ x }) => x)),
    y: beyond.y * Math.max(1e-9, ...all.map(({ y }) => y)),
  }
  const at = ({ x, y }: StoryXY): string =>
    `${px(box.left + (x / end.x) * (box.width - box.left - box.right))} ${px(box.height - box.bottom - (y / end.y) * (box.height - box.top - box.bottom))}`
  return [
    `<figure><figcaption>${htmlText(title)}</figcaption>`,
    `<svg class="chart" width="${box.width}" height="${box.height}" viewBox="0 0 ${box.width} ${box.height}" role="img" aria-label="${htmlText(title)}">`,
    ticks(end.x, 6).map((x) => `<text class="tick" text-anchor="middle" x="${at({ x, y: 0 }).split(' ')[0]}" y="${box.height - box.bottom + 18}">${x}</text>`).join(''), // prettier-ignore
    ticks(end.y, 5)
      .map((y) => {
        const top = Number(at({ x: 0, y }).split(' ')[1])
        return `<path class="grid" d="M${box.left} ${top}H${box.width - box.right}"/><text class="tick" text-anchor="end" x="${box.left - 6}" y="${top + 4}">${y}</text>`
      })
      .join(''),
    ...figures.map(({ look, figure }) => lines(look, figure, at)),
    '</svg></figure>',
  ].join('')
}

const px = (value: number): number => Number(value.toFixed(1))

const lines = (
  look: StoryCurve['look'],
  { middle, low, high, points }: StoryFigure,
  at: (place: StoryXY) => string,
) => {
  const around = [...low, ...high.toReversed()]
  const dots = points.map((point) => {
    const [x, y] = at(point).split(' ')
    return `<circle class="dot ${look}" cx="${x}" cy="${y}" r="4"/>`
  })
  return `<path class="band ${look}" d="${way(around, at)}z"/><path class="curve ${look}" d="${way(middle, at)}"/>${dots.join('')}`
}

const way = (places: readonly StoryXY[], at: (place: StoryXY) => string): string =>
  places.length === 0 ? 'M0 0' : `M${places.map(at).join('L')}`

/** Round numbers from 0 up to an end, about so many. */
const ticks = (end: number, count: number): readonly number[] => {
  const rough = end / count
  const size = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map((one) => one * size).find((one) => one >= rough) ?? 10 * size
  return Array.from({ length: Math.floor(end / step) + 1 }, (_, at) => Number((at * step).toPrecision(6)))
}

const timesTable = (times: StoryAir['times']): string =>
  [
    '<table><caption>How many times what it was</caption>',
    '<thead><tr><th scope="col">Through</th><th scope="col">Suction</th><th scope="col">Air power</th></tr></thead><tbody>',
    ...times.map(
      ({ hole, suction, airPower }) =>
        `<tr><th scope="row">${htmlText(hole)}</th><td>${htmlText(suction)}</td><td>${htmlText(airPower)}</td></tr>`,
    ),
    '</tbody></table>',
  ].join('')
