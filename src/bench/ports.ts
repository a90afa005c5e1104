import type { Problem } from '../base/problem.ts'
import type { BenchId } from './contract.ts'
import type { Note } from './note.ts'
import type { OwnBlueprint } from './own-blueprint.ts'
import type { KeptChange } from './settings-change.ts'

/** What became of notes handed to the store. They are kept as a whole or not at all. */
export type AppendOutcome =
  | { readonly kind: 'appended' }
  /** Someone else wrote first; `version` is the number of notes the machine has now. */
  | { readonly kind: 'conflict'; readonly version: number }
  | { readonly kind: 'missing' }
  /** The store could not keep them: the disk is full or cannot be written. */
  | { readonly kind: 'not-kept'; readonly problem: Problem }

/**
 * Where the logs of machines are kept. A note is never changed or removed.
 * Version means the number of notes a machine has; notes are numbered from 1 in `seq`.
 */
export type NoteStore = {
  /** The logs of all machines of a bench, each in order; machines in the order in which they came in. */
  readonly list: (bench: BenchId) => Promise<readonly (readonly Note[])[]>
  /** One machine's log in order; empty when there is no such machine. */
  readonly notes: (machine: string) => Promise<readonly Note[]>
  /**
   * Starts a machine's log with these notes. When the machine is there already: `appended` if it holds them all
   * (a resend), else `conflict`.
   */
  readonly add: (bench: BenchId, machine: string, notes: readonly Note[]) => Promise<AppendOutcome>
  /**
   * Adds notes to a machine whose version is still `expectedVersion`. Of two that append to the same version exactly
   * one wins. Notes the machine holds already, by id, are not added again; when it holds them all the answer is
   * `appended` whatever the version, so a resend does no harm.
   */
  readonly append: (machine: string, expectedVersion: number, notes: readonly Note[]) => Promise<AppendOutcome>
}

/** What became of a blueprint handed to the store. */
export type PutOutcome =
  /** It is kept; also when it was there already, word for word. */
  | { readonly kind: 'kept' }
  /** Another one is kept under this id. */
  | { readonly kind: 'taken' }
  | { readonly kind: 'not-kept'; readonly problem: Problem }

/** Where blueprints of one's own are kept, for all benches. What is kept under an id is never changed or removed. */
export type BlueprintStore = {
  /** All of them, in the order in which they were saved. */
  readonly list: () => Promise<readonly OwnBlueprint[]>
  readonly get: (id: string) => Promise<OwnBlueprint | null>
  /** Of two that put different ones under the same id exactly one wins. */
  readonly put: (own: OwnBlueprint) => Promise<PutOutcome>
}

/** Where changes of the settings are kept, for all benches. A change is never itself changed or removed; the later one counts. */
export type SettingsStore = {
  /** All of them, in the order in which they were made. */
  readonly changes: () => Promise<readonly KeptChange[]>
  readonly add: (
    change: KeptChange,
  ) => Promise<{ readonly kind: 'kept' } | { readonly kind: 'not-kept'; readonly problem: Problem }>
}

/** The time now, ISO 8601 in UTC. */
export type Clock = () => string
/** An id no one else will choose. */
export type Ids = () => string
