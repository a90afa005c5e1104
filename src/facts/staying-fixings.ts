/** Words of fixings that stay in the cover or the casing when they are let go: they lie in no pot, and none of them can be left over. Common practice. */
const stayingWords = /\b(?:quarter-turns?|turn catch(?:es)?|catch(?:es)?|clips?|latch(?:es)?)\b/i

/** Clips and circlips that come away by themselves. */
const looseWords = /\b(?:circlips?|spring clips?|loose)\b/i

/**
 * Whether fixings of this kind stay where they are as they are let go. A kind that names a catch or a screw (“quarter-turn catch or
 * PH2”) counts as the catch; who finds the screw writes the screw.
 */
export const staysInPlace = (kind: string): boolean => stayingWords.test(kind) && !looseWords.test(kind)
