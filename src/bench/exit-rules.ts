import { problem, type Problem } from '../base/problem.ts'
import type { Job } from '../machine/job.ts'
import { proofVerdict } from '../machine/proof/proof-case.ts'
import { runningBarred, shownWorking } from '../machine/running.ts'
import { coverName } from './cover-rules.ts'
import type { NoteContent } from './note.ts'
import { listText } from './words.ts'

type LeftContent = Extract<NoteContent, { kind: 'left' }>

/**
 * What stands against this exit. A barrier to repair is named only where it ends. Only selling it as working asks for anything: a proof that it is fit, or a word on why it goes without; all covers on,
 * nothing that bars running, and a check passed since the last work on it that shows that it works.
 */
export const exitProblems = (content: LeftContent, job: Job): readonly Problem[] => {
  if (content.barrier !== undefined && (content.exit === 'sell-working' || content.exit === 'sell-for-spares'))
    return [strayBarrier]
  if (content.exit !== 'sell-working') return []
  const barred = runningBarred(job)
  return [
    ...(content.safety === '' && proofVerdict(job)?.kind !== 'fit' ? [noSafety] : []),
    ...(job.off.length === 0 ? [] : [coversOff(job)]),
    ...(barred.length === 0 ? [] : [dangerous(barred)]),
    ...(shownWorking(job) ? [] : [notShown(job)]),
  ]
}

const strayBarrier = problem(
  'barrier-without-end-of-life',
  'barrier',
  'What stood in the way of mending it belongs to a machine that is broken up or scrapped',
  'Leave it out',
)

const noSafety = problem(
  'no-safety-words',
  'safety',
  'The checks after repair do not prove it fit to sell, and nothing is said about that',
  'Make the checks that are open on the page Proof, or say who made them and with what, or why it is sold without',
)

const coversOff = (job: Job): Problem =>
  problem(
    'covers-off',
    'exit',
    `It cannot be sold as working with the ${listText(job.off.map((id) => coverName(job.blueprint, id)))} off`,
    'Close all covers first',
  )

const dangerous = (barred: readonly string[]): Problem =>
  problem(
    'running-barred',
    'exit',
    `It cannot be sold as working while it must not be run: ${barred.join('; ')}`,
    'With the plug out, mend what was not passed and make the checks named, or sell it for spares or repair',
  )

const notShown = (job: Job): Problem => {
  const proofs = job.blueprint.checks.filter((check) => check.kind !== 'meter' && check.provesWorking)
  const names = listText(proofs.map((check) => `“${check.name}”`))
  return problem(
    'not-shown-working',
    'exit',
    'No check made since the last work on it shows that it works',
    `Pass ${names === '' ? 'a check that shows it' : names} first, or sell it for spares or repair`,
  )
}
