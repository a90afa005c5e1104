import type { Problem } from '../../base/problem.ts'

/**
 * Where files of photographs are kept as they were sent, where the settings ask for it. They hold the place and the device they were
 * taken with, so they are never shown in a sale sheet or a story.
 */
export type OriginalStore = {
  /** Keeps a file under the id of its photograph; the same one again does no harm. Gives what is wrong where it could not be written. */
  readonly keep: (id: string, bytes: Uint8Array) => Promise<Problem | null>
  /** Null where none was kept. */
  readonly get: (id: string) => Promise<Uint8Array | null>
}
