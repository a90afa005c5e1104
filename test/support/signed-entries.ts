import type { Signs } from '../../src/blueprint/narrow.ts'

export type SignedEntry = { readonly id: string; readonly signs: Signs }

/** Ten kinds of machine as the trade tells them apart, invented for tests; the first comes in two variants. */
export const tenKinds: readonly SignedEntry[] = [
  entry('upright-belt-bag', 'upright', 'bag', 'hooks', 'belt', 'foot'),
  entry('upright-belt-bag-other-mains', 'upright', 'bag', 'hooks', 'belt', 'foot'),
  entry('upright-belt-cloth', 'upright', 'cloth-bag', 'hooks', 'belt', 'foot'),
  entry('upright-belt-bin', 'upright', 'bin', 'hooks', 'belt', 'foot'),
  entry('upright-two-motors', 'upright', 'bag', 'hooks', 'electric', 'handle'),
  entry('cylinder-plain', 'cylinder', 'bag', 'reel', 'none', 'foot'),
  entry('cylinder-air', 'cylinder', 'bin', 'reel', 'air', 'foot'),
  entry('cylinder-electric', 'cylinder', 'bag', 'reel', 'electric', 'handle'),
  entry('drum', 'drum', 'bag', 'hooks', 'none', 'top'),
  entry('stick-plain', 'stick', 'bin', 'hooks', 'none', 'handle'),
  { id: 'stick-electric', signs: { stands: ['stick'], dust: ['bin', 'bag'], brush: ['electric'] } },
]

function entry(id: string, stands: string, dust: string, cord: string, brush: string, ...place: string[]): SignedEntry {
  return { id, signs: { stands: [stands], dust: [dust], cord: [cord], brush: [brush], switch: place } }
}
