import { useState } from 'react'
import type { Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { PhotoAbout, PhotoTime } from '../../bench/photos/photo-note.ts'
import type { SaleShot } from '../../facts/sale-shots.ts'
import { say } from '../parts/live.tsx'
import { useNotes } from '../use-notes.ts'
import { sendPhoto } from './send-photo.ts'

export type PhotoOf = {
  readonly about: PhotoAbout
  readonly when: PhotoTime
  readonly shot?: SaleShot
}

export type Adding = {
  /** Sends photographs one after another and notes each; those that were refused are named in `problems`. */
  readonly add: (files: readonly File[], of: PhotoOf) => Promise<void>
  readonly busy: boolean
  readonly problems: readonly Problem[]
}

/** Adds photographs to a machine. */
export const useAdding = (bench: BenchId, machine: string): Adding => {
  const { write, problems: refused } = useNotes(bench, machine)
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const add = async (files: readonly File[], of: PhotoOf): Promise<void> => {
    setBusy(true)
    const wrong: Problem[] = []
    let kept = 0
    for (const file of files) {
      const sent = await sendPhoto(file)
      if (sent.kind === 'refused') wrong.push(...sent.problems)
      else if (await write([{ kind: 'photo', photo: sent.id, ...of }])) kept += 1
    }
    setProblems(wrong)
    setBusy(false)
    if (kept > 0) say(kept === 1 ? 'One photograph added.' : `${kept} photographs added.`)
  }
  return { add, busy, problems: [...problems, ...refused] }
}
