import type { PeopleStore } from '../../bench/people/people-ports.ts'
import type { Device, Person } from '../../bench/people/person.ts'

const kept = Promise.resolve({ kind: 'kept' as const })

/** The port of people in memory: forgotten when the program ends. For tests. */
export const memoryPeopleStore = (): PeopleStore => {
  const people = new Map<string, Person>()
  const devices = new Map<string, Device>()
  return {
    people: () => Promise.resolve([...people.values()]),
    putPerson: (person) => {
      people.set(person.id, person)
      return kept
    },
    devices: () =>
      Promise.resolve([...devices.values()].sort((a, b) => (a.seenAt < b.seenAt ? 1 : a.seenAt > b.seenAt ? -1 : 0))),
    deviceWith: (token) =>
      Promise.resolve([...devices.values()].find((one) => [one.token, one.next, one.last].includes(token)) ?? null),
    addDevice: (device) => {
      devices.set(device.id, device)
      return kept
    },
    changeDevice: (device) => {
      const isNext = devices.get(device.id)?.version === device.version - 1
      if (isNext) devices.set(device.id, device)
      return Promise.resolve(isNext)
    },
    removeDevice: (id) => {
      devices.delete(id)
      return kept
    },
    removeDevicesOf: (person) => {
      for (const { id } of [...devices.values()].filter((one) => one.person === person)) devices.delete(id)
      return kept
    },
  }
}
