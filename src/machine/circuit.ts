import type { Blueprint, CircuitElement, Fault } from '../blueprint/schema.ts'
import type { NetworkElement } from '../engines/network/index.ts'
import { conductorOhm } from '../facts/conductors.ts'
import { fuseOhm } from '../facts/fuses.ts'
import { motorFigures, windingSpread, type MotorFigures } from '../facts/motors.ts'
import type { Plate } from './plate.ts'

/** Positions of the controls and the elements unplugged: what a person sets before reading or running. */
export type SetUp = { readonly controls: Readonly<Record<string, string>>; readonly unplug: readonly string[] }

/** Resistance of an element as a meter sees it on a dead machine, and the spread of its logarithm. */
export type ElementOhm = { readonly resistanceOhm: number; readonly spread: number }

/** Input power of a motor of the blueprint under this plate, in watt. */
export const motorPowerW = (element: CircuitElement & { kind: 'motor' }, plate: Plate): number =>
  'powerW' in element.power ? element.power.powerW : element.power.shareOfPlate * plate.powerW

const motorOf = (element: CircuitElement & { kind: 'motor' }, plate: Plate): MotorFigures =>
  motorFigures(plate.voltageV, plate.frequencyHz, motorPowerW(element, plate))

const isClosed = (element: CircuitElement & { kind: 'contact' }, setUp: SetUp, blueprint: Blueprint): boolean => {
  const control = element.closedWhen.control
  const position = setUp.controls[control] ?? blueprint.controls.find((c) => c.id === control)?.positions[0] ?? ''
  return element.closedWhen.positions.includes(position)
}

/** What a meter sees of a sound element: resistance at DC, infinite when it does not conduct in this set-up. */
export const soundOhm = (element: CircuitElement, setUp: SetUp, blueprint: Blueprint, plate: Plate): ElementOhm => {
  if (setUp.unplug.includes(element.id)) return absent
  switch (element.kind) {
    case 'wire':
      return { resistanceOhm: conductorOhm(element.lengthM, element.areaMm2), spread: element.spread }
    case 'resistor':
      return { resistanceOhm: element.resistanceOhm, spread: element.spread }
    case 'contact':
      return isClosed(element, setUp, blueprint)
        ? { resistanceOhm: element.contactOhm, spread: element.spread }
        : absent
    case 'fuse':
      return { resistanceOhm: fuseOhm(element.ratingA), spread: element.spread }
    case 'capacitor':
    case 'stray':
      return absent
    case 'inductor':
      return { resistanceOhm: element.resistanceOhm, spread: element.spread }
    case 'motor':
      return { resistanceOhm: motorOf(element, plate).windingOhm, spread: windingSpread }
    case 'triac':
      return { resistanceOhm: element.offOhm ?? Infinity, spread: element.spread }
  }
}

const absent: ElementOhm = { resistanceOhm: Infinity, spread: 0 }

type Becomes = Fault['electrical'][number]['becomes']

/** What a meter sees of an element that a fault has changed. */
export const faultyOhm = (sound: ElementOhm, becomes: Becomes): ElementOhm => {
  if (becomes === 'open') return absent
  if (becomes === 'short') return { resistanceOhm: 0, spread: 0 }
  if ('ohm' in becomes) return { resistanceOhm: becomes.ohm, spread: becomes.spread }
  if (!Number.isFinite(sound.resistanceOhm)) return sound
  const add = 'plusOhm' in becomes ? becomes.plusOhm : sound.resistanceOhm * (becomes.timesOhm - 1)
  const resistanceOhm = sound.resistanceOhm + add
  const sd = Math.hypot(sound.resistanceOhm * sound.spread, add * becomes.spread)
  return { resistanceOhm, spread: resistanceOhm > 0 ? sd / resistanceOhm : 0 }
}

/**
 * Size of an element's impedance with the machine under way, in ohm: triacs driven, motors at their working speed.
 * Capacitors are left out: what they carry does no work.
 */
export const runningOhm = (
  element: CircuitElement,
  setUp: SetUp,
  blueprint: Blueprint,
  plate: Plate,
  becomes: Becomes | null,
): number => {
  const sound = underWay(element, soundOhm(element, setUp, blueprint, plate), plate)
  return becomes === null ? sound.resistanceOhm : faultyOhm(sound, becomes).resistanceOhm
}

const underWay = (element: CircuitElement, dead: ElementOhm, plate: Plate): ElementOhm => {
  if (element.kind === 'triac') return { resistanceOhm: element.onOhm, spread: element.spread }
  if (element.kind !== 'motor') return dead
  return { resistanceOhm: plate.voltageV / motorOf(element, plate).runningA, spread: dead.spread }
}

/** The same element as part of an AC network at the plate's frequency, or null where nothing conducts. For checking the above. */
export const runningElement = (
  element: CircuitElement,
  setUp: SetUp,
  blueprint: Blueprint,
  plate: Plate,
  becomes: Becomes | null,
): NetworkElement | null => {
  const ends = { id: element.id, from: element.from, to: element.to }
  const { resistanceOhm } =
    becomes === null
      ? underWay(element, soundOhm(element, setUp, blueprint, plate), plate)
      : faultyOhm(soundOhm(element, setUp, blueprint, plate), becomes)
  if (becomes === null && element.kind === 'capacitor')
    return { kind: 'capacitor', ...ends, capacitanceF: element.capacitanceF }
  if (!Number.isFinite(resistanceOhm)) return null
  if (element.kind !== 'motor' || becomes === 'short') return { kind: 'resistor', ...ends, resistanceOhm }
  const { inductanceH, backEmfOhm, windingOhm } = motorOf(element, plate)
  return {
    kind: 'motor',
    ...ends,
    resistanceOhm: becomes === null ? windingOhm : resistanceOhm,
    inductanceH,
    backEmfOhm,
    backEmfV: 0,
  }
}
