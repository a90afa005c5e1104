import type { Blueprint } from '../../src/blueprint/schema.ts'
import { tenKinds } from './signed-entries.ts'

const names: Readonly<Record<string, string>> = {
  'upright-belt-bag': 'Bagged upright, one motor',
  'upright-belt-bag-other-mains': 'Bagged upright, one motor',
  'upright-belt-cloth': 'Upright with an outer bag',
  'upright-belt-bin': 'Upright with a bin, one motor',
  'upright-two-motors': 'Bagged upright, separate brush motor',
  'cylinder-plain': 'Cylinder with a bag, plain head',
  'cylinder-air': 'Cylinder with a bin, air-driven head',
  'cylinder-electric': 'Cylinder with a bag, electric head',
  drum: 'Drum, motor on top',
  'stick-plain': 'Corded stick, plain head',
  'stick-electric': 'Corded stick, electric head',
}

/**
 * A blueprint under the names, signs and plates of ten invented kinds of machine, one of them in two variants. `keep`: the
 * kind that stays under the blueprint's own id, so that a machine of it can be put on the bench.
 */
export const tenBlueprints = (blueprint: Blueprint, keep: string): readonly Blueprint[] =>
  tenKinds.map(({ id, signs }) => ({
    ...blueprint,
    id: id === keep ? blueprint.id : id,
    name: names[id] ?? id,
    signs: signs as Blueprint['signs'],
    plate: id.endsWith('other-mains')
      ? { ...blueprint.plate, voltageV: 120, frequencyHz: 60 }
      : { ...blueprint.plate, voltageV: 230 },
    parts: blueprint.parts.filter((part) => part.id !== 'hose' || /two-motors|electric/.test(id)),
  }))
