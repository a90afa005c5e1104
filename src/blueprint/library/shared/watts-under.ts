import type { Under } from '../../fragment.ts'

/*
 * What each fault does to the watts, by fault id. Directions from the table of patterns on a plug-in meter (a starved motor
 * takes less, a dragging one more, shorted turns more, an open path nothing); how often is judgement.
 */

/** Hose open, brush off. A machine that nothing drives is the circuit's to say. */
export const wattsOpenUnder: Under = {
  'bag-full': { sound: 0.55, low: 0.44, high: 0.01 },
  'pre-motor-filter-clogged': { sound: 0.6, low: 0.39, high: 0.01 },
  'exhaust-filter-clogged': { sound: 0.65, low: 0.34, high: 0.01 },
  'hose-blocked': { sound: 0.5, low: 0.49, high: 0.01 },
  'duct-blocked': { sound: 0.5, low: 0.49, high: 0.01 },
  'fan-choked': { sound: 0.4, low: 0.5, high: 0.1 },
  'motor-seal-leaks': { sound: 0.55, low: 0.44, high: 0.01 },
  'bearing-brush-end-noisy': { sound: 0.65, low: 0.05, high: 0.3 },
  'bearing-fan-end-noisy': { sound: 0.65, low: 0.05, high: 0.3 },
  'motor-seized': { high: 0.96, low: 0.02, dead: 0.02 },
  'armature-shorted': { high: 0.6, sound: 0.35, low: 0.05 },
  'armature-coil-open': { low: 0.4, sound: 0.5, high: 0.1 },
  'commutator-burnt': { low: 0.35, sound: 0.55, high: 0.1 },
  'commutator-glazed': { low: 0.3, sound: 0.68, high: 0.02 },
  'brushes-worn': { low: 0.4, sound: 0.58, high: 0.02 },
  'brush-stuck': { low: 0.45, sound: 0.53, high: 0.02 },
  'water-in-motor': { sound: 0.65, low: 0.15, high: 0.2 },
  'speed-slider-worn': { low: 0.5, sound: 0.49, high: 0.01 },
}

/** Open less blocked. Starved already, or drawing air past the hand, a motor hardly changes when the hose is closed. */
export const wattsBlockedUnder: Under = {
  'bag-full': { falls: 0.25, little: 0.45, none: 0.3 },
  'pre-motor-filter-clogged': { falls: 0.3, little: 0.45, none: 0.25 },
  'exhaust-filter-clogged': { falls: 0.35, little: 0.42, none: 0.23 },
  'hose-blocked': { falls: 0.15, little: 0.4, none: 0.45 },
  'duct-blocked': { falls: 0.2, little: 0.4, none: 0.4 },
  'fan-choked': { falls: 0.25, little: 0.4, none: 0.35 },
  'motor-seal-leaks': { falls: 0.2, little: 0.4, none: 0.4 },
  'hose-split-cuff': { falls: 0.3, little: 0.45, none: 0.25 },
  'hose-split-middle': { falls: 0.25, little: 0.45, none: 0.3 },
  'bag-door-seal-perished': { falls: 0.35, little: 0.45, none: 0.2 },
  'bag-door-latch-broken': { falls: 0.25, little: 0.4, none: 0.35 },
  'casing-cracked': { falls: 0.4, little: 0.4, none: 0.2 },
  'casing-open': { falls: 0.25, little: 0.4, none: 0.35 },
  'relief-valve-stuck-open': { falls: 0.15, little: 0.45, none: 0.4 },
  'changeover-flap-stuck': { falls: 0.2, little: 0.3, none: 0.5 },
  'motor-seized': { none: 0.96, little: 0.04 },
}

/** Brush on carpet less brush off. A motor without power is the circuit's to say. */
export const wattsBrushUnder: Under = {
  'belt-stripped': { none: 0.55, turns: 0.44, high: 0.01 },
  'brush-motor-seized': { high: 0.75, none: 0.25 },
  'roll-jammed': { high: 0.65, none: 0.25, turns: 0.1 },
  'roll-bearing-seized': { high: 0.6, turns: 0.3, none: 0.1 },
  'bristles-worn': { turns: 0.7, none: 0.29, high: 0.01 },
  'overload-faulty': { turns: 0.6, none: 0.4 },
  'triac-shorted': { none: 0.75, turns: 0.25 },
  'park-switch-closed': { none: 0.75, turns: 0.25 },
  'drag-sensor-dead': { turns: 0.8, high: 0.2 },
}
