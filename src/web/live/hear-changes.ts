import type { QueryClient } from '@tanstack/react-query'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { Change } from '../../bench/ports.ts'
import { machineKey, machinesKey } from '../queries.ts'
import { whoKey } from '../sign-in/use-who.ts'

/** What of the browser is used, so that it can be tried without one. */
export type Hearing = {
  readonly open: (address: string) => Pick<EventSource, 'addEventListener' | 'close'>
  readonly isHidden: () => boolean
  /** Calls back when the page is shown or hidden, and when the network comes back. Gives how to stop that. */
  readonly whenSeen: (look: () => void) => () => void
  readonly later: (work: () => void, ms: number) => () => void
}

/** How soon to try again where the bench does not answer, and how long to wait at most after further tries. */
const againMs = { first: 2_000, most: 60_000 }

/**
 * Has what others write to a bench shown here: asks anew for what a change concerns. Only while the page is looked at, for a browser keeps
 * few connections to one bench; where the bench does not answer it tries again, ever more seldom, and says nothing. What was missed
 * meanwhile is asked for once it is back.
 * @returns how to stop
 */
export const hearChanges = (client: QueryClient, bench: BenchId, hearing: Hearing = inBrowser): (() => void) => {
  let source: ReturnType<Hearing['open']> | null = null
  let heardBefore = false
  let waitMs = againMs.first
  let stopWaiting = (): void => {}
  const close = (): void => {
    stopWaiting()
    source?.close()
    source = null
  }
  const open = (): void => {
    close()
    source = hearing.open(`/api/bench/${bench}/changes`)
    source.addEventListener('ready', () => {
      waitMs = againMs.first
      if (heardBefore) askAnew(client, bench, { kind: 'everything' })
      heardBefore = true
    })
    source.addEventListener('change', ((event: MessageEvent<string>) => {
      askAnew(client, bench, JSON.parse(event.data) as Change)
    }) as EventListener)
    source.addEventListener('error', () => {
      close()
      // A device that was shut out hears of it like this; asking who is signed in has the page to sign in come.
      void client.invalidateQueries({ queryKey: whoKey })
      stopWaiting = hearing.later(look, waitMs)
      waitMs = Math.min(againMs.most, waitMs * 2)
    })
  }
  const look = (): void => {
    if (hearing.isHidden()) close()
    else if (source === null) open()
  }
  look()
  const stopLooking = hearing.whenSeen(look)
  return () => {
    stopLooking()
    close()
  }
}

/** The first word of the keys under which is kept what other logs are shown from. */
const keptUnder = { part: 'shelf', advert: 'adverts', price: 'prices', expense: 'books', record: 'records' } as const

/** Asks anew for what a change concerns, where it is shown. What this page wrote itself it has already. */
export const askAnew = (client: QueryClient, bench: BenchId, change: Change): void => {
  const anew = (queryKey: readonly string[]): void => void client.invalidateQueries({ queryKey })
  if (change.kind === 'everything') {
    for (const word of ['machine', 'machines', ...Object.values(keptUnder)]) anew([word, bench])
    return
  }
  if (change.kind !== 'machine') return anew([keptUnder[change.kind], bench])
  const here = client.getQueryData<MachineDocument>(machineKey(bench, change.id))
  if (here !== undefined && here.state.version >= change.version) return
  anew(machineKey(bench, change.id))
  anew(machinesKey(bench))
  anew([keptUnder.expense, bench])
}

const inBrowser: Hearing = {
  open: (address) => new EventSource(address),
  isHidden: () => document.hidden,
  whenSeen: (look) => {
    document.addEventListener('visibilitychange', look)
    window.addEventListener('online', look)
    return () => {
      document.removeEventListener('visibilitychange', look)
      window.removeEventListener('online', look)
    }
  },
  later: (work, ms) => {
    const timer = window.setTimeout(work, ms)
    return () => window.clearTimeout(timer)
  },
}
