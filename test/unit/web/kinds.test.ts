import { describe, expect, it } from 'vitest'
import { blueprintEntry } from '../../../src/blueprint/entry.ts'
import { blueprints } from '../../../src/blueprint/library.ts'
import type { Blueprint } from '../../../src/blueprint/schema.ts'
import { kindsOf } from '../../../src/web/blueprints/kinds.ts'
import { smallBlueprint } from './blueprint.ts'

const made = (id: string, name: string, change: Partial<Blueprint> = {}, voltageV = 230) =>
  blueprintEntry({ ...smallBlueprint, id, name, plate: { ...smallBlueprint.plate, voltageV }, ...change })
const shown = (...entries: readonly ReturnType<typeof made>[]) =>
  kindsOf(entries).map(({ name, labels }) => [name, ...labels])

describe('kinds on the picture list', () => {
  it('hold variants that look alike, told apart by their plates', () =>
    expect(shown(made('a', 'Upright'), made('b', 'Upright', {}, 120))).toEqual([
      ['Upright', '230 V, class II', '120 V, class II'],
    ]))
  it('say what the plug tells where the plates do not', () => {
    const plain = { circuit: smallBlueprint.circuit.filter(({ kind }) => kind !== 'fuse') }
    expect(shown(made('a', 'Drum'), made('b', 'Drum', plain), made('c', 'Drum', plain, 120))).toEqual([
      ['Drum', '230 V, class II, fuse in the plug', '230 V, class II, no fuse in the plug', '120 V, class II'],
    ])
  })
  it('have the most usual name; who has another says so', () =>
    expect(shown(made('a', 'Tub', {}, 120), made('b', 'Drum'), made('c', 'Drum', {}, 240))).toEqual([
      ['Drum', '120 V, class II: Tub', '230 V, class II', '240 V, class II'],
    ]))
  it('never say the same of two', () =>
    expect(shown(made('a', 'Drum'), made('b', 'Drum'), made('c', 'Drum of mine'))).toEqual([
      ['Drum', '230 V, class II (a)', '230 V, class II (b)', '230 V, class II: Drum of mine'],
    ]))
  it('are apart when signs or parts to be seen differ', () => {
    const lamp: Blueprint['parts'][number] = { id: 'power-lamp', name: 'Lamp', does: 'Shines', group: 'control' }
    expect(
      shown(
        made('a', 'A'),
        made('b', 'B', { signs: { dust: ['bag'] } }),
        made('c', 'C', { parts: [...smallBlueprint.parts, lamp] }),
      ),
    ).toHaveLength(3)
  })
})

describe.each([['the library', blueprints] as const])('kinds of %s', (_name, all) => {
  it('tell every blueprint from every other', () => {
    const texts = kindsOf(all.map(blueprintEntry)).flatMap(({ name, labels }) =>
      labels.map((label) => `${name}, ${label}`),
    )
    expect(new Set(texts).size).toBe(all.length)
    expect(texts.filter((text) => text.endsWith(')'))).toEqual([])
  })
})

describe('what is to be seen of a blueprint', () => {
  const features = (...ids: readonly string[]) =>
    blueprintEntry({ ...smallBlueprint, parts: ids.map((id) => ({ ...smallBlueprint.parts[0], id })) }).features
  it('follows from its parts', () => {
    expect(features('hose', 'blockage-lamp')).toEqual(['hose', 'lamps'])
    expect(features('stretch-hose', 'rear-wheels')).toEqual(['hose', 'wheels'])
  })
  it('is not a hose inside', () => expect(features('lower-hose', 'clamp')).toEqual([]))
})
