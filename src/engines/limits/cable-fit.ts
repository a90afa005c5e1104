import { cordTypes, type CordFamily } from '../../facts/cords.ts'
import { figures } from './amount-text.ts'
import { sizeNamed, sizeText, type ConductorSize } from './sizes.ts'

export type CableCondition = 'sound' | 'cut-or-flattened' | 'hard-or-sticky' | 'joined' | 'not-looked-at'

/** A cable on the list. What is not known is null. */
export type ListedCable = {
  readonly id: string
  readonly type: string | null
  readonly size: string | null
  readonly cores: number | null
  readonly lengthM: number | null
  readonly condition: CableCondition
  readonly hasOldColours: boolean
}

/** What a lead must be for one machine. */
export type LeadNeed = {
  readonly size: ConductorSize
  readonly family: CordFamily
  readonly cores: number
  readonly lengthM: number
  /** Null where the mass is not known: then only cords for any mass will do. */
  readonly massKg: number | null
}

/** Whether a cable would do. Reasons say why not; unknown says what to find out first; care says how to use it. */
export type CableFit = {
  readonly id: string
  readonly kind: 'would-do' | 'would-not-do' | 'not-known'
  readonly reasons: readonly string[]
  readonly unknown: readonly string[]
  readonly care: readonly string[]
}

type Finding = { readonly reason?: string; readonly unknown?: string; readonly care?: string }

/** Looks at one cable for one machine: size, type, cores, length, condition, colours. */
export const cableFit = (cable: ListedCable, need: LeadNeed): CableFit => {
  const findings = [
    sizeFinding(cable, need),
    typeFinding(cable, need),
    coresFinding(cable, need),
    lengthFinding(cable, need),
    conditionFinding(cable.condition),
    cable.hasOldColours ? { reason: 'Its cores have colours that may no longer be sold' } : {},
  ]
  const of = (key: keyof Finding): readonly string[] => findings.flatMap((finding: Finding) => finding[key] ?? [])
  const [reasons, unknown] = [of('reason'), of('unknown')]
  const kind = reasons.length > 0 ? 'would-not-do' : unknown.length > 0 ? 'not-known' : 'would-do'
  return { id: cable.id, kind, reasons, unknown, care: of('care') }
}

const sizeFinding = ({ size: name }: ListedCable, need: LeadNeed): Finding => {
  if (name === null) return { unknown: 'Its size: measure its resistance and its length' }
  const size = sizeNamed(name)
  if (size === undefined) return { unknown: `Its size: “${name}” is none of the table` }
  if (size.areaMm2 >= need.size.areaMm2) return {}
  return { reason: `${sizeText(size)} is too thin: ${sizeText(need.size)} is the least` }
}

const typeFinding = ({ type: name }: ListedCable, need: LeadNeed): Finding => {
  if (name === null) return { unknown: 'Its type: read what is printed or moulded on the sheath' }
  const type = cordTypes.find(({ id }) => id.toLowerCase() === name.trim().toLowerCase())
  if (type === undefined) return { unknown: `Its type: “${name}” is not known here` }
  if (type.family !== need.family) return { reason: `${type.id} is a cord of another region` }
  if (type.tooLight) return { reason: `${type.id} (${type.sheath}) is too light for a vacuum cleaner` }
  if (type.upToKg === null) return {}
  if (need.massKg === null) {
    return { unknown: `The machine’s mass: ${type.id} is for machines up to ${type.upToKg} kg` }
  }
  return need.massKg > type.upToKg
    ? { reason: `${type.id} is for machines up to ${type.upToKg} kg, and this one has ${figures(need.massKg)} kg` }
    : {}
}

const coresFinding = ({ cores }: ListedCable, need: LeadNeed): Finding => {
  if (cores === null) return { unknown: 'Its number of cores' }
  if (cores < need.cores) {
    return { reason: `${cores} cores, and ${need.cores} are needed: without the third there is no protective earth` }
  }
  return cores > need.cores
    ? { care: 'One core too many: leave it in no terminal, cut back and insulated at both ends, never as an earth' }
    : {}
}

const lengthFinding = ({ lengthM }: ListedCable, need: LeadNeed): Finding => {
  if (lengthM === null) return { unknown: 'Its length' }
  if (lengthM < need.lengthM) {
    return { reason: `${figures(lengthM)} m, and ${figures(need.lengthM)} m are wanted; a lead is not joined` }
  }
  return lengthM > need.lengthM ? { care: `Cut it to ${figures(need.lengthM)} m` } : {}
}

const conditionFinding = (condition: CableCondition): Finding => {
  switch (condition) {
    case 'sound':
      return {}
    case 'cut-or-flattened':
      return { reason: 'Its sheath is cut or flattened; what is left of it may be listed as a shorter one' }
    case 'hard-or-sticky':
      return { reason: 'Its sheath has gone hard or sticky' }
    case 'joined':
      return { reason: 'It has a joint or tape' }
    case 'not-looked-at':
      return { unknown: 'Its condition: run it through your fingers from end to end' }
  }
}
