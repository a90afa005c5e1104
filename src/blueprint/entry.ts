import { complaintIds, type Complaint } from '../facts/complaints.ts'
import type { Signs } from './narrow.ts'
import type { Blueprint } from './schema.ts'

/** What can be seen from outside besides the signs, and is drawn. */
export const featureIds = ['hose', 'wheels', 'lamps'] as const
export type Feature = (typeof featureIds)[number]

/** A blueprint on a list: enough to pick it by questions, by its picture and by the rating plate. */
export type BlueprintEntry = {
  readonly id: string
  readonly name: string
  readonly summary: string
  readonly recognise: readonly string[]
  readonly signs: Signs
  readonly plate: Blueprint['plate']
  /** Whether there is a fuse in the plug. */
  readonly plugFuse: boolean
  readonly features: readonly Feature[]
}

/** The entry of a blueprint. Its features follow from the words in the ids of its parts. */
export const blueprintEntry = (blueprint: Blueprint): BlueprintEntry => {
  const { id, name, summary, recognise, signs, plate } = blueprint
  const plugFuse = hasPlugFuse(blueprint)
  return { id, name, summary, recognise, signs, plate, plugFuse, features: featuresOf(blueprint) }
}

/** Words in the ids of parts that show a feature. A hose inside the body is not seen as one. */
const partWords: Readonly<Record<Feature, RegExp>> = {
  hose: /^(?!lower-|inner-|internal-).*\bhose\b/,
  wheels: /\b(wheels?|castors?)\b/,
  lamps: /\b(lamps?|lights?|indicators?)\b/,
}

const featuresOf = ({ parts }: Blueprint): readonly Feature[] =>
  featureIds.filter((feature) => parts.some(({ id }) => partWords[feature].test(id)))

const hasPlugFuse = ({ circuit, supply }: Blueprint): boolean =>
  circuit.some(({ kind, from, to }) => kind === 'fuse' && [from, to].includes(supply.line))

/** The plate as it tells variants apart: `230 V, class II`. */
export const plateText = ({ voltageV, protectionClass }: Blueprint['plate']): string =>
  `${voltageV} V, class ${protectionClass}`

/** What the plug tells of variants with the same plate. */
export const plugText = ({ plugFuse }: BlueprintEntry): string =>
  plugFuse ? 'fuse in the plug' : 'no fuse in the plug'

/** The complaints that some fault of this blueprint brings about, in the usual order. */
export const complaintsOf = ({ faults }: Blueprint): readonly Complaint[] =>
  complaintIds.filter((id) => faults.some(({ complaints }) => (complaints[id] ?? 0) > 0))
