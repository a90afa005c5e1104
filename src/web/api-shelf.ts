import type { BenchId, MachineDocument } from '../bench/contract.ts'
import type { GroupLine, Page } from '../bench/ports.ts'
import type { PartContentInput } from '../bench/shelf/part-note.ts'
import type { PartState } from '../bench/shelf/part-state.ts'
import type { PartDocument } from '../bench/shelf/shelf-commands.ts'
import type { TakeOffInput } from '../bench/shelf/take-off.ts'
import { getFrom, postTo, type Answer } from './api.ts'

export type PartsAsked = {
  readonly state?: 'there' | 'gone'
  readonly group?: string | undefined
  readonly text?: string | undefined
  readonly after?: number | undefined
  readonly limit?: number | undefined
}
export type PartList = Page<PartState> & { readonly groups: readonly GroupLine[] }

const shelfPath = (bench: BenchId): string => `/bench/${bench}/shelf`
const partPath = (bench: BenchId, id: string): string => `${shelfPath(bench)}/${encodeURIComponent(id)}`

export const getParts = (bench: BenchId, asked: PartsAsked, signal: AbortSignal): Promise<PartList> => {
  const given = Object.entries(asked).filter(([, value]) => value !== undefined && value !== '')
  const query = new URLSearchParams(given.map(([name, value]) => [name, String(value)]))
  return getFrom(`${shelfPath(bench)}?${query}`, signal)
}

export const getPart = (bench: BenchId, id: string, signal: AbortSignal): Promise<PartDocument> =>
  getFrom(partPath(bench, id), signal)

export const putPart = (bench: BenchId, id: string, content: PartContentInput): Promise<Answer<PartDocument>> =>
  postTo(shelfPath(bench), { id, content })

/** Writes about a part. `version` is that of the part on screen. */
export const writePart = (
  bench: BenchId,
  part: string,
  entry: { readonly id: string; readonly version: number; readonly content: PartContentInput },
): Promise<Answer<PartDocument>> => postTo(`${partPath(bench, part)}/entries`, entry)

/** Takes parts off a machine and puts them on the shelf. */
export const takeOff = (bench: BenchId, machine: string, asked: TakeOffInput): Promise<Answer<MachineDocument>> =>
  postTo(`/bench/${bench}/machines/${encodeURIComponent(machine)}/take-off`, asked)
