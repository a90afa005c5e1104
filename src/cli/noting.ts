import type { Command } from 'commander'
import { ok, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import type { MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import { textOf } from './option-text.ts'
import type { Options } from './with-bench.ts'

/** The machine that something is noted of, and the blueprint it is read by now, where that is known here. */
export type Read = { readonly document: MachineDocument; readonly blueprint: Blueprint | undefined }

/** Makes the content of a note of what was typed behind the machine's name. */
export type Maker = (read: Read, args: readonly string[], options: Options) => Result<NoteContentInput>

/** Adds a command that notes something of a machine. */
export type Noting = (usage: string, description: string, make: Maker) => Command

/** The minutes that were given, or else these. */
export const minutesOr = (options: Options, otherwise: number): Result<number> => {
  const given = textOf(options, 'minutes')
  return given === undefined ? ok(otherwise) : quantityFromText(given, 'durationMin', '--minutes')
}
