/** What trying a function can show. */
export const triedResults = ['good', 'bad', 'not-there', 'cannot-tell'] as const
export type TriedResult = (typeof triedResults)[number]

/** Results in words. */
export const triedName: Readonly<Record<TriedResult, string>> = {
  good: 'As it should be',
  bad: 'Not as it should be',
  'not-there': 'Not there',
  'cannot-tell': 'Could not tell',
}
