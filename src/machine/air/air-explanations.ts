import { inSentence } from '../../base/in-sentence.ts'
import { faultyAir, severalAir, soundAir, type LogNormal } from '../../facts/air-faults.ts'
import { airPassages, blockedHose } from '../../facts/air-passages.ts'
import { typicalHose, type AirHypothesis, type AirParameter } from '../../engines/airflow/index.ts'
import type { AirMachine } from './air-machine.ts'
import type { PathSection } from './air-paths.ts'

/** One way in which the air of a machine may be wrong, and the faults of its blueprint that would do it. */
export type AirExplanationKind = {
  readonly id: string
  readonly kind: AirHypothesis['kind']
  readonly name: string
  readonly faults: readonly string[]
  /** Parts to tint on the drawing. */
  readonly parts: readonly string[]
  /** The figure that this explanation is about; null where there is none of its own. */
  readonly figure: string | null
  readonly priors: AirHypothesis['priors']
}

export const soundId = 'sound'
export const severalId = 'several'
export const lowMainsId = 'low-mains'
export const speedId = 'motor speed'
export const pressureId = 'fan pressure'
const mainsId = 'mains'

const times = (a: LogNormal, b: LogNormal): LogNormal => ({
  median: a.median * b.median,
  sigma: Math.hypot(a.sigma, b.sigma),
})

/**
 * How far a sound machine of the kind may be from the typical one: its own spread and that between models, since only the kind is
 * known. Fans spread mostly in speed, which moves suction by its square.
 */
const soundFan = ({ fan }: AirMachine): { readonly speed: LogNormal; readonly pressure: LogNormal } => {
  const speedSigma = Math.min(fan.openSigma, fan.sealedSigma / 2)
  const pressureSigma = Math.sqrt(Math.max(0, fan.sealedSigma ** 2 - (2 * speedSigma) ** 2))
  return {
    speed: times(soundAir.speed, { median: 1, sigma: speedSigma }),
    pressure: times(soundAir.fan, { median: 1, sigma: pressureSigma }),
  }
}

const cleanSpread = ({ section }: PathSection): LogNormal => {
  if (section.kind === 'passage') return { median: 1, sigma: airPassages[section.like].spread }
  if (section.kind === 'hose')
    return { median: 1, sigma: typicalHose(section.make, section.diameterM, section.lengthM).sigma }
  return soundAir.loss
}

const lossesOf = ({ paths }: AirMachine): readonly PathSection[] =>
  paths.sections.filter(({ section }) => section.kind !== 'fan')

/** The figures of the machine that readings may move, with what they are on a sound one of the kind. */
export const airParameters = (machine: AirMachine, mainsKnown: boolean): readonly AirParameter[] => {
  const { fanPart, places } = machine
  const fan = soundFan(machine)
  return [
    {
      id: speedId,
      name: 'speed of the motor',
      unit: 'times',
      target: { kind: 'speed', branch: fanPart },
      prior: fan.speed,
    },
    {
      id: pressureId,
      name: 'pressure of the fan',
      unit: 'times',
      target: { kind: 'scale', branch: fanPart },
      prior: fan.pressure,
    },
    ...lossesOf(machine).map((one): AirParameter => ({
      id: one.part,
      name: `loss of the ${inSentence(one.name)}`,
      unit: 'times',
      target: { kind: 'scale', branch: one.part },
      prior: cleanSpread(one),
    })),
    ...places.map(({ id, name }): AirParameter => ({
      id,
      name,
      unit: 'mm2',
      target: { kind: 'scale', branch: id },
      prior: soundAir.leakMm2,
    })),
    ...(mainsKnown
      ? []
      : [
          {
            id: mainsId,
            name: 'mains voltage',
            unit: 'times',
            target: { kind: 'mains' },
            prior: soundAir.mains,
          } as const,
        ]),
  ]
}

/** Everything that may be wrong with the air of a machine, “nothing wrong” first. */
export const airExplanations = (machine: AirMachine, mainsKnown: boolean): readonly AirExplanationKind[] => {
  const { fanPart } = machine
  const fan = soundFan(machine)
  const speed = times(faultyAir.speed, fan.speed)
  const pressure = times(faultyAir.fan, fan.pressure)
  const plain = { faults: [], parts: [], figure: null, priors: {} }
  const ofMotor = faultsThat(machine, 'slows-motor')
  const ofFan = faultsThat(machine, 'weakens-fan')
  return [
    { ...plain, id: soundId, kind: 'sound', name: 'nothing wrong with the air' },
    ...blockages(machine),
    ...leaks(machine),
    ...(ofMotor.length === 0
      ? []
      : [
          {
            id: 'motor slow',
            kind: 'tired-motor',
            name: 'motor slow',
            faults: ofMotor.map(({ id }) => id),
            parts: [...new Set(ofMotor.map(({ part }) => part))],
            figure: speedId,
            priors: { [speedId]: speed },
          } as const,
        ]),
    ...(ofFan.length === 0
      ? []
      : [
          {
            id: 'fan weak',
            kind: 'worn-fan',
            name: 'fan or its seal weak',
            faults: ofFan.map(({ id }) => id),
            parts: [...new Set([fanPart, ...ofFan.map(({ part }) => part)])],
            figure: pressureId,
            priors: { [pressureId]: pressure },
          } as const,
        ]),
    ...(mainsKnown
      ? []
      : [
          {
            ...plain,
            id: lowMainsId,
            kind: 'low-mains',
            name: 'mains low',
            figure: mainsId,
            priors: { [mainsId]: faultyAir.mains },
          } as const,
        ]),
    {
      ...plain,
      id: severalId,
      kind: 'several',
      name: 'more than one thing wrong',
      priors: severalPriors(machine, fan),
    },
  ]
}

const faultsThat = ({ blueprint }: AirMachine, does: string) => blueprint.faults.filter(({ air }) => air?.does === does)

const blockages = (machine: AirMachine): readonly AirExplanationKind[] =>
  lossesOf(machine).flatMap(({ part, name, section }) => {
    const faults = machine.blueprint.faults.filter(({ air }) => air?.does === 'blocks' && air.part === part)
    if (faults.length === 0) return []
    const loaded = section.kind === 'passage' ? airPassages[section.like].loaded : blockedHose
    return [
      {
        id: `blocked ${part}`,
        kind: 'blockage' as const,
        name: `${inSentence(name)} ${section.kind === 'hose' ? 'blocked' : 'loaded or blocked'}`,
        faults: faults.map(({ id }) => id),
        parts: [part],
        figure: part,
        priors: { [part]: loaded },
      },
    ]
  })

const leaks = ({ places }: AirMachine): readonly AirExplanationKind[] =>
  places.map(({ id, does, name, faults }) => ({
    id,
    kind: does === 'leaks' ? 'leak' : 'bleed-open',
    name: does === 'leaks' ? `leak at the ${name}` : name,
    faults: faults.map((fault) => fault.id),
    parts: [...new Set(faults.map(({ part }) => part))],
    figure: id,
    priors: { [id]: does === 'leaks' ? faultyAir.leakMm2 : faultyAir.bleedMm2 },
  }))

const severalPriors = (machine: AirMachine, fan: ReturnType<typeof soundFan>): AirHypothesis['priors'] => ({
  [speedId]: times(severalAir.speed, fan.speed),
  [pressureId]: times(severalAir.fan, fan.pressure),
  ...Object.fromEntries(lossesOf(machine).map(({ part }) => [part, severalAir.loss])),
  ...Object.fromEntries(machine.places.map(({ id }) => [id, severalAir.leakMm2])),
})
