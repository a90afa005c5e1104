import { randomUUID } from 'node:crypto'
import type { Path } from '../base/form/place-text.ts'
import { parse } from '../base/parse.ts'
import { problem, type Problem } from '../base/problem.ts'
import { ok, refused, type Result } from '../base/result.ts'
import { blueprintFinder, blueprintIds, type BlueprintDeps } from '../bench/blueprints.ts'
import { addMachine, addNote, type CommandDeps, type CommandOutcome } from '../bench/commands.ts'
import type { MachineDocument } from '../bench/contract.ts'
import { jobOf } from '../bench/job.ts'
import { noteContentSchema, type NoteContentInput } from '../bench/note.ts'
import { makeReckoner } from '../bench/prices/reckoner.ts'
import { marketPriceOfMachine } from '../bench/prices/what-to-ask.ts'
import type { PeopleStore } from '../bench/people/people-ports.ts'
import type { OriginalStore } from '../bench/photos/original-ports.ts'
import type { PhotoStore } from '../bench/photos/photo-ports.ts'
import { machineDocument, noSuchMachine } from '../bench/queries.ts'
import { costsOf } from '../bench/costs.ts'
import { partsAtHand, withShelf } from '../bench/shelf/at-hand.ts'
import { currentSettings } from '../bench/settings.ts'
import { blueprints } from '../blueprint/library.ts'
import type { Job } from '../machine/job.ts'
import { openBenchStore, type StorePlace } from '../store/open-bench-store.ts'
import type { OpenStore } from '../store/sql/stores-on.ts'

/** The bench that is kept somewhere, and how to let go of it. */
export type OpenBench = {
  readonly deps: CommandDeps
  readonly blueprints: BlueprintDeps
  readonly photos: PhotoStore
  readonly originals: OriginalStore
  readonly people: PeopleStore
  readonly close: () => Promise<void>
}

/** Opens the bench wherever it is kept. Refused when the folder or the database cannot be read or written. */
export const openBench = async (place: StorePlace): Promise<Result<OpenBench>> => {
  const opened = await openBenchStore(place)
  if (opened.kind === 'refused') return opened
  const known: BlueprintDeps = { library: blueprints, own: opened.value.blueprints, now }
  return ok({
    deps: depsOf(opened.value, known),
    blueprints: known,
    photos: opened.value.photos,
    originals: opened.value.originals,
    people: opened.value.people,
    close: opened.value.close,
  })
}

const now = (): string => new Date().toISOString()

const depsOf = (store: OpenStore, known: BlueprintDeps): CommandDeps => ({
  store: store.notes,
  logs: store.logs,
  books: store.books,
  settings: store.settings,
  bench: 'own',
  blueprintById: blueprintFinder(known.library, known.own),
  blueprintIds: () => blueprintIds(known),
  now,
  newId: () => randomUUID(),
})

/** A machine by its id or the beginning of it, or by its exact name. */
export const findMachine = async (deps: CommandDeps, wanted: string): Promise<Result<MachineDocument>> => {
  const exact = await machineDocument(deps, wanted)
  if (exact !== null) return ok(exact)
  const logs = await deps.store.list(deps.bench)
  const ids = logs.flatMap((notes) => {
    const first = notes[0]
    if (first === undefined) return []
    const name = first.content.kind === 'added' ? first.content.name : ''
    return first.machine.startsWith(wanted) || name === wanted ? [first.machine] : []
  })
  if (ids.length > 1)
    return refused(problem('several', wanted, `${ids.length} machines begin like this`, 'Give more of the id'))
  const document = ids[0] === undefined ? null : await machineDocument(deps, ids[0])
  return document === null ? refused(noSuchMachine(wanted)) : ok(document)
}

/** The job that a machine's notes add up to. Refused when its blueprint is not known here. */
export const jobOfDocument = async (deps: CommandDeps, document: MachineDocument): Promise<Result<Job>> => {
  const blueprint = await deps.blueprintById(document.state.blueprint)
  if (blueprint === undefined) {
    return refused(
      problem(
        'unknown-blueprint',
        document.state.id,
        `The blueprint “${document.state.blueprint}” is not known here`,
        'Import it first',
      ),
    )
  }
  const settings = await currentSettings(deps.settings)
  const { state, notes } = document
  const reckoned = jobOf(state, notes, blueprint, settings.attitude, costsOf(settings, state.currency))
  const job = withShelf(reckoned, state, { parts: await partsAtHand(deps), region: settings.region })
  const market = await marketPriceOfMachine({ ...deps, reckoner: makeReckoner() }, blueprint, state)
  return ok({ ...job, market })
}

/** Writes a note on a machine: parsed at the door, then by the rules of the bench. `place`: how its fields were typed. */
export const writeNote = async (
  deps: CommandDeps,
  document: MachineDocument,
  content: NoteContentInput,
  place?: (path: Path) => string,
): Promise<Result<MachineDocument>> => {
  const parsed = parse(noteContentSchema, content, 'note', place)
  if (parsed.kind === 'refused') return parsed
  return settled(await addNote(deps, document.state.id, document.state.version, parsed.value))
}

/** Adds a machine to the bench. `place`: how its fields were typed. */
export const writeMachine = async (
  deps: CommandDeps,
  content: NoteContentInput,
  place?: (path: Path) => string,
): Promise<Result<MachineDocument>> => {
  const parsed = parse(noteContentSchema, content, 'note', place)
  return parsed.kind === 'refused' ? parsed : settled(await addMachine(deps, parsed.value))
}

const settled = (outcome: CommandOutcome): Result<MachineDocument> =>
  outcome.kind === 'done' ? ok(outcome.document) : refused(...(outcome.problems as readonly [Problem]))
