/** What a drilling template shows. All in millimetres. */
export type DrillingTemplate = {
  readonly title: string
  /** Side of the square plate. */
  readonly plateMm: number
  readonly thicknessMm: number
  /** Bore of the chamber the plate lies on. */
  readonly boreMm: number
  /** In the order of drilling. */
  readonly holes: readonly { readonly diameterMm: number; readonly drill: string }[]
}

const page = { widthMm: 210, heightMm: 297, marginMm: 15 } as const
const plateTopMm = 44
const centreX = page.widthMm / 2
/** What is printed beside it to see whether the printer kept the scale. */
const ruleMm = 100

/**
 * A page of A4 as SVG, black on white: the plate with every hole about its centre, a line of 100 mm, and the order of drilling.
 * There is one plate for each hole, so the page is printed once for each. Throws when the plate is wider than the page.
 */
export const drillingTemplateSvg = (template: DrillingTemplate): string => {
  if (template.plateMm > page.widthMm - 2 * page.marginMm) throw new RangeError('the plate is wider than the page')
  const { widthMm, heightMm } = page
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}" font-family="sans-serif" font-size="3.6" fill="black" stroke="none">`,
    `<title>${escaped(template.title)}</title>`,
    `<rect width="${widthMm}" height="${heightMm}" fill="white"/>`,
    ...heading(template),
    ...plate(template),
    ...order(template),
    '</svg>',
    '',
  ].join('\n')
}

const text = (x: number, y: number, words: string, more = ''): string =>
  `<text x="${tidy(x)}" y="${tidy(y)}"${more}>${escaped(words)}</text>`

const line = (x1: number, y1: number, x2: number, y2: number, more = ''): string =>
  `<line x1="${tidy(x1)}" y1="${tidy(y1)}" x2="${tidy(x2)}" y2="${tidy(y2)}" stroke="black" stroke-width="0.2"${more}/>`

const tidy = (mm: number): number => Number(mm.toFixed(3))

const escaped = (words: string): string =>
  words.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')

const heading = ({ title }: DrillingTemplate): readonly string[] => {
  const [x, y] = [page.marginMm, 34]
  return [
    text(x, 16, title, ' font-size="5" font-weight="bold"'),
    text(x, 22, 'Print at 100 %, not “fit to page”. Measure the line: if it is not 100 mm long, do not use the page.'),
    line(x, y, x + ruleMm, y, ' class="rule"'),
    ...[0, ruleMm / 2, ruleMm].map((at) => line(x + at, y - 2, x + at, y + 2)),
    text(x + ruleMm + 4, y + 1.2, `${ruleMm} mm`),
  ]
}

const plate = (template: DrillingTemplate): readonly string[] => {
  const { plateMm, boreMm, holes } = template
  const centreY = plateTopMm + plateMm / 2
  const left = centreX - plateMm / 2
  const widest = Math.max(...holes.map(({ diameterMm }) => diameterMm))
  const reach = widest / 2 + 6
  return [
    `<rect class="plate" x="${tidy(left)}" y="${plateTopMm}" width="${plateMm}" height="${plateMm}" fill="none" stroke="black" stroke-width="0.3"/>`,
    circle('rim', boreMm, centreY, ' stroke-dasharray="2 1.5"'),
    ...holes.map(({ diameterMm }) => circle('hole', diameterMm, centreY)),
    line(centreX - reach, centreY, centreX + reach, centreY, ' class="cross"'),
    line(centreX, centreY - reach, centreX, centreY + reach, ' class="cross"'),
    ...holes.flatMap((hole, i) => label(hole.diameterMm, i, holes.length, centreY, widest)),
    text(left + 2, plateTopMm + 5, 'plate'),
    text(centreX, centreY + boreMm / 2 - 3, 'rim of the chamber', ' text-anchor="middle"'),
  ]
}

const circle = (kind: string, diameterMm: number, centreY: number, more = ''): string =>
  `<circle class="${kind}" cx="${centreX}" cy="${tidy(centreY)}" r="${diameterMm / 2}" fill="none" stroke="black" stroke-width="0.2"${more}/>`

/** A leader from the circle to its diameter, the labels one above another, clear of the cross. */
const label = (diameterMm: number, i: number, count: number, centreY: number, widest: number): readonly string[] => {
  const angle = ((80 - (70 * (i + 0.5)) / count) * Math.PI) / 180
  const x = centreX + (diameterMm / 2) * Math.cos(angle)
  const y = centreY - (diameterMm / 2) * Math.sin(angle)
  const endX = centreX + widest / 2 + 9
  const endY = centreY - 5 - (count - 1 - i) * 6.5
  return [line(x, y, endX, endY), text(endX + 1, endY + 1.2, `⌀ ${diameterMm} mm`)]
}

const order = ({ plateMm, thicknessMm, holes }: DrillingTemplate): readonly string[] => {
  const top = plateTopMm + plateMm + 9
  const lines = [
    `Plates: ${holes.length}, each ${plateMm} mm square and ${thicknessMm} mm thick or less, one hole in each. Print this page once for each plate.`,
    'Glue the page on, punch the centre, wear eye protection, clamp the sheet, pilot with 3 mm. Then, in this order:',
    ...holes.map(({ diameterMm, drill }, i) => `${i + 1}.  ⌀ ${diameterMm} mm, ${drill}`),
    'Burrs off flat, edges square and sharp: no countersink.',
    'Lay the finished plate on a fresh page, corners on corners: its circle must just show all round.',
  ]
  return lines.map((words, i) => text(page.marginMm, top + 5.2 * i, words))
}
