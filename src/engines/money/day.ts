const msPerDay = 86_400_000

/** Whole days from one day (`2026-03-31`) to another; negative when the other is earlier. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / msPerDay)
