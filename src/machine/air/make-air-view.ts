import { gaugeMinutes } from '../../facts/air-rig.ts'
import { ok, refused, type Result } from '../../base/result.ts'
import { explainAir, type AirExplanation, type AirFit, type Explained } from '../../engines/airflow/index.ts'
import type { Blueprint } from '../../blueprint/schema.ts'
import type { Job, JobEvent } from '../job.ts'
import { machineModel, type MachineModel } from '../model.ts'
import { suspectBelief } from '../suspects.ts'
import { gaugeCandidates } from './air-candidates.ts'
import { airCurveOf, curvePoints } from './air-curve.ts'
import { suspectsInAir, weightsOf } from './air-evidence.ts'
import { airExplanations, airParameters, soundId } from './air-explanations.ts'
import { airFitOf, isWayOf, tapsOf, type AirWeights, type GaugeCandidate, type NotedReading } from './air-fit.ts'
import { airMachineOf, type AirMachine } from './air-machine.ts'
import type { AirFigures } from './air-network.ts'
import { airPathOf } from './air-path-view.ts'
import { airRigOf } from './air-rig.ts'
import { airSetsOf, type AirSet } from './air-sets.ts'
import { contradictionText, figureText, howText, openText, tellsText } from './air-sentences.ts'
import { airflowText, capital, openingText, readText, setUpText, suctionText } from './air-text.ts'
import type {
  AirCurveView,
  AirExplanationView,
  AirSetView,
  AirView,
  AirWayView,
  GaugeReadingView,
  NextGaugeView,
} from './air-view.ts'
import { beforeAfterOf } from './before-after-view.ts'
import type { GaugeOpening, GaugeReading } from './gauge-reading.ts'

const leastShown = 0.01
const shownNext = 4
/** A reading that tells less than this is not worth the minutes. */
const leastBits = 0.05
const usualOpening: GaugeOpening = { kind: 'open' }

/**
 * What is known of a machine's air. Refused where its blueprint says nothing of it.
 * @param holesM holes of the bench's own rig; left out, those of the usual rig for the kind
 */
export const airView = (job: Job, holesM?: readonly number[]): Result<AirView> => {
  const found = airMachineOf(job.blueprint, job.plate)
  if (found.kind === 'refused') return refused(...found.problems)
  const machine = found.value
  const model = machineModel(job.blueprint, job.plate, job.history)
  const sets = airSetsOf(job.events)
    .map((set) => ({ ...set, readings: set.readings.filter(({ reading }) => isWayOf(machine, reading)) }))
    .filter(({ readings }) => readings.length > 0)
  const names = sets.map(setName)
  const mainWay = machine.paths.ways[0].way.id
  const nominalV = job.plate.voltageV
  const now = setNow(job.events, sets)
  const candidates = gaugeCandidates(
    machine,
    holesM ?? rigHoles(job),
    now.readings.map(({ reading }) => reading),
  )
  const explain = (set: AirSet): Weighed => {
    const weights = weightsBefore(machine, model, job, set)
    const fit = airFitOf(machine, nominalV, set.readings, weights, set.repairs === now.repairs ? candidates : [])
    return { set, fit, answer: explainAir(fit) }
  }
  const weighed = sets.map(explain)
  const latest = weighed.find(({ set }) => set.repairs === now.repairs) ?? explain(now)
  return ok({
    kind: { name: machine.kind.class.name, decided: [...machine.kind.decided, machine.fanRemark] },
    ways: machine.paths.ways.map((path) => wayView(machine, path)),
    sets: weighed.map((one, at) => setView(machine, nominalV, one, names[at] ?? '')),
    next: [...readAgain(latest), ...sameHoles(machine, sets, now), ...nextView(machine, latest.answer, candidates)],
    sound: soundCurve(machine, job.plate, mainWay),
    beforeAfter: beforeAfterOf(sets, names, sets.length === 0 ? mainWay : usedWay(sets[0].readings), nominalV),
  })
}

const keptCurves = new WeakMap<Blueprint, Map<string, AirCurveView>>()

/** The curve of a sound machine of the kind: it follows from blueprint and plate alone, so it is worked out once. */
const soundCurve = (machine: AirMachine, { voltageV, powerW }: Job['plate'], way: string): AirCurveView => {
  const kept = keptCurves.get(machine.blueprint) ?? new Map<string, AirCurveView>()
  keptCurves.set(machine.blueprint, kept)
  const key = `${voltageV} ${powerW} ${way}`
  const curve =
    kept.get(key) ?? airCurveOf(machine, airFitOf(machine, voltageV, [], { [soundId]: 1 }), soundId, way, [])
  kept.set(key, curve)
  return curve
}

/** A set with what the airflow engine was given and what it said. */
type Weighed = { readonly set: AirSet; readonly fit: AirFit; readonly answer: AirExplanation }

