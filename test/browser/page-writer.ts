import type { Page } from 'playwright-core'
import { problemText, type Problem } from '../../src/base/problem.ts'
import type { MachineDocument } from '../../src/bench/contract.ts'
import type { NoteContent } from '../../src/bench/note.ts'
import { complaints } from '../../src/facts/complaints.ts'
import { upright, type Writer } from '../story/bench-job.ts'
import { noteOnBench } from './bench.ts'
import { settled } from './looks.ts'
import { pickOnPage } from './pick-on-page.ts'

type Content<K extends NoteContent['kind']> = Extract<NoteContent, { kind: K }>

const patienceMs = 20_000

/**
 * Writes a job's notes by tapping and typing on the page, as a person would. What the job is not about is written past the
 * page, as from another phone, and the page is read again before the next tap.
 */
export const pageWriter = (page: Page): Writer => {
  const tapping = tappingWriter(page)
  let isBehind = false
  return {
    ...tapping,
    write: async (document, content) => {
      if (isBehind) {
        await page.reload()
        await settled(page)
      }
      isBehind = false
      return tapping.write(document, content)
    },
    writeAside: ({ state }, content) => {
      isBehind = true
      return noteOnBench(page, state.id, content)
    },
  }
}

/** Writes every one of a job's notes by tapping and typing. */
export const tappingWriter = (page: Page): Writer => ({
  begin: async (content) => {
    if (content.kind !== 'added') throw new Error('a job begins with a machine')
    await addOnPage(page, content)
    return documentAt(page, 1)
  },
  write: async ({ state }, content) => {
    await enter(page, content)
    return documentAt(page, state.version + 1)
  },
  refusal: async ({ state }, content) => {
    const answer = await page.request.post(`/api/bench/own/machines/${state.id}/notes`, {
      data: { version: state.version, content },
    })
    const { problems } = (await answer.json()) as { problems: readonly Problem[] }
    return problems.map(problemText).join('\n')
  },
})

