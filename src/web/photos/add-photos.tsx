import { useState } from 'react'
import type { BenchId, MachineDocument } from '../../bench/contract.ts'
import type { PhotoAbout, PhotoTime } from '../../bench/photos/photo-note.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import { OneOf } from '../parts/one-of.tsx'
import { Problems } from '../parts/problems.tsx'
import { Select } from '../parts/select.tsx'
import { useSettings } from '../queries.ts'
import { PhotoButton } from './photo-button.tsx'
import { timeNames } from './photo-times.ts'
import { useAdding } from './use-adding.ts'

const times = (['before', 'work', 'after'] as const).map((id) => ({ id, name: timeNames[id] }))

type AddPhotosProps = {
  readonly bench: BenchId
  readonly document: MachineDocument
  readonly blueprint: Blueprint
  /** What was pressed; null where nothing was, and where the work stands says it. */
  readonly pressed: PhotoTime | null
  readonly onPress: (when: PhotoTime) => void
}

/** Photographs from the camera or the pictures of the device: when, of what, and the button. */
export const AddPhotos = ({ bench, document, blueprint, pressed, onPress }: AddPhotosProps) => {
  const { add, busy, problems } = useAdding(bench, document.state.id)
  const { data: settings } = useSettings()
  const when = pressed ?? (document.state.minutes === 0 ? 'before' : 'work')
  const [of, setOf] = useState('')
  return (
    <section className="panel" aria-label="Add photographs">
      <OneOf label="When" options={times} chosen={when} onChange={onPress} />
      <Select label="Of what: the machine, a part, a fault or a note" value={of} onChange={setOf}>
        <option value="">The machine as a whole</option>
        <optgroup label="A part">
          {headFirst(blueprint.parts).map(({ id, name }) => (
            <option key={id} value={`part ${id}`}>
              {name}
            </option>
          ))}
        </optgroup>
        <optgroup label="A fault">
          {blueprint.faults.map(({ id, name }) => (
            <option key={id} value={`fault ${id}`}>
              {name}
            </option>
          ))}
        </optgroup>
        <optgroup label="A step, or what else a note tells of">
          {document.lines
            .filter(({ kind, struck }) => !struck && kind !== 'photo' && kind !== 'struck')
            .toReversed()
            .map(({ id, text }) => (
              <option key={id} value={`note ${id}`}>
                {text.length > 70 ? `${text.slice(0, 70)} …` : text}
              </option>
            ))}
        </optgroup>
      </Select>
      <PhotoButton
        several
        className="key main"
        isDisabled={busy}
        onFiles={(files) => void add(files, { about: aboutOf(of), when })}
      >
        {busy ? 'Sending …' : 'Take or choose photographs'}
      </PhotoButton>
      <p className="quiet">
        {settings?.keepOriginals === true
          ? 'Where and with what they were taken is left out of what is shown. By your settings the files are kept as they are too, with the place and the device in them; that takes room.'
          : 'Where and with what they were taken is left out of what is kept.'}
      </p>
      <Problems problems={problems} />
    </section>
  )
}

/** What a buyer looks at first, and the most often photographed: the head before the other parts. */
const headParts: readonly string[] = ['floor-head', 'sole-plate']
const headFirst = (parts: Blueprint['parts']): Blueprint['parts'] =>
  parts.toSorted((a, b) => Number(headParts.includes(b.id)) - Number(headParts.includes(a.id)))

const aboutOf = (value: string): PhotoAbout => {
  const [kind, id] = [value.slice(0, value.indexOf(' ')), value.slice(value.indexOf(' ') + 1)]
  if (kind === 'part') return { kind, part: id }
  if (kind === 'fault') return { kind, fault: id }
  if (kind === 'note') return { kind, note: id }
  return { kind: 'machine' }
}
