import type { NoteContentInput } from '../../bench/note.ts'
import { useNotes, type NoteWriter } from '../use-notes.ts'
import { useProofSheet } from './proof-sheet.ts'

export type FindingInput = Extract<NoteContentInput, { kind: 'proof' }>['finding']

type FindingWriter = Omit<NoteWriter, 'write' | 'writeWithFile'> & {
  /** Writes what was found. False when it was refused; `problems` then says why. */
  readonly enter: (finding: FindingInput) => Promise<boolean>
}

/** Notes what was found in a check. The first finding says before itself by which rules it is judged. */
export const useFinding = (): FindingWriter => {
  const { bench, document, proof, stale } = useProofSheet()
  const { write, busy, problems } = useNotes(bench, document.state.id)
  const { region, profile } = proof.rules
  const enter = (finding: FindingInput): Promise<boolean> =>
    write([
      ...(document.state.rules === null ? [{ kind: 'rules', rules: { region, profile } } as const] : []),
      { kind: 'proof', finding },
    ])
  return { enter, busy: busy || stale, problems }
}
