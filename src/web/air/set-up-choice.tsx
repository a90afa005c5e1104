import { gauges } from '../../facts/gauges.ts'
import type { Problem } from '../../base/problem.ts'
import { Field } from '../parts/field.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Select } from '../parts/select.tsx'
import { capital } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'
import { inGaugeUnits } from './gauge-units.ts'
import { holesFromText, widthMm, type Place } from './place.ts'
import type { Draft } from './use-draft.ts'

type Option = { readonly id: string; readonly name: string }

/** Another way in, opening or gauge, by one tap each. */
export const SetUpChoice = ({ draft }: { readonly draft: Draft }) => {
  const { air } = useAirSheet()
  const openings = useOpenings()
  const { place, kept, setPlace, setKept } = draft
  return (
    <div className="air-set-up">
      <OneOf
        label="Rig at"
        options={air.ways.map(({ id, name }) => ({ id, name }))}
        chosen={place.way}
        // Where the path can be tapped, and what comes out, goes with the way in.
        onChange={(way) => setPlace({ way, tapBefore: '', out: [] })}
        className="air-ways"
      />
      <OneOf
        label="It breathes through"
        options={openings}
        chosen={openingId(place)}
        onChange={(id) => setPlace(openingOf(id))}
        className="air-openings"
      />
      {place.measure === 'suction' ? (
        <Select label="Gauge" value={kept.gauge} onChange={(gauge) => setKept({ gauge })}>
          {gauges.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Select>
      ) : null}
      {place.measure === 'suction' ? <GaugeRemark gauge={kept.gauge} /> : null}
    </div>
  )
}

/** Where a gauge ends too soon for such a machine, or reads it too coarsely. */
const GaugeRemark = ({ gauge }: { readonly gauge: string }) => {
  const { rig, units } = useAirSheet()
  const found = rig?.gauge.gauges.find(({ id }) => id === gauge)
  if (found === undefined || found.verdict === 'fits') return null
  return <p className="hint">{capital(inGaugeUnits(found.text, units))}.</p>
}

/** A hole that is none of the chips. */
export const OtherHole = ({ draft, problems }: { readonly draft: Draft; readonly problems: readonly Problem[] }) =>
  draft.place.opening === 'other-hole' ? (
    <Field
      label="The hole is wide"
      value={draft.place.holeMm}
      onChange={(holeMm) => draft.setPlace({ holeMm })}
      unit="mm"
      inputMode="decimal"
      problems={problems}
    />
  ) : null

/** Sealed, the holes of the rig, any that was read at already, another, open. */
const useOpenings = (): readonly Option[] => {
  const { rig, document, air, ownHoles } = useAirSheet()
  const own = holesFromText(ownHoles)
  const ofRig = own.length > 0 ? own : (rig?.holes ?? []).map(({ diameterMm }) => diameterMm / 1000)
  const readAt = document.notes.flatMap(({ id, content }) =>
    content.kind === 'gauge' && content.reading.opening.kind === 'hole' && !document.state.struck.includes(id)
      ? [content.reading.opening.diameterM]
      : [],
  )
  const offered = air.next.flatMap(({ reading: { opening } }) => (opening.kind === 'hole' ? [opening.diameterM] : []))
  const holes = [...new Set([...ofRig, ...readAt, ...offered].map(widthMm))].sort((a, b) => a - b)
  return [
    { id: 'sealed', name: 'Sealed' },
    ...holes.map((mm) => ({ id: String(mm), name: `${mm} mm` })),
    { id: 'other-hole', name: 'Another hole' },
    { id: 'open', name: 'Open' },
  ]
}

const openingId = ({ opening, holeMm }: Place): string => (opening === 'hole' ? holeMm : opening)

const openingOf = (id: string): Pick<Place, 'opening' | 'holeMm'> => {
  if (id === 'sealed' || id === 'open' || id === 'other-hole') return { opening: id, holeMm: '' }
  return { opening: 'hole', holeMm: id }
}
