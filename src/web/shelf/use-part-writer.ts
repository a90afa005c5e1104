import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import type { Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { PartContentInput } from '../../bench/shelf/part-note.ts'
import { newId, type Answer } from '../api.ts'
import { putPart, writePart } from '../api-shelf.ts'
import { shelfKey } from '../use-shelf.ts'

/** Writes about parts. Each form has its own, so that a refusal stands beside what was refused. */
export const usePartWriter = (bench: BenchId) => {
  const client = useQueryClient()
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const settle = async <T>(answering: Promise<Answer<T>>): Promise<boolean> => {
    setBusy(true)
    const answer = await answering
    setProblems(answer.kind === 'refused' ? answer.problems : [])
    setBusy(false)
    // Also after a refusal: somebody may have written meanwhile.
    await client.invalidateQueries({ queryKey: shelfKey(bench) })
    return answer.kind === 'ok'
  }
  return {
    busy,
    problems,
    put: (content: PartContentInput) => settle(putPart(bench, newId('part'), content)),
    add: (part: string, version: number, content: PartContentInput) =>
      settle(writePart(bench, part, { id: newId('entry'), version, content })),
  }
}
