import { say } from '../parts/live.tsx'
import type { ReadingResult } from '../../machine/result.ts'
import type { CheckMove } from '../../machine/view.ts'
import { useNotes, type NoteWriter } from '../use-notes.ts'
import { readingNotes } from './entry-notes.ts'
import { useSheet } from './sheet.ts'

export type ReadingWriter = Pick<NoteWriter, 'busy' | 'problems'> & {
  /** Enters a reading, the covers it needed first. False when it was refused. */
  readonly enter: (result: ReadingResult) => Promise<boolean>
}

/** Enters readings of one check. Busy also while the view is behind, so that a move already made is not entered twice. */
export const useReading = (move: CheckMove, onDone: () => void): ReadingWriter => {
  const { bench, document, blueprint, stale } = useSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const enter = async (result: ReadingResult): Promise<boolean> => {
    const entered = await write(readingNotes(move, result, blueprint))
    if (!entered) return false
    say(`Entered: ${move.name}.`)
    onDone()
    return true
  }
  return { enter, busy: busy || stale, problems }
}
