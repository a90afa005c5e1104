const minorPerMajor = 100

/** An amount in pounds, euros and the like, for an axis. */
export const major = (minor: number): number => minor / minorPerMajor
