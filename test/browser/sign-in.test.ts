import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { valueOf } from '../../src/base/result.ts'
import { addPerson, type PeopleDeps } from '../../src/bench/people/people-commands.ts'
import { blueprintById } from '../../src/blueprint/library.ts'
import { startServer, type RunningServer } from '../../src/server/serve.ts'
import { makeSecrets } from '../../src/server/sign-in/passphrase-hash.ts'
import { openStore } from '../../src/store/sqlite/open-store.ts'
import { browserHere, launchBrowser, phone } from './chromium.ts'
import { atRest, axeViolations, settled, sideways } from './looks.ts'

const cheap = { ln: 4, r: 8, p: 1 }
const ada = 'correct horse battery'
const ben = 'four plain words here'
const blueprint = blueprintById('bagless-upright')!

/** People in the data folder, before the program starts. */
const addPeople = async (folder: string): Promise<void> => {
  const store = valueOf(await openStore({ folder }))
  let ids = 0
  const deps: PeopleDeps = {
    people: store.people,
    secrets: makeSecrets(cheap),
    now: () => new Date().toISOString(),
    newId: () => `person-${++ids}`,
  }
  await addPerson(deps, { name: 'Ada', role: 'keeper', passphrase: ada })
  await addPerson(deps, { name: 'Ben', role: 'bench', passphrase: ben })
  await store.close()
}

describe.runIf(browserHere())('signing in', () => {
  let folder = ''
  let server: RunningServer
  let browser: Browser
  let page: Page
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'thrum-sign-in-'))
    await addPeople(folder)
    server = valueOf(await startServer({ folder, port: 0, host: '127.0.0.1', hashing: cheap, print: () => undefined }))
    browser = await launchBrowser()
    page = await browser.newPage({ viewport: phone, baseURL: server.address })
    page.setDefaultTimeout(15_000)
  })
  afterAll(async () => {
    await browser.close()
    await server.stop()
    await rm(folder, { recursive: true, force: true })
  })

  const signIn = async (name: string, passphrase: string): Promise<void> => {
    await page.getByLabel('Your name').fill(name)
    await page.getByLabel('Your passphrase').fill(passphrase)
    await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  }
  const keptAnswers = (): Promise<readonly string[]> =>
    page.evaluate(async () => {
      if (!(await caches.keys()).includes('thrum-answers')) return []
      return (await (await caches.open('thrum-answers')).keys()).map(({ url }) => new URL(url).pathname)
    })

  it('asks for a name and a passphrase, in both themes, and says when they are wrong', async () => {
    await page.goto('/')
    await page.getByRole('heading', { name: 'Sign in' }).waitFor()
    await signIn('Ben', ada)
    await page.getByText('Name or passphrase is not right').waitFor()
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      await atRest(page)
      expect(await axeViolations(page)).toEqual([])
      expect((await sideways(page)).scrolledPx).toBe(0)
    }
  })

  it('lets the page come that was asked for, and a note says who made it', async () => {
    await signIn('ben', ben)
    await page.getByRole('navigation', { name: 'Pages' }).waitFor()
    await page
      .getByRole('navigation', { name: 'Pages' })
      .getByRole('link', { name: 'Books' })
      .waitFor({ state: 'detached' })
    const content = {
      kind: 'added',
      name: 'Green',
      blueprint: blueprint.id,
      plate: blueprint.plate,
      paidMinor: 400,
      currency: 'GBP',
    }
    const answer = await page.request.post('/api/bench/own/machines', { data: { id: 'green', content } })
    expect(answer.status()).toBe(201)
    await page.goto('/machine/green')
    await settled(page)
    await page.getByLabel('Remark', { exact: true }).fill('It rattles when tipped')
    await page.getByRole('button', { name: 'Add the remark' }).click()
    await page.getByRole('list', { name: 'Notes, newest first' }).getByText('It rattles when tipped').waitFor()
    const lines = await page.getByRole('list', { name: 'Notes, newest first' }).getByRole('listitem').allInnerTexts()
    expect(lines.map((line) => line.replace(/\s+/g, ' ')).filter((line) => line.includes('by Ben'))).toHaveLength(2)
    expect(await axeViolations(page)).toEqual([])
  })

  it('signing out warns of what waits, forgets what the browser kept, and shows nothing any more', async () => {
    await page.goto('/settings')
    await settled(page)
    await page.getByText('Only a keeper of the books changes').waitFor()
    await page.getByText('Ben, at the bench.').waitFor()
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
    await page.reload()
    await settled(page)
    await expect.poll(keptAnswers).not.toEqual([])
    await page.evaluate(() => {
      const note = {
        bench: 'own',
        machine: 'green',
        id: 'n-waits',
        madeAt: new Date().toISOString(),
        content: { kind: 'said', text: 'Later' },
        refused: [{ code: 'x', what: 'No', where: '', mend: '' }],
      }
      localStorage.setItem('thrum:waiting-notes', JSON.stringify([note]))
    })
    await page.reload()
    await settled(page)
    await page.getByText('One note is not sent yet. Signed out, it stays on this device').waitFor()
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      await atRest(page)
      expect(await axeViolations(page)).toEqual([])
    }
    await page.getByRole('button', { name: 'Sign out', exact: true }).click()
    await page.getByRole('button', { name: 'Sign out all the same' }).click()
    await page.getByRole('heading', { name: 'Sign in' }).waitFor()
    expect((await keptAnswers()).filter((path) => path !== '/api/sign-in')).toEqual([])
    await page.goto('/machine/green')
    await page.getByRole('heading', { name: 'Sign in' }).waitFor()
    expect(await page.getByText('It rattles').count()).toBe(0)
  })

  it('the keeper sees the devices and shuts one out', async () => {
    const other = await browser.newContext({ baseURL: server.address })
    const his = await other.request.post('/api/sign-in', { data: { name: 'Ben', passphrase: ben } })
    expect(his.status()).toBe(200)
    await page.goto('/settings')
    await signIn('Ada', ada)
    const devices = page.getByRole('region', { name: 'Devices' })
    await devices.getByText('this one').waitFor()
    await devices.getByRole('button', { name: /Shut out: Ben/ }).click()
    await devices.getByRole('button', { name: /Shut out/ }).waitFor({ state: 'detached' })
    expect((await other.request.get('/api/who')).status()).toBe(401)
    expect(await axeViolations(page)).toEqual([])
    expect((await sideways(page)).scrolledPx).toBe(0)
    await other.close()
  })

  it('an advert and a part say who wrote what was written of them', async () => {
    const part = { kind: 'put', name: 'Belt', partKind: 'belt', currency: 'GBP' }
    expect((await page.request.post('/api/bench/own/shelf', { data: { id: 'belt', content: part } })).status()).toBe(201) // prettier-ignore
    const guess = { ceilingMinor: 900, expectedMinor: 0, spreadMinor: 0, expectedMin: 60, lossChance: 0.5, likely: [] }
    const advert = { blueprint: blueprint.id, complaints: ['dead'], askingMinor: 1500, distanceKm: 8 }
    const weighed = { kind: 'weighed', name: 'Grey one', advert, guess }
    expect((await page.request.post('/api/bench/own/adverts', { data: { id: 'grey', content: weighed } })).status()).toBe(201) // prettier-ignore
    const history = page.getByRole('region', { name: 'History' })
    await page.goto('/shelf/belt')
    await history.getByText('put on the shelf, 1 at £0.00 by Ada').waitFor()
    await page.goto('/adverts/grey')
    await history.getByText('weighed: asks £15.00, at most £9.00 by Ada').waitFor()
    await page.getByRole('button', { name: 'Passed it by' }).first().click()
    await page.getByRole('button', { name: 'Passed it by' }).last().click()
    await history.getByRole('button', { name: 'Strike out: passed by' }).click()
    await page.getByRole('heading', { name: 'I bought it' }).waitFor()
    await atRest(page)
    expect(await axeViolations(page)).toEqual([])
    expect((await sideways(page)).scrolledPx).toBe(0)
    await page.goto('/settings')
  })

  it('the keeper adds somebody and takes them off', async () => {
    const people = page.getByRole('region', { name: 'People' })
    await people.getByRole('button', { name: 'Add somebody' }).click()
    await people.getByLabel('Name', { exact: true }).fill('Cid')
    await people.getByLabel(/^Passphrase/).fill('short')
    await people.getByRole('button', { name: 'Add', exact: true }).click()
    await people.getByText('A passphrase has at least 10 characters.').waitFor()
    await people.getByLabel(/^Passphrase/).fill('some more plain words')
    await people.getByRole('button', { name: 'Add', exact: true }).click()
    await people.getByRole('button', { name: 'Cid, at the bench' }).click()
    expect(await axeViolations(page)).toEqual([])
    expect((await sideways(page)).scrolledPx).toBe(0)
    await people.getByRole('button', { name: 'Take Cid off', exact: true }).click()
    await people.getByRole('button', { name: /Take Cid off; their/ }).click()
    await people.getByRole('button', { name: 'Cid, at the bench' }).waitFor({ state: 'detached' })
  })
})

