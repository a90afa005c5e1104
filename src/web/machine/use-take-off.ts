import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Problem } from '../../base/problem.ts'
import type { SharesAsked } from '../../bench/shelf/take-off-shares.ts'
import type { TakeOffInput } from '../../bench/shelf/take-off.ts'
import { newId } from '../api.ts'
import { takeOff } from '../api-shelf.ts'
import { engine } from '../engine-client.ts'
import { machineKey, machinesKey } from '../queries.ts'
import { shelfKey } from '../use-shelf.ts'
import { useSheet } from './sheet.ts'

/** What each of these parts takes of the machine's cost, minor units; null until it is worked out. */
export const useShares = (asked: SharesAsked): readonly number[] | null => {
  const { document, blueprint } = useSheet()
  const { state, notes } = document
  const { data } = useQuery({
    queryKey: ['shares', state.id, state.version, asked],
    queryFn: async ({ signal }) =>
      (await engine().ask({ kind: 'shares', job: { state, notes, blueprint }, asked }, signal)).shares,
    enabled: asked.taken.length > 0,
    staleTime: Infinity,
    retry: false,
  })
  return data ?? null
}

/** Takes parts off the machine on the sheet. Sending the same again after no answer does no harm: it keeps its id until it is in. */
export const useTakeOff = () => {
  const { bench, document } = useSheet()
  const client = useQueryClient()
  const [id, setId] = useState(() => newId('off'))
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const send = async (asked: Omit<TakeOffInput, 'id' | 'version'>): Promise<boolean> => {
    setBusy(true)
    const { id: machine, version } = document.state
    const answer = await takeOff(bench, machine, { ...asked, id, version })
    setBusy(false)
    setProblems(answer.kind === 'refused' ? answer.problems : [])
    const newer = answer.kind === 'ok' ? answer.value : answer.document
    if (newer !== null) client.setQueryData(machineKey(bench, machine), newer)
    void client.invalidateQueries({ queryKey: shelfKey(bench) })
    void client.invalidateQueries({ queryKey: machinesKey(bench) })
    if (answer.kind === 'ok') setId(newId('off'))
    return answer.kind === 'ok'
  }
  return { send, busy, problems }
}
