import { hostname, networkInterfaces } from 'node:os'

/** Names by which this machine knows itself. */
const loopback: readonly string[] = ['127.0.0.1', 'localhost', '[::1]', '::1']

/** Addresses of this machine on the networks it is part of, those of IPv4 first; none that only lead back to itself or are made up by a link. */
export const networkAddresses = (): readonly string[] => {
  const all = Object.values(networkInterfaces()).flatMap((one) => one ?? [])
  const others = all.filter(({ internal, address }) => !internal && !address.toLowerCase().startsWith('fe80:'))
  return [...others.filter(({ family }) => family === 'IPv4'), ...others.filter(({ family }) => family !== 'IPv4')].map(
    ({ family, address }) => (family === 'IPv4' ? address : `[${address}]`),
  )
}

/** Whether a browser that asks for this host means this machine alone. */
export const isThisMachine = (host: string): boolean => loopback.includes(host)

/** Whether a host names this machine on its network: by address, by its name, or by one that it was given. */
export const namesThisMachine =
  (given: readonly string[]) =>
  (host: string): boolean => {
    const name = hostname().toLowerCase()
    return (
      isThisMachine(host) ||
      [name, `${name}.local`, ...given].includes(host.toLowerCase()) ||
      networkAddresses().includes(host)
    )
  }
