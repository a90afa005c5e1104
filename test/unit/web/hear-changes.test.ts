import { QueryClient } from '@tanstack/react-query'
import { describe, expect, it } from 'vitest'
import type { Change } from '../../../src/bench/ports.ts'
import { askAnew, hearChanges, type Hearing } from '../../../src/web/live/hear-changes.ts'

/** A browser whose page can be hidden, and whose connection can be answered and broken, by hand. */
const browser = () => {
  const opened: { readonly address: string; readonly tell: (kind: string, data?: string) => void; closed: boolean }[] =
    []
  const waits: number[] = []
  let hidden = false
  let look = (): void => {}
  let again = (): void => {}
  const hearing: Hearing = {
    open: (address) => {
      const listeners = new Map<string, (event: unknown) => void>()
      const one = {
        address,
        closed: false,
        tell: (kind: string, data?: string) => listeners.get(kind)?.({ data }),
      }
      opened.push(one)
      return {
        addEventListener: (kind: string, listener: unknown) =>
          void listeners.set(kind, listener as (event: unknown) => void),
        close: () => void (one.closed = true),
      }
    },
    isHidden: () => hidden,
    whenSeen: (work) => {
      look = work
      return () => (look = () => {})
    },
    later: (work, ms) => {
      waits.push(ms)
      again = work
      return () => (again = () => {})
    },
  }
  return {
    hearing,
    opened,
    waits,
    hide: (is: boolean) => {
      hidden = is
      look()
    },
    tryAgain: () => again(),
  }
}

/** A client with something under each key, and which of them have to be asked anew. */
const clientWith = (...keys: readonly (readonly string[])[]) => {
  const client = new QueryClient()
  for (const key of keys) client.setQueryData(key, key[0] === 'machine' ? { state: { version: 3 } } : {})
  const stale = () => keys.filter((key) => client.getQueryState(key)?.isInvalidated).map((key) => key.join(' '))
  return { client, stale }
}
const all = [['machine', 'own', 'm1'], ['machine', 'own', 'm2'], ['machines', 'own'], ['machines', 'demo'], ['shelf', 'own', 'there'], ['adverts', 'own'], ['prices', 'own'], ['books', 'own', 'view'], ['blueprints']] // prettier-ignore

describe('a change that somebody else made', () => {
  it.each<readonly [Change, readonly string[]]>([
    [{ kind: 'machine', id: 'm1', version: 4 }, ['machine own m1', 'machines own', 'books own view']],
    // What this page wrote itself, or has read since.
    [{ kind: 'machine', id: 'm1', version: 3 }, []],
    [{ kind: 'machine', id: 'new', version: 1 }, ['machines own', 'books own view']],
    [{ kind: 'part', id: 'p1', version: 2 }, ['shelf own there']],
    [{ kind: 'expense', id: 'e1', version: 1 }, ['books own view']],
    [{ kind: 'everything' }, ['machine own m1', 'machine own m2', 'machines own', 'shelf own there', 'adverts own', 'prices own', 'books own view']], // prettier-ignore
  ])('%j has asked anew what it concerns, and nothing else', (change, expected) => {
    const { client, stale } = clientWith(...all)
    askAnew(client, 'own', change)
    expect(stale()).toEqual(expected)
  })
})

describe('hearing of changes', () => {
  it('asks for what was missed once the bench is back, and waits longer after each try', () => {
    const { client, stale } = clientWith(...all)
    const { hearing, opened, waits, tryAgain } = browser()
    hearChanges(client, 'own', hearing)
    opened[0].tell('ready')
    expect(stale()).toEqual([])
    opened[0].tell('error')
    for (let i = 1; i < 8; i++) {
      tryAgain()
      opened[i].tell('error')
    }
    expect(waits).toEqual([2000, 4000, 8000, 16_000, 32_000, 60_000, 60_000, 60_000])
    tryAgain()
    opened[8].tell('ready')
    expect(stale()).toContain('machine own m1')
    expect(opened.map(({ address }) => address)).toEqual(Array(9).fill('/api/bench/own/changes'))
    expect(opened.slice(0, 8).every(({ closed }) => closed)).toBe(true)
  })

  it('rests while the page is hidden, and ends with the page', () => {
    const { client, stale } = clientWith(...all)
    const { hearing, opened, hide } = browser()
    const stop = hearChanges(client, 'own', hearing)
    opened[0].tell('change', '{"kind":"part","id":"p1","version":1}')
    expect(stale()).toEqual(['shelf own there'])
    hide(true)
    expect(opened[0].closed).toBe(true)
    hide(false)
    expect(opened).toHaveLength(2)
    stop()
    expect(opened[1].closed).toBe(true)
  })

  it('asks who is signed in where it breaks off, for a device that was shut out', () => {
    const { client, stale } = clientWith(['who'], ['machines', 'own'])
    const { hearing, opened } = browser()
    const stop = hearChanges(client, 'own', hearing)
    opened[0].tell('ready')
    expect(stale()).toEqual([])
    opened[0].tell('error')
    expect(stale()).toEqual(['who'])
    stop()
  })
})
