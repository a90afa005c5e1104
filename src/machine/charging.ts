import type { Blueprint } from '../blueprint/schema.ts'
import { joinedWhenSolved, type OhmsNetwork } from '../engines/network/index.ts'
import { chargingSeen, visibleCapacitanceF } from '../facts/charging.ts'
import type { SetUp } from './circuit.ts'

/** A capacitor of the circuit that this set-up leaves in it, by the index of its element. */
export type Capacitor = { readonly element: number; readonly capacitanceF: number }

/** The capacitors that a meter could meet in this set-up. */
export const capacitorsOf = (blueprint: Blueprint, setUp: SetUp): readonly Capacitor[] =>
  blueprint.circuit.flatMap((element, k) =>
    element.kind === 'capacitor' && !setUp.unplug.includes(element.id)
      ? [{ element: k, capacitanceF: element.capacitanceF }]
      : [],
  )

/** Whether a capacitor may show: one whose ends are joined already joins nothing that a meter does not see anyway. */
export const mayShow = (network: OhmsNetwork, capacitors: readonly Capacitor[]): boolean =>
  capacitors.some(({ element }) => !joinedWhenSolved(network, network.from[element], network.to[element]))

/**
 * The network whose "resistance" between two points is one over the capacitance between them: where no direct current
 * flows everything that conducts is one plate, and capacitors add as conductances do. Written into `links`.
 * @param ohm what each element is to direct current
 * @param isOpen whether a capacitor has lost its capacitance or its lead
 */
export const chargeLinks = (
  links: Float64Array,
  ohm: Float64Array,
  capacitors: readonly Capacitor[],
  isOpen: (element: number) => boolean,
): void => {
  for (let k = 0; k < ohm.length; k++) links[k] = Number.isFinite(ohm[k]) ? 0 : Infinity
  for (const { element, capacitanceF } of capacitors)
    if (links[element] !== 0 && !isOpen(element)) links[element] = 1 / capacitanceF
}

/** The capacitance in farad from the "resistance" of the above; 0 when nothing joins the points. */
export const reachOf = (perFarad: number): number => (perFarad > 0 && Number.isFinite(perFarad) ? 1 / perFarad : 0)

/** Whether a meter shows this capacitance as a reading that climbs, then goes to open. */
export const isVisible = (capacitanceF: number): boolean => capacitanceF >= visibleCapacitanceF

/** Probability that "rises, then open" is written down where this much capacitance joins the probes. */
export const chargingProbability = (capacitanceF: number): number =>
  isVisible(capacitanceF) ? chargingSeen.whenVisible : chargingSeen.byMistake
