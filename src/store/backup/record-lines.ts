import { z } from 'zod'
import { parse } from '../../base/parse.ts'
import { problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { entrySchema, logKinds } from '../../bench/logs/entry.ts'
import { noteSchema } from '../../bench/note.ts'
import { ownBlueprintSchema } from '../../bench/own-blueprint.ts'
import { benchItself, personSchema } from '../../bench/people/person.ts'
import { keptChangeSchema } from '../../bench/settings-change.ts'
import { jsonOf } from '../copy/json-of.ts'
import type { KeptRecord } from '../copy/records.ts'

/** The file of each kind, with one value a line: a note, an entry, a blueprint, a change of the settings. */
export const fileOfKind = {
  person: 'people.jsonl',
  blueprint: 'blueprints.jsonl',
  settings: 'settings.jsonl',
  machine: 'machines.jsonl',
  log: 'logs.jsonl',
} as const satisfies Readonly<Record<KeptRecord['kind'], string>>
export const kinds = Object.keys(fileOfKind) as readonly KeptRecord['kind'][]

const bench = z.string().min(1).max(120)
const noteLine = z.strictObject({ bench, note: noteSchema })
/** Passphrases are in no file that anyone can open; people are given new ones. */
const personLine = personSchema.omit({ passphrase: true })
const entryLine = z.strictObject({ bench, log: z.enum(logKinds), entry: entrySchema })

/** The lines that a record is written as. */
export const linesOf = (record: KeptRecord): readonly string[] => {
  switch (record.kind) {
    case 'machine':
      return record.notes.map((note) => JSON.stringify({ bench: record.bench, note }))
    case 'log':
      return record.entries.map((entry) => JSON.stringify({ bench: record.bench, log: record.logKind, entry }))
    case 'person': {
      const { passphrase: _kept, ...open } = record.person
      return open.id === benchItself ? [] : [JSON.stringify(open)]
    }
    case 'blueprint':
      return [JSON.stringify(record.own)]
    case 'settings':
      return [JSON.stringify(record.change)]
  }
}

/** A line with its place, from 1. */
export type PlacedLine = { readonly place: number; readonly text: string }

/** Records from the lines of a file: what belongs to one log is put together again. A line that does not pass is refused and left out. */
export async function* recordsOf(
  kind: KeptRecord['kind'],
  lines: AsyncIterable<PlacedLine>,
): AsyncGenerator<Result<KeptRecord>> {
  let log: KeptRecord | null = null
  for await (const line of lines) {
    const part = parseLine(kind, line)
    if (part.kind === 'refused') {
      yield part
      continue
    }
    const joined: KeptRecord | null = log === null ? null : join(log, part.value)
    if (joined === null && log !== null) yield ok(log)
    log = joined ?? part.value
  }
  if (log !== null) yield ok(log)
}

const parseLine = (kind: KeptRecord['kind'], { place, text }: PlacedLine): Result<KeptRecord> => {
  const where = `${fileOfKind[kind]} line ${place}`
  const value = jsonOf(text)
  if (value === undefined) {
    return refused(problem('damaged-line', where, 'This line is not JSON', 'Use another backup'))
  }
  const parsed = parseValue(kind, value)
  if (parsed.kind === 'ok') return parsed
  const first = parsed.problems[0]
  const what = `${logOf(value)}${first.where}: ${first.what}`
  return refused(problem('damaged-line', where, what, 'Use another backup'))
}

const parseValue = (kind: KeptRecord['kind'], value: unknown): Result<KeptRecord> => {
  switch (kind) {
    case 'machine':
      return mapped(parse(noteLine, value, 'line'), ({ bench, note }) => ({
        kind: 'machine',
        bench,
        id: note.machine,
        notes: [note],
      }))
    case 'log':
      return mapped(parse(entryLine, value, 'line'), ({ bench, log, entry }) => ({
        kind: 'log',
        bench,
        logKind: log,
        id: entry.log,
        entries: [entry],
      }))
    case 'person':
      return mapped(parse(personLine, value, 'person'), (open) => ({
        kind: 'person',
        person: { ...open, passphrase: null },
      }))
    case 'blueprint':
      return mapped(parse(ownBlueprintSchema, value, 'blueprint'), (own) => ({ kind: 'blueprint', own }))
    case 'settings':
      return mapped(parse(keptChangeSchema, value, 'change'), (change) => ({ kind: 'settings', change }))
  }
}

const mapped = <T>(result: Result<T>, make: (value: T) => KeptRecord): Result<KeptRecord> =>
  result.kind === 'refused' ? result : ok(make(result.value))

/** Two parts of one log as one; null where they belong to different logs, or are none. */
const join = (one: KeptRecord, other: KeptRecord): KeptRecord | null => {
  if (one.kind === 'machine' && other.kind === 'machine' && one.id === other.id && one.bench === other.bench) {
    one.notes.push(...other.notes)
    return one
  }
  const isSameLog =
    one.kind === 'log' &&
    other.kind === 'log' &&
    one.id === other.id &&
    one.logKind === other.logKind &&
    one.bench === other.bench
  if (!isSameLog) return null
  one.entries.push(...other.entries)
  return one
}

/** Of which machine or log a line that does not pass seems to be. */
const logOf = (value: unknown): string => {
  const seen = z
    .looseObject({
      note: z.looseObject({ machine: z.string() }).optional(),
      entry: z.looseObject({ log: z.string() }).optional(),
    })
    .safeParse(value)
  if (!seen.success) return ''
  if (seen.data.note !== undefined) return `machine ${seen.data.note.machine}, `
  return seen.data.entry === undefined ? '' : `log ${seen.data.entry.log}, `
}
