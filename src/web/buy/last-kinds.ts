import { readStored, writeStored } from '../stored.ts'

const storedName = 'thrum-kinds'
const most = 4

/** The kinds that were weighed last on this device, the last first. */
export const lastKinds = (): readonly string[] => {
  try {
    const stored: unknown = JSON.parse(readStored('local', storedName) ?? '[]')
    return Array.isArray(stored) ? stored.filter((one): one is string => typeof one === 'string').slice(0, most) : []
  } catch {
    return []
  }
}

export const rememberKind = (id: string): void =>
  writeStored('local', storedName, JSON.stringify([id, ...lastKinds().filter((one) => one !== id)].slice(0, most)))
