import { airFaultWeights, faultyAir, severalAir, soundAir, type LogNormal } from '../../facts/air-faults.ts'
import type { AirFit, AirHypothesis, AirParameter } from './fit-schema.ts'

type Priors = Readonly<Record<string, LogNormal>>

/** What a parameter is about, which decides its priors. */
type Subject = 'speed' | 'fan' | 'loss' | 'leak' | 'bleed' | 'mains'
type Described = { readonly parameter: AirParameter; readonly subject: Subject }

const described = (
  subject: Subject,
  id: string,
  name: string,
  target: AirParameter['target'],
  prior: LogNormal,
): Described => ({
  subject,
  parameter: { id, name, unit: subject === 'leak' || subject === 'bleed' ? 'mm2' : 'times', target, prior },
})

/** The usual parameters: speed and pressure of each fan, a multiple for each loss, an area for each leak and bleed, and the mains if unknown. */
const subjects = ({ network, leaks, bleeds, names, readings }: AirFit): readonly Described[] => {
  const called = (id: string): string => names[id] ?? id
  const ofBranches = network.branches.flatMap(({ kind, id }): Described[] => {
    const scale = { kind: 'scale', branch: id } as const
    switch (kind) {
      case 'loss':
        return [described('loss', id, `loss of ${called(id)}`, scale, soundAir.loss)]
      case 'fan':
        return [
          described('speed', `${id}:speed`, `speed of ${called(id)}`, { kind: 'speed', branch: id }, soundAir.speed),
          described('fan', `${id}:pressure`, `pressure of ${called(id)}`, scale, soundAir.fan),
        ]
      case 'hole':
        return []
    }
  })
  const open = (subject: 'leak' | 'bleed') => (place: { id: string; name: string }) =>
    described(subject, place.id, place.name, { kind: 'scale', branch: place.id }, soundAir.leakMm2)
  const unmeasured = readings.some(({ mainsRatio }) => mainsRatio === null)
  const mains = unmeasured ? [described('mains', 'mains', 'mains voltage', { kind: 'mains' }, soundAir.mains)] : []
  return [...ofBranches, ...leaks.map(open('leak')), ...bleeds.map(open('bleed')), ...mains]
}

/** The usual parameters of a fit, with their priors in a sound machine. */
export const usualParameters = (fit: AirFit): readonly AirParameter[] => subjects(fit).map(({ parameter }) => parameter)

/**
 * The usual explanations of weak suction: nothing wrong; a leak at each place; each section blocked; the motor tired; the fan or its
 * seal worn; a bleed valve open; the mains low; several at once. Weights from facts/air-faults.ts, shared among those of one kind.
 */
export const usualHypotheses = (fit: AirFit): readonly AirHypothesis[] => {
  const all = subjects(fit)
  const of = (subject: Subject) => all.filter((one) => one.subject === subject).map(({ parameter }) => parameter)
  const each = (
    kind: AirHypothesis['kind'] & keyof typeof airFaultWeights,
    parameters: readonly AirParameter[],
    prior: LogNormal,
    name: (parameter: AirParameter) => string,
  ): AirHypothesis[] =>
    parameters.map((parameter) => ({
      id: `${kind}:${parameter.id}`,
      kind,
      name: name(parameter),
      weight: airFaultWeights[kind] / parameters.length,
      priors: { [parameter.id]: prior },
    }))
  return [
    { id: 'sound', kind: 'sound', name: 'nothing wrong', weight: airFaultWeights.sound, priors: {} },
    ...each('blockage', of('loss'), faultyAir.loss, ({ id }) => `${fit.names[id] ?? id} blocked or loaded`),
    ...each('leak', of('leak'), faultyAir.leakMm2, ({ name }) => `leak at ${name}`),
    ...each('bleed-open', of('bleed'), faultyAir.bleedMm2, ({ name }) => `${name} stands open`),
    ...each('tired-motor', of('speed'), faultyAir.speed, () => 'motor slow'),
    ...each('worn-fan', of('fan'), faultyAir.fan, () => 'fan or its seal worn'),
    ...each('low-mains', of('mains'), faultyAir.mains, () => 'mains low'),
    {
      id: 'several',
      kind: 'several',
      name: 'more than one fault',
      weight: airFaultWeights.several,
      priors: severalPriors(all),
    },
  ]
}

const severalPriors = (all: readonly Described[]): Priors =>
  Object.fromEntries(all.map(({ subject, parameter }) => [parameter.id, severalPrior(subject)]))

const severalPrior = (subject: Subject): LogNormal => {
  switch (subject) {
    case 'speed':
    case 'fan':
    case 'loss':
      return severalAir[subject]
    case 'leak':
    case 'bleed':
      return severalAir.leakMm2
    case 'mains':
      return soundAir.mains
  }
}
