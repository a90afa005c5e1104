import { renderUnicodeCompact } from 'uqr'
import { networkAddresses } from './network-addresses.ts'

/** What to say of how a phone on the same network gets here: each address, and the first one as a code to point the camera at. */
export const reachedAt = (port: number, addresses: readonly string[] = networkAddresses()): readonly string[] => {
  const [first] = addresses
  if (first === undefined) return ['This machine has no address on a network just now.']
  return [
    'On the same network, by anyone who can sign in:',
    ...addresses.map((one) => `  http://${one}:${port}`),
    'A phone finds it by this code:',
    renderUnicodeCompact(`http://${first}:${port}`, { border: 2 }),
  ]
}
