import { ok, type Result } from '../../base/result.ts'
import { runLimits, type LimitsAnswer } from '../../engines/limits/index.ts'

/** A salvaged cable as it was measured with the plug out, all as written: quantities with or without their unit. */
export type MeasuredCopper = {
  /** What it claims, such as 0.75mm2 or 18AWG. */
  readonly size: string
  readonly length: string
  /** Ohms from end to end. */
  readonly resistance: string
  /** Id of the meter. */
  readonly instrument: string
  /** One conductor from end to end, or two joined at the far end. */
  readonly conductors: 1 | 2
  readonly temperatureC: number
  /** Read through a plug, terminals or a reel. */
  readonly hasContacts: boolean
}

export type CopperAnswer = Extract<LimitsAnswer, { kind: 'cable' }>['answer']

/** Whether a cable's copper is what it claims (IEC 60228). Refused where an amount is none, or size or meter are not known. */
export const cableCopper = (measured: MeasuredCopper): Result<CopperAnswer> => {
  const { size, length, resistance, instrument, conductors, temperatureC, hasContacts } = measured
  const answer = runLimits({
    format: 'thrum-limits-1',
    do: {
      kind: 'cable',
      size,
      lengthM: length,
      conductors,
      temperatureC,
      hasContacts,
      reading: { value: resistance },
      instrument,
    },
  })
  if (answer.kind === 'refused') return answer
  if (answer.value.kind !== 'cable') throw new Error('a question about a cable got another answer')
  return ok(answer.value.answer)
}
