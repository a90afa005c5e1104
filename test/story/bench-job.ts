import type { MachineDocument } from '../../src/bench/contract.ts'
import { jobOf } from '../../src/bench/job.ts'
import { noteContentSchema, type NoteContent, type NoteContentInput } from '../../src/bench/note.ts'
import { blueprintById } from '../../src/blueprint/library.ts'
import { machineView } from '../../src/machine/index.ts'
import type { Job } from '../../src/machine/job.ts'
import type { ReadingResult } from '../../src/machine/result.ts'
import type { MachineView } from '../../src/machine/view.ts'

export const upright = blueprintById('bagged-upright-two-motors')!

/** The door through which a job's notes are written: the use-cases themselves, or the page. */
export type Writer = {
  readonly begin: (content: NoteContent) => Promise<MachineDocument>
  readonly write: (document: MachineDocument, content: NoteContent) => Promise<MachineDocument>
  /** Writes what the job is not about, the quick way; left out, there is no quicker way. */
  readonly writeAside?: (document: MachineDocument, content: NoteContent) => Promise<MachineDocument>
  /** Tries to write what the rules refuse; gives the words of the refusal. */
  readonly refusal: (document: MachineDocument, content: NoteContent) => Promise<string>
}

export type Intake = Partial<Extract<NoteContentInput, { kind: 'added' }>>

/** One whole job, note by note. */
export class BenchJob {
  #document: MachineDocument
  /** The view last asked for and the document it is of: asked for often, and dear. */
  #viewed: { readonly document: MachineDocument; readonly view: MachineView } | null = null
  readonly #writer: Writer

  private constructor(writer: Writer, document: MachineDocument) {
    this.#writer = writer
    this.#document = document
  }

  static async begin(writer: Writer, intake: Intake): Promise<BenchJob> {
    const content = noteContentSchema.parse({
      kind: 'added',
      name: 'Green upright',
      blueprint: upright.id,
      plate: upright.plate,
      paidMinor: 400,
      currency: 'GBP',
      ...intake,
    })
    return new BenchJob(writer, await writer.begin(content))
  }

  get document(): MachineDocument {
    return this.#document
  }

  get job(): Job {
    return jobOf(this.#document.state, this.#document.notes, upright)
  }

  view(): MachineView {
    if (this.#viewed?.document !== this.#document)
      this.#viewed = { document: this.#document, view: machineView(this.job) }
    return this.#viewed.view
  }

  /** Probability that one of these faults is there; for faults that exclude each other. */
  chance(...faults: readonly string[]): number {
    const { faults: chances } = this.view()
    return faults.reduce((sum, fault) => sum + (chances[fault] ?? 0), 0)
  }

  async note(content: NoteContentInput): Promise<MachineDocument> {
    this.#document = await this.#writer.write(this.#document, noteContentSchema.parse(content))
    return this.#document
  }

  refusal(content: NoteContentInput): Promise<string> {
    return this.#writer.refusal(this.#document, noteContentSchema.parse(content))
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
    const { beforeRunning } = this.view()
    const gates = upright.checks.filter((check) => check.beforeRunning && beforeRunning.includes(check.name))
    const { writeAside } = this.#writer
    const aside = writeAside === undefined ? this : new BenchJob({ ...this.#writer, write: writeAside }, this.#document)
    for (const check of gates) await aside.passGate(check)
    this.#document = aside.document
  }

  private async passGate(check: (typeof upright.checks)[number]): Promise<void> {
    const covers = check.coversOff.filter((cover) => !this.document.state.off.includes(cover))
    await this.off(...covers)
    if (check.kind !== 'meter') await this.grade(check.id, check.outcomes[0].id)
    else if (check.id === 'pins-on') await this.ohms(check.id, 6.4)
    else await this.open(check.id)
    await this.on(...covers.toReversed())
  }
}
