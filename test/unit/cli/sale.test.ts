import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { SaleSheetView } from '../../../src/bench/sale/sheet-view.ts'
import { makeCommandLine, type CommandLine } from './command-line.ts'

describe('thrum sale-sheet, worded and open-data', () => {
  let line: CommandLine
  let id = ''
  beforeAll(async () => {
    line = await makeCommandLine()
    const { value } = await line.json(
      'add',
      '--name',
      'Grey upright',
      '--blueprint',
      'bagged-upright-one-motor',
      '--paid',
      '5',
    )
    id = (value as { readonly state: { readonly id: string } }).state.id
  })
  afterAll(() => line.remove())

  it('puts a section in own words, marks what no note bears out, and gives the section back', async () => {
    expect((await line.run('worded', id, 'opening', 'Like new, PAT tested')).code).toBe(0)
    const { value } = await line.json('sale-sheet', id)
    expect((value as SaleSheetView).unsupported).toBe(2)
    const { out } = await line.run('sale-sheet', id, '--text')
    expect(out).toContain('Like new †, PAT tested †')
    await line.run('worded', id, 'opening', '')
    expect(((await line.json('sale-sheet', id)).value as SaleSheetView).unsupported).toBe(0)
  })

  it('writes PDF and page, and refuses a section that there is not', async () => {
    const [pdf, html] = [join(line.folder, 's.pdf'), join(line.folder, 's.html')]
    expect((await line.run('sale-sheet', id, '--pdf', pdf, '--html', html)).code).toBe(0)
    expect((await readFile(pdf)).subarray(0, 5).toString()).toBe('%PDF-')
    expect(await readFile(html, 'utf8')).toContain('Grey bagged upright')
    expect((await line.run('worded', id, 'price', 'x')).code).toBe(1)
  })

  it('takes open data out and in', async () => {
    await line.run('leave', id, 'scrap', '0')
    const file = join(line.folder, 'open.csv')
    expect((await line.run('open-data', 'export', file, '--provider', 'A bench')).code).toBe(0)
    const { value } = await line.json('open-data', 'import', file)
    expect(value).toMatchObject({ kind: 'imported', already: 0 })
    expect((await line.run('open-data', 'import', await line.file('bad.csv', 'a,b\n1,2'))).err).toContain(
      'There is no column “id”',
    )
    expect((await line.run('open-data', 'sideways', file)).code).toBe(1)
    expect((await line.run('open-data', 'export')).err).toContain('No file is named')
    const { out } = await line.run('open-data', 'list', '--status', 'end of life')
    expect(out).toMatch(/^End of life: .* · Vacuum cleaner ~ .* · A bench$/m)
    expect(out).toContain('1 record found')
    expect((await line.json('open-data', 'list', '--status', 'Fixed')).value).toMatchObject({ items: [], total: 0 })
    expect((await line.run('open-data', 'list', '--status', 'half')).code).toBe(1)
    expect((await line.run('open-data', 'list', '--after', 'x')).err).toMatch(/^--after: “x” is no place of a list\./)
  })
})
