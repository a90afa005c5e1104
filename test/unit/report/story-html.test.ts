import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { jobOf } from '../../../src/bench/job.ts'
import { documentOf } from '../../../src/bench/queries.ts'
import type { NoteContentInput } from '../../../src/bench/note.ts'
import { storyView } from '../../../src/bench/story/story-view.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import { machinePicture } from '../../../src/machine/drawing/picture.ts'
import { htmlText } from '../../../src/report/html-text.ts'
import { storyHtml, storyPolicy } from '../../../src/report/story-html.ts'
import { hole, sealed, suctionAt } from '../../support/gauge.ts'
import { flexRefitted, gatesPassed, log } from '../../support/notes.ts'
import { tinyBlueprint } from '../../support/tiny-blueprint.ts'

const evil = "<script>alert(1)</script> \" onerror='x' & <img src=https://example.org/x.png>"
const [first, second, third] = ['a', 'b', 'c'].map((one) => one.repeat(64)) as [string, string, string]
const jpeg = Buffer.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3])

const contents: readonly NoteContentInput[] = [
  {
    kind: 'added',
    name: `Grey ${evil}`,
    blueprint: 'tiny',
    plate: tinyBlueprint.plate,
    paidMinor: 512,
    currency: 'GBP',
    complaints: ['dead'],
    claim: evil,
  },
  { kind: 'camera', state: 'rolling', film: evil },
  { kind: 'photo', photo: first, when: 'before', text: evil },
  ...gatesPassed,
  { kind: 'confirmed', fault: 'flex-open', text: evil },
  { kind: 'said', text: evil },
  { kind: 'photo', photo: third, about: { kind: 'note', note: 'n6' } },
  flexRefitted,
  { kind: 'photo', photo: second, when: 'after' },
  { kind: 'spent', costMinor: 377, text: 'parcel tape' },
  { kind: 'left', exit: 'sell-working', receivedMinor: 4321, safety: evil },
]

const told = async (withMoney: boolean, inputs = contents, isDemo = false): Promise<string> => {
  const notes = log(inputs)
  const document = await documentOf(notes, () => tinyBlueprint)
  const job = jobOf(document.state, notes, tinyBlueprint)
  const view = storyView({ document, blueprint: tinyBlueprint, job, region: 'UK', withMoney, isDemo })
  return storyHtml(view, ({ photo }) => Promise.resolve(photo === third ? null : jpeg))
}

