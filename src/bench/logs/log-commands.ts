import type { z } from 'zod'
import { problem, type Problem } from '../../base/problem.ts'
import { canonical } from '../canonical.ts'
import type { BenchId } from '../contract.ts'
import type { Clock, Ids, LogStore, WriteOutcome } from '../ports.ts'
import type { Entry, EntryOf, LogKind } from './entry.ts'

/** What a kind of log is: how its entries are parsed, what stands against the next one, and what they add up to. */
export type LogRules<Content extends { readonly kind: string }, State> = {
  readonly kind: LogKind
  /** `part`, in sentences. */
  readonly name: string
  readonly schema: z.ZodType<Content>
  /** What is wrong with writing this next; entries are empty for a log that is only begun. */
  readonly problems: (entries: readonly EntryOf<Content>[], content: Content) => readonly Problem[]
  readonly fold: (entries: readonly EntryOf<Content>[]) => State
}

/** One log as it is given out: what its entries add up to, and the entries. */
export type LogDocument<Content extends { readonly kind: string }, State> = {
  readonly state: State
  readonly entries: readonly EntryOf<Content>[]
}

/** What became of a command. Nothing was written unless it is `done`. */
export type LogOutcome<Document> =
  | { readonly kind: 'done'; readonly document: Document }
  | { readonly kind: 'refused' | 'missing' | 'not-kept'; readonly problems: readonly Problem[] }
  | { readonly kind: 'conflict'; readonly problems: readonly Problem[]; readonly document: Document }

export type LogDeps = {
  readonly logs: LogStore
  readonly bench: BenchId
  readonly now: Clock
  readonly newId: Ids
}

/** The use-cases of one kind of log. */
export type LogCommands<Content extends { readonly kind: string }, State> = {
  /** A log with its contents parsed; empty when there is none. */
  readonly entries: (deps: Pick<LogDeps, 'logs'>, id: string) => Promise<readonly EntryOf<Content>[]>
  /** One of them, or null when there is none of this id. */
  readonly document: (deps: Pick<LogDeps, 'logs'>, id: string) => Promise<LogDocument<Content, State> | null>
  /** Begins one. The same id with the same content again changes nothing and answers `done`. */
  readonly begin: (deps: LogDeps, content: Content, id?: string) => Promise<LogOutcome<LogDocument<Content, State>>>
  /**
   * Writes an entry. Sending the same one again, by id, changes nothing and answers `done`. `version`: of the log that the writer had
   * before them.
   */
  readonly add: (
    deps: LogDeps,
    id: string,
    version: number,
    content: Content,
    entry?: string,
  ) => Promise<LogOutcome<LogDocument<Content, State>>>
}

export const logCommands = <Content extends { readonly kind: string }, State>(
  rules: LogRules<Content, State>,
): LogCommands<Content, State> => {
  type Entries = readonly EntryOf<Content>[]
  type Outcome = LogOutcome<LogDocument<Content, State>>
  const entriesOf = async ({ logs }: Pick<LogDeps, 'logs'>, id: string): Promise<Entries> =>
    (await logs.entries(rules.kind, id)).map((entry) => ({ ...entry, content: rules.schema.parse(entry.content) }))
  const documentOf = (entries: Entries) => ({ state: rules.fold(entries), entries })
  const done = (entries: Entries): Outcome => ({ kind: 'done', document: documentOf(entries) })
  const conflict = (entries: Entries): Outcome => ({
    kind: 'conflict',
    problems: [changedMeanwhile(rules.name)],
    document: documentOf(entries),
  })

  const settled = async (deps: LogDeps, id: string, outcome: WriteOutcome): Promise<Outcome> => {
    if (outcome.kind === 'not-kept') return { kind: 'not-kept', problems: [outcome.problem] }
    const entries = await entriesOf(deps, id)
    if (entries.length === 0) return { kind: 'missing', problems: [noSuchLog(rules.name, id)] }
    return outcome.kind === 'appended' ? done(entries) : conflict(entries)
  }

  const write = async (
    deps: LogDeps,
    id: string,
    { entries, version, content, entry }: { entries: Entries; version: number; content: Content; entry: string },
  ): Promise<Outcome> => {
    const before = entries.find((one) => one.id === entry)
    if (before !== undefined) return sentBefore(entries, before, content)
    if (version !== entries.length) return conflict(entries)
    const problems = rules.problems(entries, content)
    if (problems.length > 0) return { kind: 'refused', problems }
    const made: Entry = { id: entry, log: id, seq: version + 1, at: deps.now(), content }
    return settled(
      deps,
      id,
      await deps.logs.write(deps.bench, [{ kind: rules.kind, id, expectedVersion: version, entries: [made] }]),
    )
  }

  const sentBefore = (entries: Entries, before: EntryOf<Content>, content: Content): Outcome =>
    canonical(before.content) === canonical(content)
      ? done(entries)
      : { kind: 'refused', problems: [idTaken(before.id)] }

  return {
    entries: entriesOf,
    document: async (deps, id) => {
      const entries = await entriesOf(deps, id)
      return entries.length === 0 ? null : documentOf(entries)
    },
    begin: async (deps, content, id = deps.newId()) => {
      const entries = await entriesOf(deps, id)
      const [first] = entries
      if (first !== undefined) return sentBefore(entries, first, content)
      return write(deps, id, { entries, version: 0, content, entry: deps.newId() })
    },
    add: async (deps, id, version, content, entry = deps.newId()) => {
      const entries = await entriesOf(deps, id)
      if (entries.length === 0) return { kind: 'missing', problems: [noSuchLog(rules.name, id)] }
      return write(deps, id, { entries, version, content, entry })
    },
  }
}

/** The refusal of one that is not there. */
export const noSuchLog = (name: string, id: string): Problem =>
  problem(`unknown-${name.replaceAll(' ', '-')}`, '', `There is no ${name} “${id}” on this bench`, 'Look at the list')

const changedMeanwhile = (name: string): Problem =>
  problem(
    'changed-meanwhile',
    'version',
    `Something else was written about this ${name} meanwhile`,
    'Look at what is new, then enter it again if it still holds',
  )

const idTaken = (id: string): Problem =>
  problem('id-taken', 'id', `There is another entry with the id “${id}”`, 'Send it with a new id')
