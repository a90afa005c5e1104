import type { Evidence } from './evidence.ts'

/** How a machine can be offered by what its notes show. */
export type Standing = 'working' | 'spares' | 'not-shown'

/** Working: a run since the last repair shows it, and nothing found wrong is left unmended. For spares: it left so. Else it is not shown to work. */
export const standingOf = ({ state, run, openFaults, wrong, proof }: Evidence): Standing => {
  if (state.left !== null && state.left.exit !== 'sell-working') return 'spares'
  const isSound = run.kind === 'good' && openFaults.length === 0 && proof.verdict.kind !== 'not-fit'
  return isSound && wrong.every(({ isMended }) => isMended) ? 'working' : 'not-shown'
}
