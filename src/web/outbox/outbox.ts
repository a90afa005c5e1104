import { useSyncExternalStore } from 'react'
import type { Problem } from '../../base/problem.ts'
import type { BenchId } from '../../bench/contract.ts'
import type { NoteContentInput } from '../../bench/note.ts'
import { dropFromBox } from '../photos/photo-box.ts'
import { readStored, writeStored } from '../stored.ts'

/** A photograph that waits with its note: under which key it is kept on this device, and what its file was called. */
export type WaitingFile = { readonly key: string; readonly name: string }

/** A note that was made on this device and is not yet known to be kept on the bench. */
export type WaitingNote = {
  readonly bench: BenchId
  readonly machine: string
  /** The note's id: chosen here, so that sending it twice does no harm. */
  readonly id: string
  /** When it was made, ISO 8601 in UTC. */
  readonly madeAt: string
  readonly content: NoteContentInput
  /** The photograph that has to be on the bench before the note. */
  readonly file?: WaitingFile
  /** Why the bench would not take it; it waits for a decision then. Null while it is only waiting. */
  readonly refused: readonly Problem[] | null
}

const storedName = 'thrum:waiting-notes'
const listeners = new Set<() => void>()
let kept: readonly WaitingNote[] | null = null

const read = (): readonly WaitingNote[] => {
  if (kept === null) kept = fromText(readStored('local', storedName))
  return kept
}

/** What this device stored at an earlier visit; what cannot be read counts as nothing. */
const fromText = (text: string | null): readonly WaitingNote[] => {
  if (text === null) return []
  try {
    const value: unknown = JSON.parse(text)
    return Array.isArray(value) ? (value as readonly WaitingNote[]) : []
  } catch {
    return []
  }
}

const change = (make: (before: readonly WaitingNote[]) => readonly WaitingNote[]): void => {
  kept = make(read())
  writeStored('local', storedName, kept.length === 0 ? null : JSON.stringify(kept))
  listeners.forEach((listener) => listener())
}

/** Another tab of this device may have sent or added some. */
const reread = (event: StorageEvent): void => {
  if (event.key !== storedName) return
  kept = fromText(event.newValue)
  listeners.forEach((listener) => listener())
}
if (typeof window !== 'undefined') window.addEventListener('storage', reread)

/** All notes that wait, in the order they were made. */
export const waitingNotes = (): readonly WaitingNote[] => read()

/** Those of one machine that nobody has refused. */
export const waitingOf = (bench: BenchId, machine: string): readonly WaitingNote[] =>
  read().filter((note) => note.bench === bench && note.machine === machine && note.refused === null)

/** Puts a note last in line. */
export const putInOutbox = (note: Omit<WaitingNote, 'refused'>): void =>
  change((before) => [...before, { ...note, refused: null }])

/** Takes a note out: it is kept on the bench, or left out by the person. */
export const takeOut = (id: string): void => {
  const key = read().find((note) => note.id === id)?.file?.key
  change((before) => before.filter((note) => note.id !== id))
  if (key !== undefined) dropUnused(key)
}

/** Lets go of a photograph that no note waits with. */
export const dropUnused = (key: string): void => {
  if (!read().some(({ file }) => file?.key === key)) void dropFromBox(key)
}

export const markRefused = (id: string, problems: readonly Problem[] | null): void =>
  change((before) => before.map((note) => (note.id === id ? { ...note, refused: problems } : note)))

let held: readonly Problem[] = []

/** Why the bench takes nothing now though it answers; empty where it does not answer or all is well. */
export const setHeld = (problems: readonly Problem[]): void => {
  if (problems.length === 0 && held.length === 0) return
  held = problems
  listeners.forEach((listener) => listener())
}

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

export const useHeld = (): readonly Problem[] => useSyncExternalStore(subscribe, () => held)

export const useWaitingNotes = (): readonly WaitingNote[] => useSyncExternalStore(subscribe, read)
