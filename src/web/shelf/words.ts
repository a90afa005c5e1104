import type { PartCondition, PartSpec } from '../../bench/shelf/part-note.ts'
import type { PartKind } from '../../facts/part-kinds.ts'
import { fieldsOf } from './spec-fields.tsx'

export const conditionOptions: readonly { readonly id: PartCondition; readonly name: string }[] = [
  { id: 'tested', name: 'Tested' },
  { id: 'looks-sound', name: 'Looks sound' },
  { id: 'untested', name: 'Not tested' },
  { id: 'worn', name: 'Worn' },
]

export const conditionText = (condition: PartCondition): string =>
  (conditionOptions.find(({ id }) => id === condition)?.name ?? condition).toLowerCase()

/** `1,200 W, 230 V, 105 mm`; empty where nothing is known. */
export const specText = (partKind: PartKind, spec: PartSpec): string =>
  fieldsOf(partKind)
    .flatMap(({ id, name, unit }) => {
      const value = spec[id]
      if (value === undefined) return []
      const said = typeof value === 'number' ? value.toLocaleString('en-GB') : value
      return [unit === '' ? `${name.replace(/,.*$/, '').toLowerCase()} ${said}` : `${said} ${unit}`]
    })
    .join(', ')
