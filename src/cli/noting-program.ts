import type { Command } from 'commander'
import { atOptions } from './at-options.ts'
import { findMachine, writeNote } from './bench-commands.ts'
import { addKnowing } from './known-notes.ts'
import { addLeaving } from './leave-note.ts'
import type { Noting } from './noting.ts'
import { showProblems, type Shell } from './output.ts'
import { addReading } from './read-note.ts'
import { addRepair, atItsShare } from './repair-note.ts'
import { addFindings, addRemarks } from './said-notes.ts'
import { addStripping } from './strip-commands.ts'
import { answer, withBench } from './with-bench.ts'

/** Commands that note something of a machine, in the order in which `thrum --help` names them. */
export const addNotingCommands = (program: Command, shell: Shell): void => {
  const noting: Noting = (usage, description, make) =>
    program
      .command(usage)
      .description(description)
      .action(
        withBench(shell, async ({ deps }, options, args) => {
          const document = await findMachine(deps, args[0] ?? '')
          if (document.kind === 'refused') return showProblems(shell.output, options.json, document.problems)
          const blueprint = await deps.blueprintById(document.value.state.blueprint)
          const content = make({ document: document.value, blueprint }, args.slice(1), options)
          if (content.kind === 'refused') return showProblems(shell.output, options.json, content.problems)
          const note = await atItsShare(deps, content.value, options)
          return answer(shell, options, deps, await writeNote(deps, document.value, note, atOptions(noteOptions)))
        }),
      )
  addReading(noting)
  addStripping(noting)
  addRepair(noting)
  addFindings(noting)
  addKnowing(noting)
  addRemarks(noting)
  addLeaving(noting)
}

/** The options that fields of these notes are typed in. */
const noteOptions = {
  minutes: '--minutes',
  costMinor: '--cost',
  instrument: '--instrument',
  shelfPart: '--from-shelf',
  fixings: '--fixing',
  ageYears: '--age',
  wear: '--wear',
  make: '--make',
  safety: '--safety',
  feeMinor: '--fee',
  postageMinor: '--postage',
  barrier: '--barrier',
}
