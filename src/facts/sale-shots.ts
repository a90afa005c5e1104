import type { Source } from '../base/source.ts'

/** Photographs that sell a machine, in the order they are looked for. Common practice of the trade. */
export const saleShots = {
  'three-quarter': 'Whole, from the front at an angle',
  front: 'Front',
  back: 'Back',
  left: 'Left side',
  right: 'Right side',
  underside: 'Underside',
  'head-underside': 'Underside of the floor head',
  roll: 'Brush roll, close',
  chamber: 'Inside the bag or bin chamber',
  filters: 'The new filters',
  'hose-ends': 'Both ends of the hose',
  tools: 'Tube and tools laid out',
  'flex-plug': 'Flex, plug and fuse',
  plate: 'Rating plate, the last digits of the serial number covered',
  'worst-mark': 'The worst mark',
  'gauge-before': 'Gauge before',
  'gauge-after': 'Gauge after',
  'test-label': 'Label of the safety checks',
} as const

export type SaleShot = keyof typeof saleShots
export const saleShotIds = Object.keys(saleShots) as [SaleShot, ...SaleShot[]]

export const saleShotsSource: Source = {
  title: 'Order of work and prices of a small bench, UK street level 2024–26',
  clause: 'photographs of a listing that sells',
  evidence: 'judgement',
}
