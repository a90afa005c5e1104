import { percentText } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'

/** Above this the cause counts as found; above the other it is worth naming. */
const foundAt = 0.85
const namedAt = 0.3

/** One line that says what the newest readings come to. */
export const Verdict = () => {
  const { air, document } = useAirSheet()
  const set = air.sets.at(-1)
  const lead = set?.explanations[0]
  if (set === undefined || lead === undefined) return <NothingRead />
  const isOld = repairedSince(
    document.lines,
    set.readings.map(({ note }) => note),
  )
  return (
    <>
      {set.contradictions.length > 0 ? (
        <p className="verdict air-verdict">
          <strong>The readings contradict each other.</strong> One of them is a slip, or more than one thing is wrong.
        </p>
      ) : (
        <p className="verdict air-verdict">
          {certaintyOf(lead.probability)}: <strong>{lead.name}</strong>,{' '}
          <span className="figure">{percentText(lead.probability)}</span>
        </p>
      )}
      {isOld ? (
        <p className="air-old">
          It was repaired since: this is how it breathed before. Read it again at the same holes.
        </p>
      ) : null}
    </>
  )
}

const certaintyOf = (probability: number): string => {
  if (probability >= foundAt) return 'Found'
  return probability >= namedAt ? 'Most likely' : 'Not told apart yet; in front'
}

const NothingRead = () => (
  <p className="air-nothing">
    A gauge and a plate with a hole in it show whether the machine leaks, is blocked, or has a tired motor, and where to
    look first. Three readings answer already; each one more narrows it down.
  </p>
)

type Lines = ReturnType<typeof useAirSheet>['document']['lines']

const repairedSince = (lines: Lines, readings: readonly string[]): boolean => {
  const newest = Math.max(...lines.filter(({ id }) => readings.includes(id)).map(({ seq }) => seq))
  return lines.some(({ kind, struck, seq }) => kind === 'repaired' && !struck && seq > newest)
}
