import { complex, polar, size, zero, type Complex } from './complex.ts'
import type { NetworkElement } from './schema.ts'

/**
 * What an element amounts to at one frequency. With i the current through it from `from` to `to`:
 * v(from) − v(to) = impedanceOhm · i + emfV.
 */
export type Branch =
  | { readonly kind: 'absent' }
  | { readonly kind: 'link' }
  | { readonly kind: 'impedance'; readonly impedanceOhm: Complex; readonly emfV: Complex }
  | { readonly kind: 'fixed-voltage'; readonly emfV: Complex }
  | { readonly kind: 'fixed-current'; readonly currentA: Complex }

/** Below this an impedance is an ideal link and above its inverse it is absent: 1/Z would leave the range of numbers. */
const smallestOhm = 1e-290
const absent: Branch = { kind: 'absent' }

/**
 * The branch that an element is at an angular frequency; 0 means DC.
 * At DC a capacitor is open, an inductor is its resistance, and phases mean nothing. A motor is its resistance,
 * its inductance and the back-EMF that its speed gives: `backEmfOhm` in step with the current, `backEmfV` against it.
 */
export const branchOf = (element: NetworkElement, omegaRadPerS: number): Branch => {
  switch (element.kind) {
    case 'resistor':
      return impedance(complex(element.resistanceOhm))
    case 'capacitor':
      return impedance(complex(0, -1 / (omegaRadPerS * element.capacitanceF)))
    case 'inductor':
      return impedance(complex(element.resistanceOhm, omegaRadPerS * element.inductanceH))
    case 'switch':
      return element.closed ? impedance(complex(element.contactOhm)) : absent
    case 'fuse':
      return element.intact ? impedance(complex(element.resistanceOhm)) : absent
    case 'triac':
      return element.on ? impedance(complex(element.onOhm)) : impedance(complex(element.offOhm ?? Infinity))
    case 'motor':
      return impedance(
        complex(element.resistanceOhm + element.backEmfOhm, omegaRadPerS * element.inductanceH),
        complex(element.backEmfV),
      )
    case 'voltage-source':
      return { kind: 'fixed-voltage', emfV: polar(element.voltageV, omegaRadPerS === 0 ? 0 : element.phaseRad) }
    case 'current-source':
      return { kind: 'fixed-current', currentA: polar(element.currentA, omegaRadPerS === 0 ? 0 : element.phaseRad) }
  }
}

const impedance = (impedanceOhm: Complex, emfV: Complex = zero): Branch => {
  const ohm = size(impedanceOhm)
  // Not "≥": the impedance of a capacitor at DC and of one without capacitance is not a finite number.
  if (!(ohm < 1 / smallestOhm)) return absent
  if (ohm > smallestOhm) return { kind: 'impedance', impedanceOhm, emfV }
  return emfV.re === 0 ? { kind: 'link' } : { kind: 'fixed-voltage', emfV }
}

/** DC resistance of an element in Ω as the ohms kernel takes it: 0 an ideal link, Infinity absent. Sources count as absent. */
export const dcOhm = (element: NetworkElement): number => {
  const branch = branchOf(element, 0)
  switch (branch.kind) {
    case 'absent':
    case 'fixed-voltage':
    case 'fixed-current':
      return Infinity
    case 'link':
      return 0
    case 'impedance':
      return branch.impedanceOhm.re
  }
}
