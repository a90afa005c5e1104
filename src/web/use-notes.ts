import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { problem, type Problem } from '../base/problem.ts'
import type { BenchId, MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { addNote, newId } from './api.ts'
import { blueprintQuery, machineKey, machinesKey } from './queries.ts'

export type NoteWriter = {
  /** Adds the notes one after another. False when one was refused; `problems` then says why, and what came before it stands. */
  readonly write: (contents: readonly NoteContentInput[]) => Promise<boolean>
  readonly busy: boolean
  readonly problems: readonly Problem[]
}

const movedOn = problem(
  'written-meanwhile',
  '',
  'Someone else wrote about this machine meanwhile, so this was not entered',
  'Look at what was added, then enter it again if it still holds',
)

/** Writes notes about one machine. Each form has its own writer, so that a refusal stands beside what was refused. */
export const useNotes = (bench: BenchId, machine: string): NoteWriter => {
  const client = useQueryClient()
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])

  // The note may have it read by another blueprint: that one is fetched first, so that nothing on the page is taken down.
  const keep = async (document: MachineDocument): Promise<void> => {
    await client.prefetchQuery(blueprintQuery(document.state.blueprint))
    client.setQueryData(machineKey(bench, machine), document)
    void client.invalidateQueries({ queryKey: machinesKey(bench) })
  }
  const writeOne = async (content: NoteContentInput): Promise<readonly Problem[]> => {
    const version = client.getQueryData<MachineDocument>(machineKey(bench, machine))?.state.version ?? 0
    const answer = await addNote(bench, machine, { id: newId('note'), version, content })
    if (answer.kind === 'ok') {
      await keep(answer.value)
      return []
    }
    if (answer.document === null) return answer.problems
    await keep(answer.document)
    return [movedOn]
  }
  const write = async (contents: readonly NoteContentInput[]): Promise<boolean> => {
    setBusy(true)
    let refusal: readonly Problem[] = []
    for (const content of contents) {
      refusal = await writeOne(content)
      if (refusal.length > 0) break
    }
    setProblems(refusal)
    setBusy(false)
    return refusal.length === 0
  }
  return { write, busy, problems }
}
