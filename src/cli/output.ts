import { problemText, type Problem } from '../base/problem.ts'
import type { Job } from '../machine/job.ts'
import type { MachineView } from '../machine/view.ts'

/** Where a command writes: given from outside, so that tests can look at it. */
export type Output = { readonly out: (text: string) => void; readonly err: (text: string) => void }

/** Where a command writes and puts its exit code. */
export type Shell = {
  readonly output: Output
  readonly finish: (code: number) => void
  /** Works a machine's view out: the dear part of most commands. */
  readonly viewOf: (job: Job) => MachineView
}

export const exitCodes = { fine: 0, refused: 1, misused: 2 } as const

/** Shows the answer as JSON or as lines. */
export const show = (output: Output, asJson: boolean, value: unknown, lines: () => readonly string[]): number => {
  output.out(asJson ? JSON.stringify(value, null, 2) : lines().join('\n'))
  return exitCodes.fine
}

/** Shows a refusal: as JSON on standard output when asked, as text on standard error otherwise. */
export const showProblems = (output: Output, asJson: boolean, problems: readonly Problem[]): number => {
  if (asJson) output.out(JSON.stringify({ problems }, null, 2))
  else output.err(problems.map(problemText).join('\n'))
  return exitCodes.refused
}
