import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Problem } from '../../base/problem.ts'
import { machinesKey } from '../queries.ts'
import { advertsKey } from './use-adverts.ts'

type Sent = { readonly kind: 'ok' } | { readonly kind: 'refused'; readonly problems: readonly Problem[] }

/** Sends once at a time, keeps what was refused, and has the lists fetched again. `run` gives whether it was taken. */
export const useSending = () => {
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const client = useQueryClient()
  const run = async (send: () => Promise<Sent>): Promise<boolean> => {
    setBusy(true)
    const sent = await send()
    setBusy(false)
    setProblems(sent.kind === 'refused' ? sent.problems : [])
    if (sent.kind === 'refused') return false
    await client.invalidateQueries({ queryKey: advertsKey('own') })
    await client.invalidateQueries({ queryKey: machinesKey('own') })
    return true
  }
  return { problems, busy, run }
}
