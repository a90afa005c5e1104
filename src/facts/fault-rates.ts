import type { Source } from '../base/source.ts'

/** Where the figures on this page come from. The records are CC BY-SA 4.0; these are counts and shares worked out from them. */
export const openRepairData: Source = {
  title: 'Open Repair Alliance, vacuum-cleaner repair records, licence CC BY-SA 4.0',
  edition: 'snapshot of 2025-10-16; repair events of 2013 to 2021',
  clause: 'corded machines, component named in the text',
  url: 'https://openrepair.org',
  evidence: 'open data',
}

/** Records of corded machines, and how many of them name a component. More than half are Dutch: mostly cylinders with a cord reel. */
export const componentRecords = Object.freeze({ corded: 1663, naming: 1193, source: openRepairData })

/**
 * `share`: of the records that name a component, the share that falls to this one, those that name only a place or
 * several components spread over what they may mean. `alone`: records that name this component and no other.
 */
type ComponentRow = { readonly id: string; readonly name: string; readonly share: number; readonly alone: number }

const row = (id: string, name: string, share: number, alone: number): ComponentRow =>
  Object.freeze({ id, name, share, alone })

export const componentShares: readonly ComponentRow[] = Object.freeze([
  row('plug', 'Plug, or flex at the plug', 0.1331, 82),
  row('flex-reel', 'Flex broken in the reel', 0.062, 38),
  row('flex-entry', 'Flex at the appliance entry', 0.0102, 6),
  row('flex-middle', 'Flex damaged along its length', 0.0134, 8),
  row('reel-mechanism', 'Cord reel: spring, brake, tangle', 0.0734, 78),
  row('reel-contacts', 'Cord reel: sliding contacts', 0.0098, 10),
  row('fuse', 'Fuse', 0.0051, 5),
  row('mains-switch', 'Mains switch', 0.1079, 115),
  row('speed-control', 'Speed control or circuit board', 0.0612, 65),
  row('suppression-capacitor', 'Suppression capacitor', 0.0061, 6),
  row('thermal-cut-out', 'Thermal cut-out', 0.0005, 0),
  row('internal-wire', 'Internal wire or joint', 0.0313, 33),
  row('carbon-brushes', 'Carbon brushes', 0.0812, 50),
  row('motor-winding', 'Motor winding burnt', 0.0376, 23),
  row('motor-bearings', 'Motor bearings', 0.0182, 11),
  row('commutator', 'Commutator', 0.0069, 4),
  row('motor-dirt', 'Dirt in the motor', 0.0117, 12),
  row('fan-wheel', 'Fan wheel', 0.0079, 8),
  row('belt', 'Belt', 0.0051, 5),
  row('brush-roll', 'Brush roll or its drive', 0.0266, 28),
  row('hose', 'Hose torn or loose', 0.0229, 24),
  row('wand', 'Wand', 0.0051, 5),
  row('floor-head', 'Floor head', 0.0089, 9),
  row('filters', 'Filters clogged', 0.0818, 87),
  row('bag-or-bin', 'Bag, bag holder, bin', 0.0117, 12),
  row('hose-blockage', 'Blockage in the hose', 0.0229, 24),
  row('wand-blockage', 'Blockage in the wand', 0.0033, 3),
  row('head-blockage', 'Blockage at the floor head or brush', 0.0014, 1),
  row('bag-full', 'Bag or bin full', 0.0005, 0),
  row('blockage-unplaced', 'Blockage or dirt, place not stated', 0.0893, 88),
  row('seals', 'Seals', 0.0042, 4),
  row('casing', 'Casing, lid, catch', 0.0229, 24),
  row('wheels', 'Wheels', 0.0089, 9),
  row('water', 'Water', 0.007, 7),
])

/** Records that name something wider than one component: several at once, flex or motor without a place, blockages in several places. */
export const widerThanOneComponent = Object.freeze({
  several: 140,
  'flex, place not stated': 98,
  'motor, part not stated': 64,
  'blockage in several places': 7,
  source: openRepairData,
})

/** Cases of a component (share times records, so not whole) among the records that name one; null for a component not known here. */
export const componentCases = (id: string): { readonly count: number; readonly total: number } | null => {
  const found = componentShares.find((component) => component.id === id)
  return found === undefined ? null : { count: found.share * componentRecords.naming, total: componentRecords.naming }
}
