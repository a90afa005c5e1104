import { problem, type Problem } from '../../base/problem.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { quantityFromText } from '../../base/units.ts'
import type { ListedCable } from '../../engines/limits/index.ts'
import { readStored, writeStored } from '../stored.ts'

/** A cable as it is being written. Empty: not known. */
export type CableDraft = {
  readonly size: string
  readonly type: string
  readonly cores: string
  readonly length: string
  readonly condition: ListedCable['condition']
  readonly hasOldColours: boolean
}

export const emptyCable: CableDraft = {
  size: '',
  type: '',
  cores: '',
  length: '',
  condition: 'not-looked-at',
  hasOldColours: false,
}

export const conditionNames: Readonly<Record<ListedCable['condition'], string>> = {
  'not-looked-at': 'not looked at yet',
  sound: 'sound from end to end',
  'cut-or-flattened': 'cut or flattened somewhere',
  'hard-or-sticky': 'hard or sticky',
  joined: 'has a joint or tape',
}

/** The cable to try. Refused where its length is none. */
export const cableOf = (
  { size, type, cores, length, condition, hasOldColours }: CableDraft,
  id: string,
): Result<ListedCable> => {
  const lengthM = length.trim() === '' ? ok(null) : quantityFromText(length, 'lengthM', 'cable.length')
  if (lengthM.kind === 'refused') return lengthM
  if (lengthM.value === 0) return refused(noLength)
  return ok({
    id,
    type: type === '' ? null : type,
    size: size === '' ? null : size,
    cores: cores === '' ? null : Number(cores),
    lengthM: lengthM.value,
    condition,
    hasOldColours,
  })
}

const noLength: Problem = problem(
  'no-length',
  'cable.length',
  'A cable of 0 m is none',
  'Measure it, or leave it empty where it is not known',
)

/** A cable in one line: `0.75 mm², H05VV-F, 2 cores, 8 m, sound from end to end`. */
export const cableText = ({ size, type, cores, lengthM, condition, hasOldColours }: ListedCable): string =>
  [
    size?.replace('mm2', 'mm²') ?? 'size not known',
    type ?? 'type not known',
    cores === null ? 'cores not counted' : `${cores} cores`,
    lengthM === null ? 'length not known' : `${lengthM} m`,
    conditionNames[condition],
    ...(hasOldColours ? ['old colours'] : []),
  ].join(', ')

const key = 'thrum.cables'

/** Cables listed on this device. */
export const storedCables = (): readonly ListedCable[] => {
  try {
    const parsed: unknown = JSON.parse(readStored('local', key) ?? '[]')
    return Array.isArray(parsed) ? (parsed as readonly ListedCable[]) : []
  } catch {
    return []
  }
}

export const storeCables = (cables: readonly ListedCable[]): void =>
  writeStored('local', key, cables.length === 0 ? null : JSON.stringify(cables))
