import { randomUUID } from 'node:crypto'
import type { Page } from 'playwright-core'
import type { MachineDocument } from '../../src/bench/contract.ts'
import type { NoteContentInput } from '../../src/bench/note.ts'
import { upright } from '../story/bench-job.ts'

const machines = '/api/bench/own/machines'

const posted = async (page: Page, path: string, data: unknown): Promise<MachineDocument> => {
  const answer = await page.request.post(path, { data })
  if (!answer.ok()) throw new Error(await answer.text())
  return (await answer.json()) as MachineDocument
}

/** Puts a machine and its notes on the bench through the API, past the page. */
export const putOnBench = async (
  page: Page,
  added: Partial<Extract<NoteContentInput, { kind: 'added' }>>,
  ...notes: readonly NoteContentInput[]
): Promise<MachineDocument> => {
  const content = {
    kind: 'added',
    name: 'Green',
    blueprint: upright.id,
    plate: upright.plate,
    paidMinor: 400,
    currency: 'GBP',
    ...added,
  }
  let document = await posted(page, machines, { id: randomUUID(), content })
  for (const note of notes) document = await noteOnBench(page, document.state.id, note)
  return document
}

/** Writes one note through the API, past the page. */
export const noteOnBench = async (page: Page, id: string, content: NoteContentInput): Promise<MachineDocument> => {
  const { state } = await machineOnBench(page, id)
  return posted(page, `${machines}/${id}/notes`, { version: state.version, content })
}

export const machineOnBench = async (page: Page, id: string): Promise<MachineDocument> =>
  (await (await page.request.get(`${machines}/${id}`)).json()) as MachineDocument
