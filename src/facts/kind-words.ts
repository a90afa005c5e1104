/** What a buyer calls the build of a vacuum cleaner, and what goes before it. Trade words. */
export const buildWords = /\b(?:upright|cylinder|canister|tub|stick)\b/i
export const beforeBuildWords = /\b(?:bagged|bagless|commercial|direct[- ]air|electric[- ]head|mains)\b/i
