import type { Blueprint, Check, CircuitElement, Fault, MeterCheck } from './schema.ts'
import { onSimplePath, type Edge } from './simple-path.ts'

type Becomes = Fault['electrical'][number]['becomes']

/** Whether a check could show a fault at all: named in its outcomes, in the path that the meter sees, or stopping the driven motor. */
export const canReveal = (blueprint: Blueprint, check: Check, fault: Fault): boolean => {
  if (check.kind === 'meter') return meterSees(blueprint, check, fault)
  return fault.id in check.under || stopsDriven(blueprint, check, fault)
}

/** An ohmmeter sees an element that lies on some path from probe to probe without passing a point twice, and that the fault changes. */
const meterSees = (blueprint: Blueprint, check: MeterCheck, fault: Fault): boolean =>
  fault.electrical.some(({ element: id, becomes }) => {
    const element = blueprint.circuit.find((candidate) => candidate.id === id)
    if (element === undefined || check.unplug.includes(id)) return false
    if (!isChanged(element, conducts(blueprint, element, check.controls), becomes)) return false
    const others = blueprint.circuit
      .filter((other) => other.id !== id && !check.unplug.includes(other.id))
      .filter((other) => conducts(blueprint, other, check.controls))
    return onSimplePath(edgeOf(element), others.map(edgeOf), check.red, check.black)
  })

/** Running shows an electrical fault when the motor lies in a path from line to neutral and no longer does with the faulty element gone. */
const stopsDriven = (blueprint: Blueprint, check: Exclude<Check, MeterCheck>, fault: Fault): boolean => {
  const motor = blueprint.circuit.find((element) => element.id === check.driven?.element)
  if (motor === undefined) return false
  const opened = fault.electrical.filter((effect) => effect.becomes === 'open').map((effect) => effect.element)
  if (opened.length === 0) return false
  const { line, neutral } = blueprint.supply
  const isFed = (gone: readonly string[]): boolean => {
    if (gone.includes(motor.id)) return false
    const others = blueprint.circuit.filter(
      (element) =>
        element.id !== motor.id &&
        !gone.includes(element.id) &&
        (element.kind === 'triac' || conducts(blueprint, element, check.controls)),
    )
    return onSimplePath(edgeOf(motor), others.map(edgeOf), line, neutral)
  }
  return isFed([]) && !isFed(opened)
}

const edgeOf = (element: CircuitElement): Edge => [element.from, element.to]

/** Whether a meter's small direct current passes the healthy element. */
const conducts = (
  blueprint: Blueprint,
  element: CircuitElement,
  controls: Readonly<Record<string, string>>,
): boolean => {
  switch (element.kind) {
    case 'capacitor':
    case 'stray':
      return false
    case 'triac':
      return element.offOhm !== null
    case 'contact': {
      const { control, positions } = element.closedWhen
      const atRest = blueprint.controls.find((candidate) => candidate.id === control)?.positions[0] ?? ''
      return positions.includes(controls[control] ?? atRest)
    }
    case 'wire':
    case 'resistor':
    case 'fuse':
    case 'inductor':
    case 'motor':
      return true
  }
}

/** Whether the fault makes a difference to the element as it is set up. */
const isChanged = (element: CircuitElement, conducting: boolean, becomes: Becomes): boolean => {
  if (becomes === 'open') return conducting
  if (becomes === 'short') return !conducting || ['resistor', 'inductor', 'motor', 'triac'].includes(element.kind)
  return 'ohm' in becomes || conducting
}
