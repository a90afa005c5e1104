import type { QueryClient } from '@tanstack/react-query'
import type { Problem } from '../../base/problem.ts'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import { engine } from '../engine-client.ts'
import { blueprintQuery } from '../blueprint-query.ts'
import { waitingOf, type WaitingNote } from './outbox.ts'

/** The machine with notes put to it here, as the bench would; what the rules refuse is left out and said. */
export type Applied = {
  readonly document: MachineDocument
  readonly refused: readonly { readonly id: string; readonly problems: readonly Problem[] }[]
}

export const applyNotes = async (
  client: QueryClient,
  document: MachineDocument,
  notes: readonly WaitingNote[],
): Promise<Applied> => {
  const fresh = notes.filter(({ id }) => !document.notes.some((note) => note.id === id))
  if (fresh.length === 0) return { document, refused: [] }
  const blueprint = await client.ensureQueryData(blueprintQuery(document.state.blueprint))
  const { applied } = await engine().ask({ kind: 'apply', document, blueprint, notes: fresh })
  return applied
}

/** A machine as this device knows it: what the bench holds, and what waits here to be sent. */
export const withWaiting = async (
  client: QueryClient,
  bench: BenchId,
  document: MachineDocument,
): Promise<MachineDocument> => (await applyNotes(client, document, waitingOf(bench, document.state.id))).document
