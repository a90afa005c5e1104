import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import type { Problem } from '../../base/problem.ts'
import type { Result } from '../../base/result.ts'
import type { Settings } from '../../bench/settings.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { MarketPrice } from '../../machine/market.ts'
import type { AdvertInput } from '../../machine/buying/index.ts'
import { engine, engineAside, type Engine } from '../engine-client.ts'
import type { WeighedAdvert } from '../engine-protocol.ts'
import { useMarket } from '../use-market.ts'

export type Buying = {
  /** The newest there is; null until the first. */
  readonly weighed: WeighedAdvert | null
  /** What is shown is of what was typed before, or only the quick answer to it. */
  readonly settling: boolean
  readonly problems: readonly Problem[]
  readonly failure: string | null
}

const waitMs = 200

/** Looks ahead a tenth as far for the first answer, then in full: see `quickEffort` of the buying view. */
const efforts = { quick: 0.1, full: 1 } as const

type Asked = { readonly advert: AdvertInput; readonly blueprint: Blueprint; readonly settings: Settings | null }

type Market = MarketPrice | null | undefined

const buyingQuery = (
  asked: Asked | null,
  market: Market,
  effort: number,
  enabled: boolean,
  engineOf: () => Engine,
) => ({
  queryKey: ['buying', asked?.advert, asked?.blueprint.id, asked?.settings, market, effort],
  queryFn: async ({ signal }: { readonly signal: AbortSignal }): Promise<Result<WeighedAdvert>> => {
    if (asked === null || market === undefined) throw new Error('Nothing to weigh')
    return (await engineOf().ask({ kind: 'buying', ...asked, market, effort }, signal)).buying
  },
  enabled: enabled && asked !== null && market !== undefined,
  staleTime: Infinity,
  retry: false,
  networkMode: 'always' as const,
  placeholderData: keepPreviousData,
})

/** Whether an advert is worth buying, worked out in the workers a moment after the last keystroke: quickly, then in full. */
export const useBuying = (asked: Asked | null): Buying => {
  const still = useStill(asked)
  const market = useMarket('own', pricedOf(asked))
  const quick = useQuery(buyingQuery(still, market, efforts.quick, true, engine))
  const isQuickDone = quick.data !== undefined && !quick.isPlaceholderData
  const full = useQuery(buyingQuery(still, market, efforts.full, isQuickDone, engineAside))
  const isFullDone = full.data !== undefined && !full.isPlaceholderData
  const newest = isFullDone ? full.data : (quick.data ?? full.data)
  const last = useLastGood(newest)
  return {
    weighed: asked === null ? null : last,
    settling: asked !== null && (JSON.stringify(asked) !== JSON.stringify(still) || !isFullDone),
    problems: newest?.kind === 'refused' ? newest.problems : [],
    failure: quick.error?.message ?? full.error?.message ?? null,
  }
}

/** What is asked of comparable sales as soon as the kind of machine is known, so that the answer is there when it is needed. */
const pricedOf = (asked: Asked | null) =>
  asked === null
    ? undefined
    : {
        blueprint: asked.blueprint.id,
        model: '',
        currency: asked.advert.currency ?? asked.settings?.currency ?? 'GBP',
        practiceSeed: null,
      }

/** A value once it has not changed for a moment. */
const useStill = (value: Asked | null): Asked | null => {
  const [still, setStill] = useState(value)
  const text = JSON.stringify(value)
  useEffect(() => {
    const timer = setTimeout(() => setStill(value), waitMs)
    return () => clearTimeout(timer)
    // The value itself is a new object at each turn.
  }, [text])
  return still
}

/** The last view that was not refused: a slip in one field does not take the answer away. */
const useLastGood = (result: Result<WeighedAdvert> | undefined): WeighedAdvert | null => {
  const [last, setLast] = useState<WeighedAdvert | null>(null)
  if (result?.kind === 'ok' && result.value !== last) setLast(result.value)
  return result?.kind === 'ok' ? result.value : last
}
