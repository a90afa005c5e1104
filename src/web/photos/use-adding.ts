import { useState } from 'react'
import type { Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { PhotoAbout, PhotoTime } from '../../bench/photos/photo-note.ts'
import type { SaleShot } from '../../facts/sale-shots.ts'
import { dropUnused, waitingOf } from '../outbox/outbox.ts'
import { say } from '../parts/live.tsx'
import { useSettings } from '../queries.ts'
import { useNotes } from '../use-notes.ts'
import { keepHere } from './keep-here.ts'
import { sendPhoto, type SentPhoto } from './send-photo.ts'

export type PhotoOf = {
  readonly about: PhotoAbout
  readonly when: PhotoTime
  readonly shot?: SaleShot
}

export type Adding = {
  /**
   * Sends photographs one after another and notes each; those that were refused are named in `problems`. Where the bench does not answer,
   * they wait on this device with their notes.
   */
  readonly add: (files: readonly File[], of: PhotoOf) => Promise<void>
  readonly busy: boolean
  readonly problems: readonly Problem[]
}

const waits: SentPhoto = { kind: 'waits', problems: [] }

/** Adds photographs to a machine. */
export const useAdding = (bench: BenchId, machine: string): Adding => {
  const { write, writeWithFile, problems: refused } = useNotes(bench, machine)
  const { data: settings } = useSettings()
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])

  /** What is wrong with it; null when it was added. */
  const addOne = async (file: File, of: PhotoOf): Promise<readonly Problem[] | null> => {
    // What waits goes first: photographs and notes arrive in the order they were made.
    const sent = waitingOf(bench, machine).length > 0 ? waits : await sendPhoto(file, file.name)
    if (sent.kind === 'refused') return sent.problems
    if (sent.kind === 'kept') return (await write([{ kind: 'photo', photo: sent.id, ...of }])) ? null : []
    const kept = await keepHere(file, settings?.keepOriginals ?? false)
    if (kept.kind === 'refused') return kept.problems
    const { key } = kept.value
    if (await writeWithFile({ kind: 'photo', photo: key, ...of }, kept.value)) return null
    dropUnused(key)
    return []
  }
  const add = async (files: readonly File[], of: PhotoOf): Promise<void> => {
    setBusy(true)
    const wrong: Problem[] = []
    let added = 0
    for (const file of files) {
      const found = await addOne(file, of)
      if (found === null) added += 1
      else wrong.push(...found)
    }
    setProblems(wrong)
    setBusy(false)
    if (added > 0) say(added === 1 ? 'One photograph added.' : `${added} photographs added.`)
  }
  return { add, busy, problems: [...problems, ...refused] }
}
