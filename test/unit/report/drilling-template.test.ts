import { describe, expect, it } from 'vitest'
import { valueOf } from '../../../src/base/result.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { airRigOf } from '../../../src/machine/air/air-rig.ts'
import { drillingTemplateSvg } from '../../../src/report/drilling-template.ts'

const attribute = (element: string, name: string): number =>
  Number(new RegExp(` ${name}="([^"]*)"`).exec(element)?.[1] ?? NaN)
const elements = (svg: string, tag: string, kind: string): readonly string[] =>
  svg.match(new RegExp(`<${tag} [^>]*class="${kind}"[^>]*>|<${tag} class="${kind}"[^>]*>`, 'g')) ?? []

const templateOf = (blueprint: (typeof blueprints)[number]) => {
  const rig = valueOf(airRigOf(blueprint))
  const { plate, chamber, holes } = rig
  const svg = drillingTemplateSvg({
    title: rig.of,
    plateMm: plate.sideMm,
    thicknessMm: plate.thicknessMm,
    boreMm: chamber.boreMm,
    holes,
  })
  return { rig, svg }
}

describe('a drilling template', () => {
  it.each(blueprints)('$id: circles as wide as the holes, a line of 100 mm, all on the page', (blueprint) => {
    const { rig, svg } = templateOf(blueprint)
    expect(svg).toMatch(/^<svg [^>]*width="210mm" height="297mm" viewBox="0 0 210 297"/)
    const circles = elements(svg, 'circle', 'hole')
    expect(circles.map((one) => 2 * attribute(one, 'r'))).toEqual(rig.holes.map((hole) => hole.diameterMm))
    const [rule] = elements(svg, 'line', 'rule')
    expect(attribute(rule, 'x2') - attribute(rule, 'x1')).toBe(100)
    const [plate] = elements(svg, 'rect', 'plate')
    expect(attribute(plate, 'width')).toBe(rig.plate.sideMm)
    const centre = [
      attribute(plate, 'x') + attribute(plate, 'width') / 2,
      attribute(plate, 'y') + attribute(plate, 'height') / 2,
    ]
    for (const one of circles) expect([attribute(one, 'cx'), attribute(one, 'cy')]).toEqual(centre)
    expect(elements(svg, 'line', 'cross')).toHaveLength(2)
    for (const { diameterMm } of rig.holes) expect(svg).toContain(`>⌀ ${diameterMm} mm</text>`)
    const lowest = Math.max(...[...svg.matchAll(/<text x="[^"]*" y="([^"]*)"/g)].map(([, y]) => Number(y)))
    expect(lowest).toBeLessThan(290)
  })

  it('stands alone and keeps what is typed as text', () => {
    const svg = drillingTemplateSvg({
      title: 'a <b> & "c"',
      plateMm: 124,
      thicknessMm: 1.5,
      boreMm: 104,
      holes: [{ diameterMm: 12.5, drill: 'twist drill' }],
    })
    expect(svg).toContain('a &lt;b&gt; &amp; &quot;c&quot;')
    expect(svg).not.toMatch(/href|url\(|<image|<script/)
  })

  it('refuses a plate that does not fit on the page', () => {
    expect(() => drillingTemplateSvg({ title: 'x', plateMm: 190, thicknessMm: 1, boreMm: 170, holes: [] })).toThrow(
      'wider than the page',
    )
  })
})