describe.runIf(browserHere())('the first who has a name', () => {
  it('is added on the machine itself, told what it means, and is signed in at once', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'thrum-first-'))
    const server = valueOf(await startServer({ folder, port: 0, host: '127.0.0.1', hashing: cheap, print: () => undefined })) // prettier-ignore
    const browser = await launchBrowser()
    const page = await browser.newPage({ viewport: phone, baseURL: server.address })
    page.setDefaultTimeout(15_000)
    await page.goto('/settings')
    await page.getByRole('button', { name: 'Begin with your name' }).click()
    await page.getByText('From then on everybody signs in by name').waitFor()
    await page.getByLabel('Your name', { exact: true }).fill('Ada')
    await page.getByLabel(/^Your passphrase, at least/).fill(ada)
    await page.getByLabel('Your passphrase once more').fill(`${ada} x`)
    await page.getByRole('button', { name: 'Begin with names' }).click()
    await page.getByText('The two passphrases are not the same').waitFor()
    await atRest(page)
    expect(await axeViolations(page)).toEqual([])
    expect((await sideways(page)).scrolledPx).toBe(0)
    expect((await (await page.request.get('/api/who')).json()) as object).toMatchObject({ needed: false })
    await page.getByLabel('Your passphrase once more').fill(ada)
    await page.getByRole('button', { name: 'Begin with names' }).click()
    await page.getByText('Ada, keeper of the books.').waitFor()
    await page.getByRole('region', { name: 'People' }).getByRole('button', { name: 'Add somebody' }).waitFor()
    expect((await (await page.request.get('/api/who')).json()) as object).toMatchObject({ needed: true, person: { name: 'Ada' } }) // prettier-ignore
    await browser.close()
    await server.stop()
    await rm(folder, { recursive: true, force: true })
  })
})
