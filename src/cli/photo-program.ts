import { readFile } from 'node:fs/promises'
import type { Command } from 'commander'
import { problem, type Problem } from '../base/problem.ts'
import { refused, type Result } from '../base/result.ts'
import type { MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { photoTimes } from '../bench/photos/photo-note.ts'
import type { PhotoStore } from '../bench/photos/photo-ports.ts'
import { saleShotIds } from '../facts/sale-shots.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import type { Shell } from './output.ts'
import { answer, withBench, type Options } from './with-bench.ts'

/** `thrum photo`: keeps photographs of a machine. */
export const addPhotoCommand = (program: Command, shell: Shell): void => {
  program
    .command('photo <machine> <files...>')
    .description('keep photographs of a machine; where and with what they were taken is left out')
    .option('--when <time>', photoTimes.join(', '), 'work')
    .option('--part <id>', 'the part that they show')
    .option('--shot <id>', `which of the shots that sell: ${saleShotIds.join(', ')}`)
    .option('--text <words>', 'a word on it', '')
    .action(
      withBench(shell, async ({ deps, photos }, options, [wanted = '', ...files]) => {
        let document = await findMachine(deps, wanted)
        for (const file of files) {
          if (document.kind === 'refused') break
          document = await withPhoto(photos, file, options, document.value, (content, before) =>
            writeNote(deps, before, content),
          )
        }
        return answer(shell, options, deps, document)
      }),
    )
}

const withPhoto = async (
  photos: PhotoStore,
  file: string,
  options: Options,
  document: MachineDocument,
  write: (content: NoteContentInput, before: MachineDocument) => Promise<Result<MachineDocument>>,
): Promise<Result<MachineDocument>> => {
  const bytes = await readFile(file).catch(() => null)
  if (bytes === null) return refused(unreadable(file))
  const outcome = await photos.put(bytes)
  if (outcome.kind !== 'kept') return refused({ ...outcome.problem, where: file })
  const { when, part, shot, text } = options
  const content = {
    kind: 'photo',
    photo: outcome.photo.id,
    about: part === undefined ? { kind: 'machine' } : { kind: 'part', part },
    when,
    ...(shot === undefined ? {} : { shot }),
    text,
  } as NoteContentInput
  return write(content, document)
}

const unreadable = (file: string): Problem =>
  problem('file-not-read', file, 'This file cannot be read', 'Give the path of a photograph')
