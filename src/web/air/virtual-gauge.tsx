import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inAirUnit } from '../../base/air-units.ts'
import { problem, type Problem } from '../../base/problem.ts'
import type { GaugeReading } from '../../machine/air/gauge-reading.ts'
import { engine } from '../engine-client.ts'
import { Problems } from '../parts/problems.tsx'
import { useAirSheet } from './air-sheet.ts'
import { setUpOf } from './draft.ts'
import type { GaugeUnits } from './gauge-units.ts'
import type { Draft } from './use-draft.ts'

type VirtualGaugeProps = { readonly draft: Draft; readonly onRead: (text: string) => void }

/** On a virtual machine: has the virtual gauge read, and fills in what it shows. Nothing on a real one. */
export const VirtualGauge = ({ draft, onRead }: VirtualGaugeProps) => {
  const { document, blueprint, units, stale } = useAirSheet()
  const [failures, setFailures] = useState<readonly Problem[]>([])
  const [reading, setReading] = useState(false)
  const seed = document.state.practiceSeed
  if (seed === null || draft.place.measure === 'tone') return null
  const read = async (): Promise<void> => {
    const setUp = setUpOf(draft.place, draft.kept)
    if (setUp.kind === 'refused') return setFailures(setUp.problems)
    setReading(true)
    setFailures([])
    try {
      const job = { state: document.state, notes: document.notes, blueprint }
      const answer = await engine().ask({ kind: 'gauge', job, seed, setUp: setUp.value })
      if (answer.reading === null) setFailures([doesNotTurn])
      else onRead(shownText(answer.reading, units))
    } catch (fault) {
      const what = fault instanceof Error ? fault.message : String(fault)
      setFailures([problem('no-reading', '', what, 'Choose another reading')])
    } finally {
      setReading(false)
    }
  }
  return (
    <>
      <Button className="key enter take" isDisabled={reading || stale} onPress={() => void read()}>
        Read the virtual gauge
      </Button>
      <Problems problems={failures} />
    </>
  )
}

const doesNotTurn = problem(
  'does-not-turn',
  '',
  'The motor does not turn, so nothing is drawn',
  'Find out first why it does not run',
)

/** What the gauge shows in the chosen unit, to four figures, as a display would. */
const shownText = ({ read }: GaugeReading, units: GaugeUnits): string => {
  switch (read.measure) {
    case 'suction':
      return fourFigures(inAirUnit(read.suctionPa, 'pressurePa', units.suction))
    case 'airflow':
      return fourFigures(inAirUnit(read.airflowM3PerS, 'airflowM3PerS', units.airflow))
    case 'tone':
      return String(Math.round(read.toneHz))
  }
}

const fourFigures = (value: number): string => String(Number(value.toPrecision(4)))
