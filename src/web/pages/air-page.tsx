import { useEffect, useState } from 'react'
import type { BenchId } from '../../bench/contract.ts'
import { AirSheetContext, useAirSheet, type AirSheet } from '../air/air-sheet.ts'
import { BeforeAfter } from '../air/before-after.tsx'
import { Curves } from '../air/curves.tsx'
import { Explanations } from '../air/explanations.tsx'
import { useGaugeUnits } from '../air/gauge-units.ts'
import { NextReading } from '../air/next-reading.tsx'
import { PathDrawing } from '../air/path-drawing.tsx'
import { holesFromText } from '../air/place.ts'
import { Readings } from '../air/readings.tsx'
import { Rig } from '../air/rig.tsx'
import { useAir, useRig } from '../air/use-air.ts'
import { Verdict } from '../air/verdict.tsx'
import { Loading } from '../parts/loading.tsx'
import { say } from '../parts/live.tsx'
import { Problems } from '../parts/problems.tsx'
import { useBlueprint, useMachine } from '../queries.ts'
import { Link, PageTitle } from '../router.tsx'
import { readStored, writeStored } from '../stored.ts'
import { percentText } from '../words.ts'
import '../style/air.css'

/** How well a machine breathes, before and after: leak, blockage or tired motor. */
export const AirPage = ({ bench, id }: { readonly bench: BenchId; readonly id: string }) => {
  const { data: document, error } = useMachine(bench, id)
  const { data: blueprint, error: blueprintError } = useBlueprint(document?.state.blueprint ?? '')
  const { ownHoles, setOwnHoles } = useOwnHoles()
  const { air, barred, stale, error: airError } = useAir(document, blueprint, holesFromText(ownHoles))
  const rig = useRig(blueprint)
  const units = useGaugeUnits()
  if (document === undefined || blueprint === undefined || air === null)
    return (
      <div className="sheet">
        <PageTitle windowTitle="How it breathes">How it breathes</PageTitle>
        <Loading what="its air" error={error ?? blueprintError ?? airError} />
      </div>
    )
  if (air.kind === 'refused')
    return (
      <div className="sheet">
        <Title bench={bench} document={document} />
        <Problems problems={air.problems} />
      </div>
    )
  const sheet = { bench, document, blueprint, air: air.value, barred, rig, stale, units, ownHoles, setOwnHoles }
  return (
    <AirSheetContext value={sheet}>
      <Sheet />
    </AirSheetContext>
  )
}

const Title = ({ bench, document }: Pick<AirSheet, 'bench' | 'document'>) => (
  <>
    <PageTitle windowTitle={`${document.state.name}: how it breathes`}>
      {document.state.name}: how it breathes
    </PageTitle>
    <Link to={{ kind: 'machine', bench, id: document.state.id }} className="on-its-own">
      Back to the machine
    </Link>
  </>
)

const Sheet = () => {
  const { bench, document } = useAirSheet()
  useSaidVerdict()
  return (
    <div className="sheet machine air-sheet">
      <div className="machine-title">
        <Title bench={bench} document={document} />
        <Verdict />
      </div>
      <div className="machine-left">
        <BeforeAfter />
        <Explanations />
        {document.state.left === null ? <NextReading /> : null}
      </div>
      <div className="machine-right">
        <Curves />
        <PathDrawing />
        <Readings />
        <Rig />
      </div>
    </div>
  )
}

const ownHolesKey = 'thrum.rig-holes'

/** Holes of the bench's own rig as written, kept on this device. */
const useOwnHoles = () => {
  const [ownHoles, setText] = useState(() => readStored('local', ownHolesKey) ?? '')
  const setOwnHoles = (text: string): void => {
    writeStored('local', ownHolesKey, text.trim() === '' ? null : text)
    setText(text)
  }
  return { ownHoles, setOwnHoles }
}

/** Says the verdict and the next reading when they change, for those who do not see them change. */
const useSaidVerdict = (): void => {
  const { air, stale } = useAirSheet()
  const lead = air.sets.at(-1)?.explanations[0]
  const verdict = lead === undefined ? '' : `Most likely: ${lead.name}, ${percentText(lead.probability)}. `
  const text = stale ? null : `${verdict}Next reading: ${air.next[0]?.name ?? 'none tells more'}.`
  useEffect(() => {
    if (text !== null) say(text)
  }, [text])
}
