import type { AdvertContent, AdvertContentInput } from '../../bench/adverts/advert-note.ts'
import type { AdvertState } from '../../bench/adverts/advert-state.ts'
import type { BuyAdvert } from '../../bench/adverts/buy-advert.ts'
import type { ComparedAdverts } from '../../bench/adverts/compared-adverts.ts'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { LogDocument } from '../../bench/logs/log-commands.ts'
import type { Page } from '../../bench/ports.ts'
import { getFrom, postTo, type Answer } from '../api.ts'

export type AdvertDocument = LogDocument<AdvertContent, AdvertState>

const path = (bench: BenchId, id?: string): string =>
  `/bench/${bench}/adverts${id === undefined ? '' : `/${encodeURIComponent(id)}`}`

/** Kept adverts, the newest first: open ones, or those that were bought or passed by. */
export const getAdverts = (bench: BenchId, state: 'there' | 'gone', signal: AbortSignal): Promise<Page<AdvertState>> =>
  getFrom(`${path(bench)}?state=${state}&limit=100`, signal)

export const getAdvert = (bench: BenchId, id: string, signal: AbortSignal): Promise<AdvertDocument> =>
  getFrom(path(bench, id), signal)

export const getCompared = (bench: BenchId, signal: AbortSignal): Promise<ComparedAdverts> =>
  getFrom(`/bench/${bench}/compared`, signal)

export const keepNewAdvert = (id: string, content: AdvertContentInput): Promise<Answer<AdvertDocument>> =>
  postTo(path('own'), { id, content })

export const writeAdvert = (
  id: string,
  version: number,
  content: AdvertContentInput,
): Promise<Answer<AdvertDocument>> => postTo(`${path('own', id)}/entries`, { version, content })

export type Bought = { readonly machine: MachineDocument; readonly advert: AdvertDocument }

export const buyMachine = (id: string, asked: BuyAdvert): Promise<Answer<Bought>> =>
  postTo(`${path('own', id)}/buy`, asked)
