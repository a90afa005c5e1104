import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { PeopleStore } from '../../src/bench/people/people-ports.ts'
import { benchItself, type Device, type Person } from '../../src/bench/people/person.ts'

/** A store under test. `again` gives the store as another start of the program would find it. */
export type PeopleStoreUnderTest = {
  readonly store: PeopleStore
  readonly again: () => Promise<PeopleStore>
  readonly close: () => Promise<void>
}

const at = (minute: number): string => new Date(Date.UTC(2026, 2, 14, 12, minute)).toISOString()
const person = (id: string, minute = 0, over: Partial<Person> = {}): Person => ({
  id,
  name: `Person ${id}`,
  role: 'bench',
  passphrase: '$scrypt$ln=4,r=8,p=1$c2FsdA$aGFzaGFzaGFzaGFzaGFzaGFzaA',
  addedAt: at(minute),
  goneAt: null,
  ...over,
})
const token = (sign: string): string => sign.repeat(64)
const device = (id: string, owner: string, over: Partial<Device> = {}): Device => ({
  id,
  person: owner,
  name: 'phone with Android',
  token: token(id),
  next: null,
  nextAt: null,
  last: null,
  lastUntil: null,
  tokenAt: at(0),
  signedInAt: at(0),
  seenAt: at(0),
  expiresAt: at(59),
  version: 1,
  ...over,
})

/** What every store of people must do. `outlives`: whether it keeps them beyond one start of the program. */
export const peopleStoreContract = (
  name: string,
  outlives: boolean,
  make: () => Promise<PeopleStoreUnderTest>,
): void => {
  describe(`store of people: ${name}`, () => {
    let under: PeopleStoreUnderTest
    let store: PeopleStore
    beforeEach(async () => {
      under = await make()
      store = under.store
    })
    afterEach(() => under.close())

    it('has nobody and no device at first', async () => {
      expect(await store.people()).toEqual([])
      expect(await store.devices()).toEqual([])
      expect(await store.deviceWith(token('a'))).toBeNull()
    })

    it('gives people back word for word, in the order they were added, and takes a change in the place of the old', async () => {
      const first = person('a', 1, { name: 'Ängström 李 O’Hara', role: 'keeper' })
      for (const one of [first, person('b', 2, { passphrase: null }), person(benchItself, 3)])
        expect(await store.putPerson(one)).toEqual({ kind: 'kept' })
      const gone = { ...first, passphrase: null, goneAt: at(9), role: 'bench' as const }
      expect(await store.putPerson(gone)).toEqual({ kind: 'kept' })
      expect(await store.people()).toEqual([gone, person('b', 2, { passphrase: null }), person(benchItself, 3)])
    })

    it('finds a device by its present, its next and its last token, and by no other', async () => {
      await store.putPerson(person('p'))
      const kept = device('d', 'p', { next: token('e'), nextAt: at(1), last: token('f'), lastUntil: at(2) })
      await store.addDevice(kept)
      for (const sign of ['d', 'e', 'f']) expect(await store.deviceWith(token(sign))).toEqual(kept)
      expect(await store.deviceWith(token('0'))).toBeNull()
      expect(await store.deviceWith('')).toBeNull()
    })

    it('lists devices, the one seen last first', async () => {
      await store.putPerson(person('p'))
      for (const [id, minute] of [
        ['a', 3],
        ['b', 9],
        ['c', 5],
      ] as const)
        await store.addDevice(device(id, 'p', { seenAt: at(minute) }))
      expect((await store.devices()).map(({ id }) => id)).toEqual(['b', 'c', 'a'])
    })

    it('lets exactly one of two changes at once win', async () => {
      await store.putPerson(person('p'))
      await store.addDevice(device('d', 'p'))
      const changes = ['1', '2'].map((sign) => device('d', 'p', { next: token(sign), nextAt: at(1), version: 2 }))
      const outcomes = await Promise.all(changes.map((one) => store.changeDevice(one)))
      expect(outcomes.toSorted()).toEqual([false, true])
      expect(await store.devices()).toEqual([changes[outcomes.indexOf(true)]])
    })

    it('forgets a device, all of a person, and no other; one that is gone is not changed back in', async () => {
      await store.putPerson(person('p'))
      await store.putPerson(person('q'))
      for (const [id, owner] of [
        ['a', 'p'],
        ['b', 'p'],
        ['c', 'q'],
        ['d', 'q'],
      ] as const)
        await store.addDevice(device(id, owner))
      await store.removeDevice('c')
      await store.removeDevicesOf('p')
      await store.removeDevice('never-there')
      expect(await store.changeDevice(device('c', 'q', { version: 2 }))).toBe(false)
      expect((await store.devices()).map(({ id }) => id)).toEqual(['d'])
    })

    if (!outlives) return
    it('gives the same to the next start of the program', async () => {
      await store.putPerson(person('p'))
      await store.addDevice(device('d', 'p'))
      const next = await under.again()
      expect(await next.people()).toEqual([person('p')])
      expect(await next.deviceWith(token('d'))).toEqual(device('d', 'p'))
    })
  })
}
