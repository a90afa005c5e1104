/**
 * What is wrong, where, and what would be right. Every refusal of outside input carries one of these,
 * so the API, the command line and the page can show the same words.
 */
export type Problem = {
  /** Short stable name a program can test for, such as `unknown-point`. */
  readonly code: string
  /** What is wrong, as a sentence without its full stop. */
  readonly what: string
  /** The place: a path into the input, a note, a folder. Empty when the whole input is meant. */
  readonly where: string
  /** What would be right: the mend, as a sentence without its full stop. */
  readonly mend: string
}

/** One problem as a line of text: `where: what. mend.` */
export const problemText = (problem: Problem): string => {
  const place = problem.where === '' ? '' : `${problem.where}: `
  const mend = problem.mend === '' ? '' : ` ${problem.mend}.`
  return `${place}${problem.what}.${mend}`
}

/** Makes a problem; kept as a function so that every refusal fills the four fields. */
export const problem = (code: string, where: string, what: string, mend: string): Problem => ({
  code,
  where,
  what,
  mend,
})
