import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { machineOnBench, noteOnBench, putOnBench } from './bench.ts'
import { browserHere, laptop, phone } from './chromium.ts'
import { axeViolations, contrastViolations, settled, sideways } from './looks.ts'
import { startApp, type RunningApp } from './running-app.ts'

const jpeg = async (): Promise<Buffer> =>
  sharp({ create: { width: 800, height: 600, channels: 3, background: 'teal' } })
    .jpeg()
    .toBuffer()

describe.runIf(browserHere())('the sale sheet', () => {
  let app: RunningApp
  beforeAll(async () => {
    app = await startApp()
  })
  afterAll(() => app.stop())

  it('is put in own words on a phone; a claim that no note bears out is marked in words', async () => {
    const page = await app.page(phone)
    const { state } = await putOnBench(page, {})
    await page.goto(`/machine/${state.id}/sale`)
    const opening = page.getByRole('region', { name: 'What it is', exact: true })
    await opening.getByRole('button', { name: 'Edit: What it is' }).click()
    await opening.getByRole('textbox').fill('A good old upright, PAT tested, like new.')
    await opening.getByRole('button', { name: 'Put it so' }).click()
    await opening.getByText('(no note)').first().waitFor()
    expect(await opening.locator('mark').allInnerTexts()).toEqual(['PAT tested (no note)', 'like new (no note)'])
    await page.getByText('2 claims are not borne out by the notes.').waitFor()
    // The sheet stays where it is: what goes out opens beside it or is kept as a file.
    for (const name of ['Text', 'PDF', 'Page with its photographs'])
      expect(await page.getByRole('link', { name, exact: true }).getAttribute('target')).toBe('_blank')
    for (const [name, end] of [
      ['Keep the PDF as a file', '.pdf'],
      ['Keep the page as a file', '.html'],
    ] as const)
      expect(await page.getByRole('link', { name }).getAttribute('download')).toMatch(
        new RegExp(`^sale-sheet.*\\${end}$`),
      )
    const { notes } = await machineOnBench(page, state.id)
    expect(notes.at(-1)?.content).toMatchObject({ kind: 'worded', section: 'opening' })

    await settled(page)
    expect(await axeViolations(page)).toEqual([])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    await page.emulateMedia({ colorScheme: 'dark' })
    await settled(page)
    expect(await contrastViolations(page)).toEqual([])

    await opening.getByRole('button', { name: 'As the notes say it: What it is' }).click()
    await opening.locator('mark').first().waitFor({ state: 'detached' })
    await page
      .getByText(/^\d claims found, all borne out by the notes\. What is in your own words besides is yours\.$/)
      .waitFor()
    await page.close()
  })

  it('goes out as one page with its photographs, which loads nothing else and has no script', async () => {
    const page = await app.page(laptop)
    const { state } = await putOnBench(page, {})
    const kept = await page.request.post('/api/photos', {
      headers: { 'content-type': 'application/octet-stream' },
      data: await jpeg(),
    })
    const { id } = (await kept.json()) as { readonly id: string }
    await noteOnBench(page, state.id, { kind: 'photo', photo: id, shot: 'front', when: 'after' })
    const asked: string[] = []
    page.on('request', (request) => asked.push(request.url()))
    await page.goto(`/api/bench/own/machines/${state.id}/sale-sheet.html`)
    const image = page.getByRole('img', { name: 'Front' })
    expect(await image.evaluate((one: HTMLImageElement) => [one.complete, one.naturalWidth])).toEqual([true, 800])
    expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([page.url()])
    expect(await sideways(page)).toEqual({ scrolledPx: 0, sticksOut: [] })
    await page.close()
  })
})
