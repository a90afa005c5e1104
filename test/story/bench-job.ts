import { problemText } from '../../src/base/problem.ts'
import { addMachine, addNote, type CommandDeps, type CommandOutcome } from '../../src/bench/commands.ts'
import type { MachineDocument } from '../../src/bench/contract.ts'
import { jobOf } from '../../src/bench/job.ts'
import { noteContentSchema, type NoteContentInput } from '../../src/bench/note.ts'
import { blueprintById, blueprints } from '../../src/blueprint/library.ts'
import { machineModel, machineView, resultUnder } from '../../src/machine/index.ts'
import type { Job } from '../../src/machine/job.ts'
import type { ReadingResult } from '../../src/machine/result.ts'
import type { MachineView, MoveView } from '../../src/machine/view.ts'
import { memoryNoteStore } from '../../src/store/memory/note-store.ts'

export const upright = blueprintById('bagged-upright-two-motors')!

/** A bench in memory with a clock that moves a minute at each note. */
const emptyBench = (): CommandDeps => {
  let minute = 0
  let count = 0
  return {
    store: memoryNoteStore(),
    bench: 'own',
    blueprintById,
    blueprintIds: blueprints.map((blueprint) => blueprint.id),
    now: () => new Date(Date.UTC(2026, 4, 2, 9, minute++)).toISOString(),
    newId: () => `id-${++count}`,
  }
}

const documentOf = (outcome: CommandOutcome): MachineDocument => {
  if (outcome.kind === 'done') return outcome.document
  throw new Error(outcome.problems.map(problemText).join('\n'))
}

type Intake = Partial<Extract<NoteContentInput, { kind: 'added' }>>

/** One whole job driven through the use-cases, as the page and the command line drive it. */
export class BenchJob {
  #document: MachineDocument
  readonly #deps: CommandDeps

  private constructor(deps: CommandDeps, document: MachineDocument) {
    this.#deps = deps
    this.#document = document
  }

  static async begin(intake: Intake): Promise<BenchJob> {
    const deps = emptyBench()
    const content = noteContentSchema.parse({
      kind: 'added',
      name: 'Green upright',
      blueprint: upright.id,
      plate: upright.plate,
      paidMinor: 400,
      currency: 'GBP',
      ...intake,
    })
    return new BenchJob(deps, documentOf(await addMachine(deps, content)))
  }

  get document(): MachineDocument {
    return this.#document
  }

  get job(): Job {
    return jobOf(this.#document.state, this.#document.notes, upright)
  }

  view(): MachineView {
    return machineView(this.job)
  }

  /** Probability that one of these faults is there; for faults that exclude each other. */
  chance(...faults: readonly string[]): number {
    const { faults: chances } = this.view()
    return faults.reduce((sum, fault) => sum + (chances[fault] ?? 0), 0)
  }

  async note(content: NoteContentInput): Promise<MachineDocument> {
    const { id, version } = this.#document.state
    this.#document = documentOf(await addNote(this.#deps, id, version, noteContentSchema.parse(content)))
    return this.#document
  }

  /** Tries to write a note that the rules refuse; gives the words of the refusal. */
  async refusal(content: NoteContentInput): Promise<string> {
    const { id, version } = this.#document.state
    const outcome = await addNote(this.#deps, id, version, noteContentSchema.parse(content))
    return outcome.kind === 'refused' ? outcome.problems.map(problemText).join('\n') : outcome.kind
  }

  read(check: string, result: ReadingResult, minutes = 1): Promise<MachineDocument> {
    return this.note({ kind: 'reading', check, result, minutes })
  }

  ohms = (check: string, resistanceOhm: number): Promise<MachineDocument> =>
    this.read(check, { kind: 'ohms', resistanceOhm })
  open = (check: string): Promise<MachineDocument> => this.read(check, { kind: 'open' })
  jumps = (check: string): Promise<MachineDocument> => this.read(check, { kind: 'jumps' })
  grade = (check: string, outcome: string): Promise<MachineDocument> => this.read(check, { kind: 'grade', outcome })

  async off(...covers: readonly string[]): Promise<void> {
    for (const cover of covers)
      await this.note({ kind: 'opened', cover, minutes: upright.covers.find((c) => c.id === cover)!.openMin })
  }

  async on(...covers: readonly string[]): Promise<void> {
    for (const cover of covers)
      await this.note({ kind: 'closed', cover, minutes: upright.covers.find((c) => c.id === cover)!.closeMin })
  }

  repair(repair: string, option: string, minutes: number, costMinor: number): Promise<MachineDocument> {
    return this.note({ kind: 'repaired', repair, option, minutes, costMinor })
  }

  /** Passes what must be passed before the machine may be run, as a sound machine would. */
  async passGates(): Promise<void> {
    const gates = upright.checks.filter(
      (check) => check.beforeRunning && this.view().beforeRunning.includes(check.name),
    )
    for (const check of gates) {
      const covers = check.coversOff.filter((cover) => !this.document.state.off.includes(cover))
      await this.off(...covers)
      if (check.kind !== 'meter') await this.grade(check.id, check.outcomes[0]!.id)
      else if (check.id === 'pins-on') await this.ohms(check.id, 6.4)
      else await this.open(check.id)
      await this.on(...covers.toReversed())
    }
  }

  /** Follows the plan's own next moves on a machine with these faults until it leaves; gives the moves made. */
  async followPlan(faults: readonly string[], seed: number): Promise<readonly MoveView[]> {
    const moves: MoveView[] = []
    const model = machineModel(upright, this.job.plate)
    let left = new Set(faults)
    for (let step = 0; step < 60; step++) {
      const { next } = this.view()
      moves.push(next)
      if (next.kind === 'exit') return moves
      await this.on(...next.close.map((cover) => cover.id))
      await this.off(...next.open.map((cover) => cover.id))
      if (next.kind === 'repair') {
        await this.repair(next.repair, next.option, next.minutes, next.costMinor)
        left = new Set([...left].filter((fault) => !next.removes.includes(fault)))
        continue
      }
      const suspect = model.sets.findIndex(
        (set) => set.length === left.size && set.every((f) => left.has(upright.faults[f]!.id)),
      )
      await this.read(next.id, resultUnder(model, suspect, seed, next.id, step), next.minutes)
    }
    throw new Error('the plan did not come to an end')
  }
}
