import { readFile } from 'node:fs/promises'
import type { Command } from 'commander'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import type { MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { keepPhoto, type PhotoPlaces } from '../bench/photos/keep-photo.ts'
import { photoTimes, type PhotoAbout } from '../bench/photos/photo-note.ts'
import { saleShotIds } from '../facts/sale-shots.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { showProblems, type Shell } from './output.ts'
import { answer, withBench, type Options } from './with-bench.ts'

/** `thrum photo`: keeps photographs of a machine. */
export const addPhotoCommand = (program: Command, shell: Shell): void => {
  program
    .command('photo <machine> <files...>')
    .description('keep photographs of a machine; where and with what they were taken is left out')
    .option('--when <time>', photoTimes.join(', '), 'work')
    .option('--part <id>', 'the part that they show')
    .option('--fault <id>', 'the fault that they show')
    .option('--note <id>', 'the note that they belong to: a step, a reading, a repair')
    .option('--shot <id>', `which of the shots that sell: ${saleShotIds.join(', ')}`)
    .option('--text <words>', 'a word on it', '')
    .action(
      withBench(shell, async ({ deps, photos, originals }, options, [wanted = '', ...files]) => {
        const about = aboutOf(options)
        if (about.kind === 'refused') return showProblems(shell.output, options.json, about.problems)
        const places = { photos, originals, settings: deps.settings }
        let document = await findMachine(deps, wanted)
        for (const file of files) {
          if (document.kind === 'refused') break
          document = await withPhoto(places, file, options, about.value, document.value, (content, before) =>
            writeNote(deps, before, content),
          )
        }
        return answer(shell, options, deps, document)
      }),
    )
}

const withPhoto = async (
  places: PhotoPlaces,
  file: string,
  { when, shot, text }: Options,
  about: PhotoAbout,
  document: MachineDocument,
  write: (content: NoteContentInput, before: MachineDocument) => Promise<Result<MachineDocument>>,
): Promise<Result<MachineDocument>> => {
  const bytes = await readFile(file).catch(() => null)
  if (bytes === null) return refused(unreadable(file))
  const outcome = await keepPhoto(places, bytes)
  if (outcome.kind !== 'kept') return refused({ ...outcome.problem, where: file })
  const content = {
    kind: 'photo',
    photo: outcome.photo.id,
    about,
    when,
    ...(shot === undefined ? {} : { shot }),
    text,
  } as NoteContentInput
  return write(content, document)
}

/** What the photographs are of: one thing of these, else the machine. */
const aboutOf = ({ part, fault, note }: Options): Result<PhotoAbout> => {
  const named: readonly PhotoAbout[] = [
    ...(typeof part === 'string' ? [{ kind: 'part', part } as const] : []),
    ...(typeof fault === 'string' ? [{ kind: 'fault', fault } as const] : []),
    ...(typeof note === 'string' ? [{ kind: 'note', note } as const] : []),
  ]
  const [about = { kind: 'machine' } as const, ...more] = named
  return more.length === 0 ? ok(about) : refused(severalThings)
}

const severalThings = problem(
  'several-things',
  'part, fault, note',
  'A photograph belongs to one thing',
  'Name a part, a fault or a note, or none for the machine',
)

const unreadable = (file: string): Problem =>
  problem('file-not-read', file, 'This file cannot be read', 'Give the path of a photograph')
