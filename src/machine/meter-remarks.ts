import { resistanceText } from '../base/units.ts'
import type { Blueprint, MeterCheck } from '../blueprint/schema.ts'
import { compileOhms, makeOhmsTable, nodeIndex, ohmsBetween } from '../engines/network/index.ts'
import { isVisible } from './charging.ts'
import { soundOhm } from './circuit.ts'
import type { MachineModel } from './model.ts'

/** Standing lines of a card. */
const electronicControl = 'Electronic control: reads open here even when sound. Measure behind it.'
const motorBehind = 'Electronic control: the motor behind it does not show here, even when sound. Measure behind it.'
const normalWinding = 'A normal resistance never clears a motor.'

/** A winding that makes up this much of a reading is what the reading is about. */
const windingShare = 0.1
/** Above this no winding or heater of a vacuum cleaner reads: it is a bleed resistor or a standby supply. Ohm. */
const steadyFromOhm = 2e3
const bleedShare = 0.9

const kept = new WeakMap<MachineModel, Map<string, readonly string[]>>()

/**
 * What the circuit of a sound machine says of a reading in words: worked out from the elements between the probes, the same
 * for every blueprint. Kept with the model.
 */
export const meterRemarks = (model: MachineModel, check: MeterCheck): readonly string[] => {
  const known = kept.get(model) ?? new Map<string, readonly string[]>()
  kept.set(model, known)
  const lines = known.get(check.id) ?? remarksOf(model, check)
  known.set(check.id, lines)
  return lines
}

const remarksOf = (model: MachineModel, check: MeterCheck): readonly string[] => {
  const row = model.meter.checks.findIndex(({ id }) => id === check.id)
  const capacitanceF = model.meter.capacitanceF[row * model.meter.stateCount]
  const reading = soundReading(model, check, false)
  const driven = isOfControl(model.blueprint, check) ? Infinity : soundReading(model, check, true).resistanceOhm
  if (Number.isFinite(reading.resistanceOhm)) return finiteRemarks(model.blueprint, reading, driven)
  return [
    // Open as it is, and joined with the electronic switches driven: each way from probe to probe leads through one.
    ...(Number.isFinite(driven) ? [electronicControl] : []),
    ...(isVisible(capacitanceF) ? [capacitorText(capacitanceF)] : []),
  ]
}

/** The check is made at the electronic switch itself: what it reads is the answer, and nothing lies behind. */
const isOfControl = ({ circuit }: Blueprint, { red, black }: MeterCheck): boolean =>
  circuit.some(({ kind, from, to }) => kind === 'triac' && [from, to].includes(red) && [from, to].includes(black))

type Reading = { readonly resistanceOhm: number; readonly share: Float64Array }

/** The reading of the sound machine and the share of each element in it. */
const soundReading = ({ blueprint, plate }: MachineModel, check: MeterCheck, drivesTriacs: boolean): Reading => {
  const network = compileOhms(blueprint.circuit)
  const setUp = { controls: check.controls, unplug: check.unplug }
  const ohm = Float64Array.from(blueprint.circuit, (element) => {
    const driven = drivesTriacs && element.kind === 'triac' && !check.unplug.includes(element.id)
    return driven ? element.onOhm : soundOhm(element, setUp, blueprint, plate).resistanceOhm
  })
  const out = makeOhmsTable(1, ohm.length)
  ohmsBetween(network, ohm, Int32Array.of(nodeIndex(network, check.red), nodeIndex(network, check.black)), out)
  return { resistanceOhm: out.resistanceOhm[0], share: out.share }
}

const finiteRemarks = (
  blueprint: Blueprint,
  { resistanceOhm, share }: Reading,
  drivenOhm: number,
): readonly string[] => {
  const shareOf = (kind: string): number =>
    blueprint.circuit.reduce((sum, element, k) => sum + (element.kind === kind ? share[k] : 0), 0) / resistanceOhm
  return [
    ...bleedRemark(blueprint, resistanceOhm, share),
    ...(resistanceOhm >= steadyFromOhm && drivenOhm < resistanceOhm / 2 ? [motorBehind] : []),
    ...(resistanceOhm > 0 && shareOf('motor') >= windingShare ? [normalWinding] : []),
  ]
}

const bleedRemark = (blueprint: Blueprint, resistanceOhm: number, share: Float64Array): readonly string[] => {
  const at = blueprint.circuit.findIndex(
    (element, k) => element.kind === 'resistor' && share[k] >= bleedShare * resistanceOhm,
  )
  if (resistanceOhm < steadyFromOhm || at < 0) return []
  const { part } = blueprint.circuit[at]
  const name = blueprint.parts.find(({ id }) => id === part)?.name ?? part
  return [
    `About ${resistanceText(resistanceOhm)} is a bleed resistor or a standby supply (${name}), seen because nothing else joins the probes. It shows that the way to it is whole; it says nothing of a motor.`,
  ]
}

const capacitorText = (capacitanceF: number): string =>
  `A capacitor of about ${Number((capacitanceF * 1e6).toPrecision(2))} µF lies between the probes: the figure climbs, then goes to open. Seeing it climb shows that the way to it is whole; a quick meter may show open at once.`
