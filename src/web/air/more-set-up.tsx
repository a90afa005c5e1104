import type { Problem } from '../../base/problem.ts'
import { holeMakes } from '../../facts/orifice.ts'
import { Chips } from '../parts/chips.tsx'
import { Field } from '../parts/field.tsx'
import { OneOf } from '../parts/one-of.tsx'
import { Select } from '../parts/select.tsx'
import { capital } from '../words.ts'
import { useAirSheet } from './air-sheet.ts'
import type { HoleMake, Kept } from './draft.ts'
import type { Measure } from './place.ts'
import { problemsOf, type ReadingField } from './problem-place.ts'
import type { Draft } from './use-draft.ts'

type MoreProps = { readonly draft: Draft; readonly problems: readonly Problem[] }

/** What else can be said of a reading. What is written stays for the readings that follow; only the watts are new each time. */
export const MoreSetUp = ({ draft, problems }: MoreProps) => (
  <>
    <WhatIsMeasured draft={draft} />
    <FurtherIn draft={draft} />
    <h3>Meanwhile</h3>
    <Row draft={draft} problems={problems} fields={meanwhile} />
    <h3>The air of the shed</h3>
    <Row draft={draft} problems={problems} fields={room} />
    {draft.place.opening.endsWith('hole') ? <Plate draft={draft} problems={problems} /> : null}
  </>
)

const measures: readonly { readonly id: Measure; readonly name: string }[] = [
  { id: 'suction', name: 'Suction' },
  { id: 'airflow', name: 'Airflow with a vane' },
  { id: 'tone', name: 'Pitch of the motor' },
]

const WhatIsMeasured = ({ draft: { place, setPlace } }: { readonly draft: Draft }) => (
  <OneOf
    label="What is read"
    options={measures}
    chosen={place.measure}
    onChange={(measure) => setPlace({ measure })}
    className="air-ways"
  />
)

/** Where the path is tapped, and what is left out of it. */
const FurtherIn = ({ draft: { place, setPlace } }: { readonly draft: Draft }) => {
  const { air } = useAirSheet()
  const way = air.ways.find(({ id }) => id === place.way)
  return (
    <>
      {way === undefined || way.taps.length === 0 ? null : (
        <Select label="Tapped" value={place.tapBefore} onChange={(tapBefore) => setPlace({ tapBefore })}>
          <option value="">at the rig</option>
          {way.taps.map(({ part, name }) => (
            <option key={part} value={part}>
              before: {name}
            </option>
          ))}
        </Select>
      )}
      {way === undefined || way.outs.length === 0 ? null : (
        <Chips
          label="Left out"
          options={way.outs.map(({ part, name }) => ({ id: part, name }))}
          chosen={place.out}
          onChange={(out) => setPlace({ out })}
        />
      )}
    </>
  )
}

type OneField = {
  readonly at: ReadingField
  readonly name: Exclude<keyof Kept, 'gauge' | 'make' | 'sound'>
  readonly label: string
  readonly unit: string
}

const meanwhile: readonly OneField[] = [
  { at: 'mainsV', name: 'mains', label: 'Mains voltage', unit: 'V' },
  { at: 'inputW', name: 'watts', label: 'Power meter', unit: 'W' },
]
const room: readonly OneField[] = [
  { at: 'room.barometerPa', name: 'barometer', label: 'Barometer', unit: 'mbar' },
  { at: 'room.temperatureC', name: 'temperature', label: 'Temperature', unit: '°C' },
  { at: 'room.relativeHumidity', name: 'humidity', label: 'Humidity', unit: '%' },
]
const plate: readonly OneField[] = [
  { at: 'opening.thicknessM', name: 'thicknessMm', label: 'Plate is thick', unit: 'mm' },
  { at: 'opening.edgeRadiusM', name: 'edgeMm', label: 'Edge rounded by', unit: 'mm' },
]

const Row = ({ draft: { kept, setKept }, problems, fields }: MoreProps & { readonly fields: readonly OneField[] }) => (
  <div className="field-row">
    {fields.map(({ at, name, label, unit }) => (
      <Field
        key={name}
        label={label}
        value={kept[name]}
        onChange={(text) => setKept({ [name]: text })}
        unit={unit}
        inputMode="decimal"
        problems={problemsOf(problems, at)}
      />
    ))}
  </div>
)

const Plate = ({ draft, problems }: MoreProps) => (
  <>
    <h3>The hole</h3>
    <Row draft={draft} problems={problems} fields={plate} />
    <Select
      label="How it was made"
      value={draft.kept.make}
      onChange={(make) => draft.setKept({ make: make as HoleMake })}
    >
      {Object.entries(holeMakes).map(([id, { name }]) => (
        <option key={id} value={id}>
          {capital(name)}
        </option>
      ))}
    </Select>
  </>
)

/** What holds for the next reading from an earlier one, in a few words; empty when nothing does. */
export const keptText = ({ mains, barometer, temperature }: Kept): string =>
  [
    mains.trim() === '' ? '' : `mains ${mains.trim()} V`,
    barometer.trim() === '' ? '' : `${barometer.trim()} mbar`,
    temperature.trim() === '' ? '' : `${temperature.trim()} °C`,
  ]
    .filter((text) => text !== '')
    .join(', ')
