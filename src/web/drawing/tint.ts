/** A part this likely to be faulty is shaded fully, even when no other is suspected more. */
const fullAt = 0.25
/** Shading weaker than this would only be dirt on the drawing. */
const leastShown = 0.08

/**
 * How strongly to shade a part, from 0 to 1: its probability against that of the most suspected part. So the leader stands
 * out also when twenty parts are suspected a little.
 */
export const tintStrength = (tints: Readonly<Record<string, number>>, part: string): number => {
  const most = Math.max(fullAt, ...Object.values(tints))
  const strength = Math.min(1, (tints[part] ?? 0) / most)
  return strength < leastShown ? 0 : strength
}