/** The readings since the last repair; none yet where nothing was read since. */
const setNow = (events: readonly JobEvent[], sets: readonly AirSet[]): AirSet => {
  const repairs = events.filter(({ kind }) => kind === 'repaired').length
  return sets.find((set) => set.repairs === repairs) ?? { readings: [], repairs }
}

const rigHoles = (job: Job): readonly number[] => {
  const rig = airRigOf(job.blueprint)
  return rig.kind === 'ok' ? rig.value.holes.map(({ diameterMm }) => diameterMm / 1000) : []
}

const setName = ({ repairs }: AirSet): string =>
  repairs === 0 ? 'as found' : `after ${repairs} repair${repairs === 1 ? '' : 's'}`

/** The way in that most readings of a set were made at. */
const usedWay = (readings: readonly NotedReading[]): string => {
  const count = (way: string): number => readings.filter(({ reading }) => reading.way === way).length
  return readings.map(({ reading }) => reading.way).reduce((best, way) => (count(way) > count(best) ? way : best))
}

const wayView = (machine: AirMachine, path: AirMachine['paths']['ways'][number]): AirWayView => {
  const named = (part: string) => ({
    part,
    name: machine.paths.sections.find((one) => one.part === part)?.name ?? part,
  })
  const { id, name, how } = path.way
  return {
    id,
    name,
    how,
    taps: tapsOf(path, machine.paths).map(({ part }) => named(part)),
    outs: machine.comesOut.filter((part) => path.parts.includes(part)).map(named),
  }
}

/** How likely the explanations are from everything but these gauge readings, as it stood while they were made. */
const weightsBefore = (machine: AirMachine, model: MachineModel, job: Job, set: AirSet): AirWeights => {
  const mine = new Set(set.readings.map(({ note }) => note))
  const events = job.events.filter((event) => !(event.kind === 'gauge' && mine.has(event.note)))
  const { probability } = suspectBelief(model, { ...job, events: upTo(events, set.repairs) })
  return weightsOf(suspectsInAir(model, machine), probability)
}

/** The events before the repair that ended the set. */
const upTo = (events: readonly JobEvent[], repairs: number): readonly JobEvent[] => {
  let seen = 0
  return events.filter((event) => {
    if (event.kind === 'repaired') seen += 1
    return seen <= repairs
  })
}

const setView = (machine: AirMachine, nominalV: number, { set, fit, answer }: Weighed, name: string): AirSetView => {
  const { readings } = set
  const [leading] = answer.explanations
  const explanations = answer.explanations
    .filter(({ probability }) => probability >= leastShown)
    .map((one) => explanationView(machine, one))
  const way = usedWay(readings)
  return {
    name,
    readings: readings.map((one) =>
      readingView(machine, one, leading, answer.unexplained.find(({ reading }) => reading === one.note)?.sigma),
    ),
    explanations,
    open: openText(answer),
    contradictions: answer.unexplained.map((one) =>
      contradictionText(one, nameOfReading(machine, readings, one.reading)),
    ),
    curve: airCurveOf(machine, fit, leading.id, way, curvePoints(readings, way, nominalV)),
    path: airPathOf(machine, way, widestOpening(readings, way), figuresOf(machine, leading), explanations),
  }
}

const nameOfReading = (machine: AirMachine, readings: readonly NotedReading[], id: string): string => {
  const found = readings.find(({ note }) => note === id)
  return found === undefined ? id : setUpText(found.reading, machine.blueprint)
}

const explanationView = (machine: AirMachine, one: Explained): AirExplanationView => {
  const known = airExplanations(machine, false).find(({ id }) => id === one.id)
  return {
    id: one.id,
    kind: one.kind,
    name: one.name,
    probability: one.probability,
    figure: known === undefined ? null : figureText(machine, known, one),
    parts: known?.parts ?? [],
  }
}

const readingView = (
  machine: AirMachine,
  { note, reading }: NotedReading,
  leading: Explained,
  odd: number | undefined,
): GaugeReadingView => {
  const at = leading.readings.find(({ id }) => id === note)
  const expectedValue = at?.predicted ?? 0
  return {
    note,
    measure: reading.read.measure,
    value: valueOf(reading.read),
    expectedValue,
    setUp: setUpText(reading, machine.blueprint),
    read: readText(reading),
    expected: valueText(reading.read.measure, expectedValue),
    // A reading that fits no machine with the others is as far off as it is from them.
    sigma: odd ?? at?.sigma ?? 0,
  }
}

const valueOf = (read: GaugeReading['read']): number => {
  switch (read.measure) {
    case 'suction':
      return read.suctionPa
    case 'airflow':
      return read.airflowM3PerS
    case 'tone':
      return read.toneHz / read.soundHz
  }
}

const valueText = (measure: GaugeReading['read']['measure'], value: number): string => {
  switch (measure) {
    case 'suction':
      return suctionText(value)
    case 'airflow':
      return airflowText(value)
    case 'tone':
      return `${value.toFixed(2)} of a sound one`
  }
}

