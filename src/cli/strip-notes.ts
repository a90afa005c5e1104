import type { Command } from 'commander'
import type { Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { quantityFromText } from '../base/units.ts'
import type { MachineDocument } from '../bench/contract.ts'
import type { NoteContentInput } from '../bench/note.ts'
import { fixingFromText } from '../bench/stripping/fixing-text.ts'
import type { Fixing } from '../bench/stripping/strip-note.ts'
import { stripView } from '../bench/stripping/strip-view.ts'
import type { Blueprint } from '../blueprint/schema.ts'
import type { Options } from './with-bench.ts'

/** What can be said of a piece that goes back, besides. */
export const withBackOptions = (command: Command): Command =>
  withStepOptions(command).option(
    '--left-over-in <words...>',
    'what was left over before and is in now, such as "1 × screw 4×16"',
  )

/** What can be said of a piece that comes away or goes back. Without a word on its fixings nobody counted them. */
export const withStepOptions = (command: Command): Command =>
  command
    .option('--fixing <words...>', 'what held it or went back with it, such as "3 × screw 4×16 in lid"')
    .option('--as-said', 'the fixings of the blueprint, or as it goes back all that are kept of it')
    .option('--none', 'counted, and no fixing held it or went back')
    .option('--place <words>', 'where fixings are kept that name no place')
    .option('--minutes <number>', 'minutes it took')
    .option('--text <words>', 'a word on it')

type Read = { readonly document: MachineDocument; readonly blueprint: Blueprint | undefined }

/** The note of a cover that comes off or goes on. */
export const coverNote = (
  read: Read,
  kind: 'opened' | 'closed',
  cover: string,
  options: Options,
): Result<NoteContentInput> => {
  const known = read.blueprint?.covers.find(({ id }) => id === cover)
  const usualMin = (kind === 'opened' ? known?.openMin : known?.closeMin) ?? 0
  const said = saidOf(read, { kind: 'cover', id: cover, isBack: kind === 'closed' }, usualMin, options)
  return said.kind === 'ok' ? ok({ kind, cover, ...said.value }) : said
}

/** The note of a part that comes out or goes in. */
export const partNote = (
  read: Read,
  kind: 'taken-out' | 'put-in',
  part: string,
  options: Options,
): Result<NoteContentInput> => {
  const said = saidOf(read, { kind: 'part', id: part, isBack: kind === 'put-in' }, 0, options)
  return said.kind === 'ok' ? ok({ kind, part, ...said.value }) : said
}

type Moving = { readonly kind: 'cover' | 'part'; readonly id: string; readonly isBack: boolean }
type Said = {
  readonly minutes: number
  readonly fixings?: Fixing[]
  readonly leftOverIn?: Fixing[]
  readonly text?: string
}

const saidOf = (read: Read, moving: Moving, usualMin: number, options: Options): Result<Said> => {
  const { minutes: written, text } = options
  const minutes = typeof written === 'string' ? quantityFromText(written, 'durationMin', '--minutes') : ok(usualMin)
  const fixings = fixingsOf(read, moving, options)
  if (minutes.kind === 'refused') return minutes
  if (fixings.kind === 'refused') return fixings
  const found = fixingsFrom(options['leftOverIn'])
  if (found.kind === 'refused') return found
  return ok({
    minutes: minutes.value,
    ...(fixings.value === null ? {} : { fixings: [...fixings.value] }),
    ...(found.value === null ? {} : { leftOverIn: [...found.value] }),
    ...(typeof text === 'string' ? { text } : {}),
  })
}

/** Null where nobody counted. */
const fixingsOf = (read: Read, moving: Moving, options: Options): Result<readonly Fixing[] | null> => {
  const place = typeof options['place'] === 'string' ? options['place'] : ''
  const placed = (fixings: readonly Fixing[]): readonly Fixing[] =>
    fixings.map((fixing) => (fixing.place === '' ? { ...fixing, place } : fixing))
  const written = fixingsFrom(options['fixing'])
  if (written.kind === 'refused') return written
  if (written.value !== null) return ok(placed(written.value))
  if (options['none'] !== undefined) return ok([])
  return options['asSaid'] === undefined ? ok(null) : ok(placed(asSaid(read, moving)))
}

/** Fixings as written after an option; null where it was not given. */
const fixingsFrom = (written: Options[string]): Result<readonly Fixing[] | null> => {
  if (!Array.isArray(written)) return ok(null)
  const read = written.map(fixingFromText)
  const problems: readonly Problem[] = read.flatMap((one) => (one.kind === 'refused' ? one.problems : []))
  const [first, ...more] = problems
  if (first !== undefined) return refused(first, ...more)
  return ok(read.flatMap((one) => (one.kind === 'ok' ? [one.value] : [])))
}

const asSaid = ({ document, blueprint }: Read, { kind, id, isBack }: Moving): readonly Fixing[] => {
  if (blueprint === undefined) return []
  const { away, next } = stripView(document.notes, blueprint)
  const isIt = ({ piece }: { readonly piece: { readonly kind: string; readonly id: string } }): boolean =>
    piece.kind === kind && piece.id === id
  if (isBack) return away.find(isIt)?.kept ?? []
  return (next.find(isIt)?.fixings ?? []).map((fixing) => ({ ...fixing, place: '' }))
}