describe('the story of a machine', () => {
  it('holds nothing that is fetched and nothing that runs', async () => {
    const html = await told(true)
    expect(html).not.toMatch(/<(script|link|iframe|object|embed|base|form)\b/i)
    // Within tags, no address but photographs inside the file and no event handler.
    const tags = html.match(/<[a-z][^>]*>/gi) ?? []
    expect(tags.length).toBeGreaterThan(100)
    const addresses = tags.flatMap((tag) => [...tag.matchAll(/\s(?:src|href|srcset|xlink:href|action)="([^"]*)"/gi)].map(([, to]) => to ?? '')) // prettier-ignore
    expect(addresses).toEqual(addresses.filter((to) => to.startsWith('data:image/jpeg;base64,')))
    expect(addresses).toHaveLength(2)
    expect(tags.filter((tag) => /\son[a-z]+=/i.test(tag.replace(/"[^"]*"/g, '""')))).toEqual([])
    expect(html).not.toMatch(/url\(|@import/)
  })

  it('shows what was written as it was written, and never as markup', async () => {
    const html = await told(false)
    expect(html).not.toContain('<script')
    expect(html.split(htmlText(evil)).length).toBeGreaterThan(5)
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;')
  })

  it('allows its own style by its hash and nothing else', async () => {
    const html = await told(false)
    const style = /<style>([\s\S]*?)<\/style>/.exec(html)?.[1] ?? ''
    expect(storyPolicy).toContain(createHash('sha256').update(style).digest('base64'))
    expect(storyPolicy).toContain("default-src 'none'")
    expect(html).toContain(`content="${htmlText(storyPolicy)}"`)
  })

  it('shows each photograph once, and says where one is not kept any more', async () => {
    const html = await told(false)
    expect(html.split(`base64,${jpeg.toString('base64')}`)).toHaveLength(3)
    expect(html.split('This photograph is not kept any more.')).toHaveLength(2)
  })

  it('tells money only where it is wanted', async () => {
    const amounts = ['£5.12', '£43.21', '£1.50', '£3.77']
    const without = await told(false)
    expect(amounts.filter((one) => without.includes(one))).toEqual([])
    expect(without).not.toMatch(/[£€]|parcel tape/)
    const withMoney = await told(true)
    // By hand: 43.21 received, 5.12 paid, 1.50 + 3.77 spent, so 32.82 is left.
    for (const amount of ['£5.12', '£5.27', '£43.21', '£32.82']) expect(withMoney).toContain(amount)
  })

  it('tells what was found, mended and how it ended, and what is invented', async () => {
    const html = await told(false, contents, true)
    expect(html).toContain('An invented machine of the demonstration')
    expect(html).toMatch(/What was wrong<\/h2><p>Confirmed: flex, live conductor open/)
    expect(html).toMatch(/What was mended<\/h2><p>Repaired: /)
    expect(html).toContain('It was sold working on 14 March 2026.')
    expect(html).toContain('<svg class="circuit"')
    expect(html).toContain('<b>0:00:00</b>')
  })

  it('leaves out a column and a key of which there is nothing, and names what is left over', async () => {
    const [start, ...rest] = contents
    const bare = await told(false, [
      start,
      { kind: 'reading', check: 'look-flex', result: { kind: 'grade', outcome: 'good' }, minutes: 40.2 },
      { kind: 'opened', cover: 'back', minutes: 0, fixings: [{ count: 2, kind: 'TX15', place: '' }] },
      { kind: 'closed', cover: 'back', minutes: 0, fixings: [{ count: 1, kind: 'TX15', place: '' }] },
    ])
    expect(bare).not.toContain('A sound one reads')
    expect(bare).not.toContain('Shaded:')
    expect(bare).toContain('<p>40 min of work in all.</p>')
    expect(bare).toContain('One TX15 screw is left over.')
    const full = await told(false, [start, ...rest])
    for (const one of ['A sound one reads', 'Shaded:']) expect(full).toContain(one)
  })

  it('has no dot in its drawing that no conductor leads to', () => {
    for (const blueprint of blueprints) {
      const { shapes } = machinePicture(blueprint, [], 640)
      const ways = shapes.flatMap((one) => (one.kind === 'path' && one.look.startsWith('conductor') ? [one.d] : []))
      const dots = shapes.flatMap((one) => (one.kind === 'circle' && one.look === 'point' ? [one] : []))
      for (const dot of dots)
        expect(
          ways.some((d) => lies(dot, d)),
          blueprint.id,
        ).toBe(true)
    }
  })

  it('draws what the gauge read where the axes say, before and after', async () => {
    const blueprint = blueprints.find(({ airWays }) => airWays.some(({ id }) => id === 'hose-end'))!
    const [repair] = blueprint.repairs
    const notes = log([
      { kind: 'added', name: 'Air', blueprint: blueprint.id, plate: blueprint.plate, paidMinor: 0, currency: 'GBP' },
      { kind: 'gauge', reading: suctionAt(sealed, 9000) },
      { kind: 'gauge', reading: suctionAt(hole(20), 4000) },
      { kind: 'repaired', repair: repair.id, option: repair.options[0].id, minutes: 5, costMinor: 0 },
      { kind: 'gauge', reading: suctionAt(sealed, 21_000) },
    ])
    const document = await documentOf(notes, () => blueprint)
    const job = jobOf(document.state, notes, blueprint)
    const view = storyView({ document, blueprint, job, region: 'UK', withMoney: false, isDemo: false })
    const html = await storyHtml(view, () => Promise.resolve(null))
    const chart = /Suction, kPa[^]*?<svg[^]*?<\/svg>/.exec(html)?.[0] ?? ''
    // The scale as one who looks at the paper would take it: from two figures beside the axis.
    const axis = [...chart.matchAll(/text-anchor="end" x="[\d.]+" y="([\d.]+)">([\d.]+)</g)].map(([, y, v]) => [Number(y) - 4, Number(v)] as const) // prettier-ignore
    const [[y0, v0], [y1, v1]] = [axis[0], axis.at(-1)!]
    const read = (look: string) =>
      [...chart.matchAll(new RegExp(`dot ${look}" cx="[\\d.]+" cy="([\\d.]+)"`, 'g'))]
        .map(([, y]) => v0 + ((Number(y) - y0) / (y1 - y0)) * (v1 - v0))
        .toSorted((a, b) => a - b)
    expect(read('before')).toHaveLength(2)
    expect(read('before')[0]).toBeCloseTo(4, 0)
    expect(read('before')[1]).toBeCloseTo(9, 0)
    expect(read('now')).toHaveLength(1)
    expect(read('now')[0]).toBeCloseTo(21, 0)
  })
})

/** Whether a place lies on a way of straight lines, to a twentieth of a pixel. */
const lies = ({ x, y }: { x: number; y: number }, d: string): boolean => {
  const ends = [...d.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(([, left, top]) => [Number(left), Number(top)] as const)
  return ends.some(([x2, y2], at) => {
    const [x1, y1] = ends[Math.max(0, at - 1)] ?? [x2, y2]
    return Math.abs(Math.hypot(x - x1, y - y1) + Math.hypot(x - x2, y - y2) - Math.hypot(x2 - x1, y2 - y1)) < 0.05
  })
}