const openingWidth = (opening: GaugeOpening): number => {
  if (opening.kind === 'hole') return opening.diameterM
  return opening.kind === 'open' ? Infinity : 0
}

/** The path is drawn at the widest opening read: most flows there, so most is lost along it. */
const widestOpening = (readings: readonly NotedReading[], way: string): GaugeOpening => {
  const all = readings.filter(({ reading }) => reading.way === way).map(({ reading }) => reading.opening)
  const widest = all.toSorted((a, b) => openingWidth(b) - openingWidth(a))[0]
  return widest === undefined || widest.kind === 'sealed' ? usualOpening : widest
}

const figuresOf = (
  machine: AirMachine,
  leading: Explained,
): { readonly now: AirFigures; readonly sound: AirFigures } => ({
  now: Object.fromEntries(leading.figures.map(({ id, value }) => [id, value])),
  sound: Object.fromEntries(airParameters(machine, true).map(({ id, prior }) => [id, prior.median])),
})

const nextView = (
  machine: AirMachine,
  answer: AirExplanation,
  candidates: readonly GaugeCandidate[],
): readonly NextGaugeView[] =>
  answer.next
    .filter(({ inRange, bits }) => inRange && bits >= leastBits)
    .toSorted((a, b) => b.bits / b.minutes - a.bits / a.minutes)
    .filter(firstOfItsKind(candidates))
    .slice(0, shownNext)
    .flatMap((one) => nextOf(machine, answer, candidates, one))

/** A reading that contradicts the others is made again before anything else. */
const readAgain = ({ set, answer }: Weighed): readonly NextGaugeView[] =>
  answer.unexplained.flatMap(({ reading: id, sigma }) => {
    const odd = set.readings.find(({ note }) => note === id)
    if (odd === undefined) return []
    const { read: _read, ...reading } = odd.reading
    return [
      {
        name: `Again: ${openingText(reading.opening)} at the same place`,
        minutes: gaugeMinutes.value,
        bits: null,
        how: [],
        tells: `It is off by ${sigma.toFixed(0)} times its uncertainty from what the others lead to expect: tells a slip from a fault.`,
        expected: [],
        reading,
      },
    ]
  })

/** After a repair the holes that were read before it come first: only the same holes show what it did. */
const sameHoles = (machine: AirMachine, sets: readonly AirSet[], now: AirSet): readonly NextGaugeView[] => {
  const before = sets.filter(({ repairs }) => repairs < now.repairs).at(-1)
  const keyOf = ({ way, opening, tapBefore, out }: Omit<GaugeReading, 'read'>): string =>
    JSON.stringify([way, opening, tapBefore, out])
  const made = now.readings.map(({ reading }) => keyOf(reading))
  return (before?.readings ?? [])
    .map(({ reading: { read: _read, ...setUp } }) => setUp)
    .filter((setUp) => setUp.tapBefore === undefined && setUp.out.length === 0 && !made.includes(keyOf(setUp)))
    .map((reading) => ({
      name: capital(setUpText(reading, machine.blueprint)),
      minutes: gaugeMinutes.value,
      bits: null,
      tells: 'Read before the repair too: set beside each other they show what it did.',
      how: [],
      expected: [],
      reading,
    }))
}

/** Holes of one set-up tell much the same: the best of them stands for all. */
const firstOfItsKind = (candidates: readonly GaugeCandidate[]): ((one: { readonly id: string }) => boolean) => {
  const seen = new Set<string>()
  return ({ id }) => {
    const reading = candidates.find((one) => one.id === id)?.reading
    const kind = JSON.stringify([reading?.way, reading?.tapBefore, reading?.out])
    if (seen.has(kind)) return false
    seen.add(kind)
    return true
  }
}

const nextOf = (
  machine: AirMachine,
  answer: AirExplanation,
  candidates: readonly GaugeCandidate[],
  { id, name, minutes, bits, expected }: AirExplanation['next'][number],
): readonly NextGaugeView[] => {
  const candidate = candidates.find((one) => one.id === id)
  if (candidate === undefined) return []
  const leading = answer.explanations.slice(0, 2).filter(({ probability }) => probability >= leastShown)
  return [
    {
      name,
      minutes,
      bits,
      tells: tellsText(leading, bits),
      how: howText(candidate.reading, machine),
      expected: leading.flatMap((explanation) => {
        const at = expected.find(({ hypothesis }) => hypothesis === explanation.id)
        return at === undefined ? [] : [{ under: explanation.name, text: rangeText(at) }]
      }),
      reading: candidate.reading,
    },
  ]
}

/** Nine in ten readings lie within. */
const ninety = 1.645

const rangeText = ({ value, sigma }: { readonly value: number; readonly sigma: number }): string => {
  const [low, high] = [Math.max(0, value - ninety * sigma), value + ninety * sigma].map(suctionText)
  return low === high ? low : `${low.replace(/ kPa$/, '')} to ${high}`
}