const addOnPage = async (page: Page, content: Content<'added'>): Promise<void> => {
  await page.goto('/')
  await page.getByRole('link', { name: 'Add a machine' }).click()
  await pickOnPage(page, upright)
  for (const id of content.complaints) await page.getByRole('button', { name: complaints[id] }).click()
  await page.getByLabel('Paid').fill((content.paidMinor / 100).toFixed(2))
  if (content.hourMinor !== undefined) await page.getByLabel('Your hour').fill((content.hourMinor / 100).toFixed(2))
  await page.getByLabel('What the seller said').fill(content.claim)
  await page.getByLabel('Name').fill(content.name)
  await page.getByRole('button', { name: 'Put it on the bench' }).click()
  await page.waitForURL(/\/machine\//)
}

/** The machine's document once it has this version, from the API that the page itself uses. */
const documentAt = async (page: Page, version: number): Promise<MachineDocument> => {
  const id = new URL(page.url()).pathname.split('/').at(-1) ?? ''
  for (const until = Date.now() + patienceMs; Date.now() < until; await page.waitForTimeout(100)) {
    const document = (await (await page.request.get(`/api/bench/own/machines/${id}`)).json()) as MachineDocument
    if (document.state.version >= version) return document
  }
  throw new Error(`the page did not write note ${version}: ${await page.locator('main').innerText()}`)
}

const enter = async (page: Page, content: NoteContent): Promise<void> => {
  switch (content.kind) {
    case 'reading':
      return enterReading(page, content)
    case 'opened':
    case 'closed':
      return pressCover(page, content.cover)
    case 'repaired':
      return enterRepair(page, content)
    case 'confirmed':
      return confirmSeen(page, content)
    case 'left':
      return enterExit(page, content)
    case 'added':
    case 'seen':
    case 'spent':
    case 'said':
    case 'struck':
    case 'described-by':
    case 'history':
    case 'stamp':
    case 'valued':
    case 'gauge':
    case 'rules':
    case 'proof':
    case 'took-off':
    case 'photo':
    case 'listed':
    case 'came-back':
    case 'taken-out':
    case 'put-in':
    case 'cleaned':
    case 'dried':
    case 'graded':
    case 'tried':
    case 'worded':
    case 'camera':
      throw new Error(`no job writes “${content.kind}” on the page yet`)
  }
}

/** Opens a fold unless it is open. */
const unfold = async (page: Page, title: RegExp | string): Promise<void> => {
  const head = page.getByRole('button', { name: title, expanded: false }).first()
  if ((await head.count()) > 0) await head.click()
}

/** Puts any move of the blueprint on the card: `check pins-on`, `repair flex-new new`, `exit scrap`. */
export const putOnCard = async (page: Page, value: string): Promise<void> => {
  await unfold(page, 'Other moves')
  await page.getByLabel('Anything in this blueprint').selectOption(value)
  await page.getByRole('button', { name: 'Put it on the card' }).click()
}

const enterReading = async (page: Page, { check, result }: Content<'reading'>): Promise<void> => {
  await putOnCard(page, `check ${check}`)
  if (result.kind === 'open') return page.getByRole('button', { name: 'open', exact: true }).click()
  if (result.kind === 'jumps') return page.getByRole('button', { name: 'jumps when moved', exact: true }).click()
  if (result.kind === 'charging') return page.getByRole('button', { name: 'rises, then open', exact: true }).click()
  if (result.kind === 'cannot-tell') return page.getByRole('button', { name: 'could not tell', exact: true }).click()
  if (result.kind === 'grade') return pressGrade(page, check, result.outcome)
  await page
    .getByRole('button', { name: 'Ω', exact: true })
    .or(page.getByRole('radio', { name: 'Ω', exact: true }))
    .first()
    .click()
  for (const key of String(result.resistanceOhm)) {
    await page.getByRole('button', { name: key === '.' ? 'point' : key, exact: true }).click()
  }
  await page.getByRole('button', { name: 'Enter', exact: true }).click()
}

const pressGrade = async (page: Page, checkId: string, outcome: string): Promise<void> => {
  const check = upright.checks.find((c) => c.id === checkId)!
  const name = check.kind === 'meter' ? '' : check.outcomes.find((o) => o.id === outcome)!.name
  await page
    .getByRole('group', { name: 'Enter what you found' })
    .getByRole('button', { name: startsWith(name) })
    .click()
}

const startsWith = (name: string): RegExp => new RegExp(`^${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`)

const pressCover = async (page: Page, cover: string): Promise<void> => {
  await unfold(page, /^.?\s*Covers:/)
  await page
    .getByRole('button', { name: startsWith(upright.covers.find((c) => c.id === cover)!.name) })
    .last()
    .click()
}

const enterRepair = async (page: Page, { repair, option, minutes, costMinor }: Content<'repaired'>): Promise<void> => {
  await putOnCard(page, `repair ${repair} ${upright.repairs.find((r) => r.id === repair)!.options[0].id}`)
  const way = upright.repairs.find((r) => r.id === repair)!.options.find((o) => o.id === option)!
  const form = page.getByRole('form', { name: 'Note the repair' })
  await form.getByText(way.name, { exact: true }).click()
  await form.getByLabel('Minutes').fill(String(minutes))
  await form.getByLabel('Parts cost').fill((costMinor / 100).toFixed(2))
  await form.getByRole('button', { name: 'Repair done' }).click()
}

const confirmSeen = async (page: Page, { fault }: Content<'confirmed'>): Promise<void> => {
  await unfold(page, /Note what it does/)
  await page.getByRole('combobox', { name: 'A fault seen for certain' }).selectOption(fault)
  await page.getByRole('button', { name: 'Note as certain' }).click()
}

const exitButtons = {
  'sell-working': 'Sold working',
  'sell-for-spares': 'Sold for spares or repair',
  'break-for-parts': 'Broken for parts',
  scrap: 'Scrapped',
} as const

const enterExit = async (page: Page, { exit, receivedMinor, minutes, safety }: Content<'left'>): Promise<void> => {
  await putOnCard(page, `exit ${exit}`)
  if (exit === 'break-for-parts') await page.getByRole('button', { name: 'All its parts were sold in one lot' }).click()
  await page.getByLabel('Money received').fill((receivedMinor / 100).toFixed(2))
  await page.getByLabel('Minutes selling').fill(String(minutes))
  if (safety !== '') await page.getByLabel('Reason for selling it unproved').fill(safety)
  await page.getByRole('button', { name: exitButtons[exit], exact: true }).click()
}
